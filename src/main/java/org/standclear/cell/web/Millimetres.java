package org.standclear.cell.web;

import org.jspecify.annotations.Nullable;

/** Reads a number that somebody reads off a robot, a rule or a scale. */
final class Millimetres {

    private Millimetres() {}

    static double read(FormErrors errors, String field, @Nullable String raw) {
        return read(errors, field, raw, "Type the number as the robot shows it, in mm.");
    }

    /** Digits only, so that words that Java would take for numbers are refused. */
    static double read(FormErrors errors, String field, @Nullable String raw, String ask) {
        String typed = raw == null ? "" : raw.strip().replace(',', '.').replace('\u2212', '-');
        if (!typed.matches("-?\\d{1,4}(\\.\\d{1,3})?")) {
            errors.add(field, ask);
            return 0;
        }
        // -0 and 0 are one reading
        return Double.parseDouble(typed) + 0.0;
    }
}
