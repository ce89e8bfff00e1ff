package org.standclear.core.limits;

/** Whose limit it is that counts. */
public enum LimitSource {
    CELL("cell"),
    COURSE("course"),
    ARM("arm");

    private final String word;

    LimitSource(String word) {
        this.word = word;
    }

    /** As answers write it. */
    public String word() {
        return word;
    }
}
