package org.standclear.core.cell;

/** What follows when a limit is not kept. */
public enum Obligation {
    /** The program is outside limits. */
    REQUIRED("required"),
    /** A caution stays on the release card. */
    ADVISED("advised");

    private final String word;

    Obligation(String word) {
        this.word = word;
    }

    /** As files write it. */
    public String word() {
        return word;
    }
}
