package org.standclear.signoff;

/** Everything that makes a release lapse. Most are asked on every look; some are reported by the run log. */
public enum LapseRule {
    FILE_CHANGED("file-changed", "program file or declaration changed", After.BOOKED),
    CELL_VERSION_CHANGED("cell-version-changed", "cell moved to another version", After.BOOKED),
    LIMITS_CHANGED("limits-changed", "limits or rules of the check changed", After.BOOKED),
    INCIDENT("incident", "incident on the cell", After.BOOKED),
    CELL_NOT_IN_SERVICE("cell-not-in-service", "cell not in service", After.READY),
    OPERATOR_SWAPPED("operator-swapped", "operator swapped", After.BOOKED),
    ATTENDANT_SWAPPED("attendant-swapped", "e-stop attendant swapped", After.SUSPENDED),
    ATTENDANT_LEFT("attendant-left", "e-stop attendant left", After.SUSPENDED),
    ATTENDANT_NOT_STAFF("attendant-not-staff", "cell restricted to staff at the e-stop", After.READY),
    AUTHORISATION_ENDED("authorisation-ended", "authorisation ended", After.READY),
    RELEASER_OFF_DUTY("releaser-off-duty", "releaser off duty", After.READY),
    VALUES_CHANGED("values-changed", "power mode, sensitivity or override changed", After.READY),
    WINDOW_OVER("window-over", "slot ended", After.READY),
    NOT_STARTED_IN_TIME("not-started-in-time", "not started in time", After.READY),
    // after the rules that end a release: what has ended is not suspended
    TURN_OVER("attendant-turn-over", "turn at the e-stop over", After.SUSPENDED),
    E_STOP_PRESS("e-stop-press", "e-stop pressed", After.READY),
    PROTECTIVE_STOP("protective-stop", "protective stop", After.READY),
    SECOND_PROTECTIVE_STOP("second-protective-stop", "second protective stop in the slot", After.READY),
    WAIVER_TAKEN_BACK("waiver-taken-back", "waiver taken back", After.BOOKED),
    WITHDRAWN("withdrawn", "release taken back", After.READY);

    private final String code;
    private final String words;
    private final After after;

    LapseRule(String code, String words, After after) {
        this.code = code;
        this.words = words;
        this.after = after;
    }

    /** Stable, for tests and the record. */
    public String code() {
        return code;
    }

    /** What happened, in few words. */
    public String words() {
        return words;
    }

    /** How far back the booking goes. */
    public After after() {
        return after;
    }

    /** Reads the stored form; throws IllegalArgumentException for anything else. */
    public static LapseRule of(String code) {
        for (LapseRule rule : values()) {
            if (rule.code.equals(code)) {
                return rule;
            }
        }
        throw new IllegalArgumentException("no lapse rule " + code);
    }

    /** How far back a lapse takes the booking. */
    public enum After {
        /** The check and the session list no longer hold. */
        BOOKED,
        /** The session list still holds; a new bench list may release again. */
        READY,
        /** The attendant's signature alone; the release waits, no longer than before, for that of another attendant. */
        SUSPENDED
    }
}
