package org.standclear.cell;

/** Whether a cell may run; only {@link #IN_SERVICE} and {@link #RESTRICTED} do. */
public enum CellState {
    IN_SERVICE("in service"),
    /** In service, but only staff attend the e-stop. */
    RESTRICTED("restricted: staff attend only"),
    /** Staff test it; nothing is released meanwhile. */
    UNDER_TEST("under test"),
    HELD("held"),
    OUT_OF_SERVICE("out of service"),
    /** Energy is isolated and somebody's own lock hangs there; no tag, and taken off by nobody else. */
    LOCKED_OUT("locked out");

    private final String words;

    CellState(String words) {
        this.words = words;
    }

    /** The state as people say it. */
    public String words() {
        return words;
    }

    /** Whether releases are possible at all in this state. */
    public boolean mayRun() {
        return this == IN_SERVICE || this == RESTRICTED;
    }
}
