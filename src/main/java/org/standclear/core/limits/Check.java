package org.standclear.core.limits;

/** The checks, by the names that answers carry. */
public enum Check {
    POWER_MODE("power-mode"),
    OVERRIDE("override"),
    DECLARED_MATCHES_FOUND("declared-matches-found"),
    START("start"),
    TOOL_SPEED("tool-speed"),
    MOVING_PART_SPEED("moving-part-speed"),
    REACH("reach"),
    AXIS_RANGE("axis-range"),
    AXIS_SPEED("axis-speed"),
    SPACE("space"),
    KEEP_OUT("keep-out"),
    PAYLOAD("payload"),
    TOOL_FITTED("tool-fitted"),
    CONTACT("contact"),
    SEPARATION("separation"),
    COVERAGE("coverage"),
    READING("reading"),
    LOOP("loop"),
    UNUSED_POINTS("unused-points");

    private final String word;

    Check(String word) {
        this.word = word;
    }

    /** As answers write it. */
    public String word() {
        return word;
    }
}
