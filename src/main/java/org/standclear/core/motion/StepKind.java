package org.standclear.core.motion;

/** How a step moves the arm, or does not. */
public enum StepKind {
    JOINT("joint"),
    STRAIGHT("straight"),
    ARC("arc"),
    WAIT("wait"),
    DO("do");

    private final String word;

    StepKind(String word) {
        this.word = word;
    }

    /** As answers write it. */
    public String word() {
        return word;
    }
}
