package org.standclear.booking.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.platform.text.PlainText;

/**
 * A day with hours of its own, as it was sent.
 *
 * @param hours empty for closed
 * @param note why, as people will read it
 * @param confirmed the bookings that the sender knows will be outside, by their ids
 */
record DayForm(
        @Nullable String formToken,
        @Nullable String day,
        @Nullable String hours,
        @Nullable String note,
        @Nullable String confirmed) {

    private static final int LONGEST_NOTE = 200;

    /** The day; empty when it cannot be read or is past, which then stands in the errors. */
    Optional<LocalDate> dayRead(LocalDate today, Map<String, String> errors) {
        try {
            LocalDate read = LocalDate.parse(day == null ? "" : day.strip());
            if (read.isBefore(today)) {
                errors.put("day", "That day is past; its hours are history.");
            } else if (read.isAfter(today.plusYears(3))) {
                errors.put("day", "Hours can be set three years ahead at most.");
            }
            return Optional.of(read);
        } catch (DateTimeException noSuchDay) {
            errors.put("day", "There is no such day: \"" + day + "\". Write it as 2026-11-26.");
            return Optional.empty();
        }
    }

    Optional<DayHours> read(LocalDate today, Map<String, String> errors) {
        Optional<LocalDate> when = dayRead(today, errors);
        List<OpenPeriod> periods = List.of();
        try {
            periods = PeriodsText.read(hours);
        } catch (PeriodsText.UnreadableException unreadable) {
            errors.put("hours", unreadable.says());
        }
        String words = "";
        if (PlainText.check(note, LONGEST_NOTE) instanceof PlainText.Fine fine) {
            words = fine.text();
        } else if (PlainText.check(note, LONGEST_NOTE) instanceof PlainText.Refused refused) {
            errors.put("note", refused.says());
        }
        return errors.isEmpty() && when.isPresent()
                ? Optional.of(new DayHours(when.get(), periods, words))
                : Optional.empty();
    }

    /** What a page that asks once more has to send again. */
    Map<String, @Nullable String> again() {
        Map<String, @Nullable String> again = new LinkedHashMap<>();
        again.put("day", day);
        again.put("hours", hours);
        again.put("note", note);
        return again;
    }
}
