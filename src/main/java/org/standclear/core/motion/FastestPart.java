package org.standclear.core.motion;

/** The part of the arm that goes fastest. */
public enum FastestPart {
    TOOL("tool"),
    ELBOW("elbow"),
    OVERHANG("overhang");

    private final String word;

    FastestPart(String word) {
        this.word = word;
    }

    /** As answers write it. */
    public String word() {
        return word;
    }
}
