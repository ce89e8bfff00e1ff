package org.standclear.core.arm;

/** On which side of the line from base to tool the elbow lies, seen from above, looking from the base to the tool. */
public enum Elbow implements Branch {
    /** Elbow axis below 0. */
    LEFT("left", -1),
    /** Elbow axis above 0. */
    RIGHT("right", 1);

    private final String word;
    private final int sign;

    Elbow(String word, int sign) {
        this.word = word;
        this.sign = sign;
    }

    @Override
    public String word() {
        return word;
    }

    @Override
    public String words() {
        return "the elbow on the " + word;
    }

    /** The sign of the elbow axis on this side. */
    public int sign() {
        return sign;
    }
}
