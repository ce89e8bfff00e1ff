package org.standclear.booking.web;

import java.time.Instant;
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
        Instant start = FormTimes.at(errors, day, "from", from, zone);
        Instant end = FormTimes.at(errors, day, "until", until, zone);
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
}
