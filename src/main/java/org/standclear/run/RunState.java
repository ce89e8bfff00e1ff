package org.standclear.run;

/** Where a run is. */
public enum RunState {
    RUNNING("running"),
    STOPPED("stopped"),
    FINISHED("finished, not closed out"),
    CLOSED_OUT("closed out");

    private final String words;

    RunState(String words) {
        this.words = words;
    }

    /** The state as people say it. */
    public String words() {
        return words;
    }
}
