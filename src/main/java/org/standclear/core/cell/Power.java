package org.standclear.core.cell;

/** The power mode of an arm. */
public enum Power {
    REDUCED("reduced"),
    FULL("full");

    private final String word;

    Power(String word) {
        this.word = word;
    }

    /** As files write it. */
    public String word() {
        return word;
    }
}
