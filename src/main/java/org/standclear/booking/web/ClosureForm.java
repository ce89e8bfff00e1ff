package org.standclear.booking.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;

/** The form that keeps a cell for staff, as it was sent. */
record ClosureForm(
        @Nullable String formToken,
        @Nullable String cell,
        @Nullable String day,
        @Nullable String from,
        @Nullable String until,
        @Nullable String kind,
        @Nullable String words) {

    /** What it asks for; empty when a field cannot be read, which then stands in the errors. */
    Optional<CloseCell> read(Map<String, String> errors, ZoneId zone, PersonId by) {
        Instant start = at(errors, "from", from, zone);
        Instant end = at(errors, "until", until, zone);
        CellId where = cellRead(errors);
        CellClosure.Kind what = kindRead(errors);
        if (start == null || end == null || where == null || what == null || !errors.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new CloseCell(where, start, end, what, words == null ? "" : words, by));
    }

    private @Nullable CellId cellRead(Map<String, String> errors) {
        try {
            return new CellId(Id.parse(cell == null ? "" : cell));
        } catch (IllegalArgumentException notAnId) {
            errors.put("cell", "Choose a cell from the list.");
            return null;
        }
    }

    private CellClosure.@Nullable Kind kindRead(Map<String, String> errors) {
        for (CellClosure.Kind one : CellClosure.Kind.values()) {
            if (one.name().equals(kind)) {
                return one;
            }
        }
        errors.put("kind", "Choose what the cell is kept for.");
        return null;
    }

    private @Nullable Instant at(Map<String, String> errors, String field, @Nullable String time, ZoneId zone) {
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
