package org.standclear.booking.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads a time of day that a form asks for together with its day. */
final class FormTimes {

    private FormTimes() {}

    /**
     * The instant of a time on a day of the lab's clock. Of a time that comes twice on that day, it is the earlier one; a
     * time that the clocks leave out is refused and not moved, for nobody would know where to.
     *
     * @param field where an error of the time stands; one of the day stands at "day"
     * @return null when one of the two cannot be read, which then stands in the errors
     */
    static @Nullable Instant at(
            Map<String, String> errors, @Nullable String day, String field, @Nullable String time, ZoneId zone) {
        LocalDate date = null;
        try {
            date = LocalDate.parse(day == null ? "" : day.strip());
        } catch (DateTimeException noSuchDay) {
            errors.put("day", "There is no such day: \"" + day + "\". Write it as 2026-11-26.");
        }
        try {
            LocalTime read = LocalTime.parse(time == null ? "" : time.strip());
            if (date == null) {
                return null;
            }
            boolean skipped = zone.getRules().getValidOffsets(date.atTime(read)).isEmpty();
            if (skipped) {
                errors.put(field, "The clocks change that day, and " + read + " does not exist.");
                return null;
            }
            return date.atTime(read).atZone(zone).toInstant();
        } catch (DateTimeException noSuchTime) {
            errors.put(field, "There is no such time: \"" + time + "\". Write it as 14:30.");
            return null;
        }
    }
}
