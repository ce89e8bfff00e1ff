package org.standclear.report;

/**
 * By what a week's exceptions are chosen.
 *
 * @param reason why it is worth an instructor's look
 * @param threshold from which on a line is shown, in the rule's unit
 * @param active whether it is asked
 */
public record ExceptionRule(String code, String title, String reason, int threshold, String unit, boolean active) {

    /** From when on, as people say it. */
    public String said() {
        if (unit.equals("in one")) {
            return "one in " + threshold;
        }
        return threshold + " " + (threshold == 1 ? unit.substring(0, unit.length() - 1) : unit);
    }
}
