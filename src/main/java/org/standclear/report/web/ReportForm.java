package org.standclear.report.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.standclear.report.TermSpan;

/** Which days, and whether people are named. */
record ReportForm(String first, String last, boolean withNames) {

    private static final int LONGEST_DAYS = 400;
    private static final int WEEKS = 12;

    /** As typed; the last twelve weeks when nothing was. */
    static ReportForm of(Map<String, String> parameters, LocalDate today) {
        return new ReportForm(
                parameters
                        .getOrDefault("first", today.minusWeeks(WEEKS).toString())
                        .strip(),
                parameters.getOrDefault("last", today.toString()).strip(),
                !"without".equals(parameters.get("names")));
    }

    Map<String, String> errors() {
        Map<String, String> errors = new LinkedHashMap<>();
        if (!isDate(first)) {
            errors.put("first", "Give the first day as a date, for example 2026-09-01.");
        }
        if (!isDate(last)) {
            errors.put("last", "Give the last day as a date, for example 2026-12-18.");
        }
        if (errors.isEmpty() && LocalDate.parse(last).isBefore(LocalDate.parse(first))) {
            errors.put("last", "The last day comes before the first.");
        }
        if (errors.isEmpty()
                && ChronoUnit.DAYS.between(LocalDate.parse(first), LocalDate.parse(last)) >= LONGEST_DAYS) {
            errors.put("last", "A report is about " + LONGEST_DAYS + " days at most.");
        }
        return errors;
    }

    private static boolean isDate(String text) {
        try {
            LocalDate day = LocalDate.parse(text);
            return day.getYear() >= 2000 && day.getYear() < 2200;
        } catch (DateTimeParseException notADate) {
            return false;
        }
    }

    /** Of a form without errors. */
    TermSpan span() {
        return new TermSpan(LocalDate.parse(first), LocalDate.parse(last));
    }
}
