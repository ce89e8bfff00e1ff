package org.standclear.booking.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.PlainText;

/** A new window as it was sent. */
record WindowForm(
        @Nullable String formToken,
        @Nullable String windowTitle,
        @Nullable String firstDay,
        @Nullable String lastDay,
        @Nullable String untilDay,
        @Nullable String untilTime) {

    static final int LONGEST_TITLE = 120;
    private static final int LONGEST_WINDOW = 31;

    /** A window that can be opened. */
    record Read(String title, LocalDate first, LocalDate last, Instant until) {}

    /** The window; null when a field cannot be, which then stands in the errors. */
    @Nullable
    Read read(Map<String, String> errors, ZoneId zone, Instant now) {
        String title = "";
        if (PlainText.check(windowTitle, LONGEST_TITLE) instanceof PlainText.Fine fine) {
            title = fine.text();
        } else {
            errors.put("windowTitle", "Write what people call it, such as Rush week.");
        }
        LocalDate first = day("firstDay", firstDay, errors);
        LocalDate last = day("lastDay", lastDay, errors);
        LocalDate until = day("untilDay", untilDay, errors);
        LocalTime time = time(errors);
        if (first == null || last == null || until == null || time == null) {
            return null;
        }
        Instant instant = until.atTime(time).atZone(zone).toInstant();
        if (last.isBefore(first) || last.isAfter(first.plusDays(LONGEST_WINDOW - 1))) {
            errors.put("lastDay", "A window lasts 1 to " + LONGEST_WINDOW + " days from its first day on.");
        }
        if (!first.atStartOfDay(zone).toInstant().isAfter(now)) {
            errors.put("firstDay", "Choose a day after today: a plan is accepted before its window begins.");
        }
        if (instant.isAfter(first.atStartOfDay(zone).toInstant())) {
            errors.put("untilDay", "Requests end before the window begins.");
        }
        if (!instant.isAfter(now)) {
            errors.put("untilTime", "People need time to ask: choose a time that is to come.");
        }
        return errors.isEmpty() ? new Read(title, first, last, instant) : null;
    }

    private static @Nullable LocalDate day(String field, @Nullable String text, Map<String, String> errors) {
        try {
            return LocalDate.parse(text == null ? "" : text.strip());
        } catch (DateTimeException notADay) {
            errors.put(field, "Write a day as year-month-day.");
            return null;
        }
    }

    private @Nullable LocalTime time(Map<String, String> errors) {
        try {
            return LocalTime.parse(untilTime == null ? "" : untilTime.strip());
        } catch (DateTimeException notATime) {
            errors.put("untilTime", "Write a time as hours:minutes.");
            return null;
        }
    }
}
