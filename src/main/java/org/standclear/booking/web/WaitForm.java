package org.standclear.booking.web;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;

/**
 * The form by which somebody joins the waiting list, as it was sent.
 *
 * @param cell a cell's id, or empty for any
 * @param purpose {@code assignment:} or {@code course:} and an id, or empty for neither
 */
record WaitForm(
        @Nullable String formToken,
        @Nullable String cell,
        @Nullable String day,
        @Nullable String from,
        @Nullable String until,
        @Nullable String purpose) {

    /** What it asks for; empty when a field cannot be read, which then stands in the errors. */
    Optional<JoinWait> read(Map<String, String> errors, ZoneId zone, PersonId me) {
        Instant start = FormTimes.at(errors, day, "from", from, zone);
        Instant end = FormTimes.at(errors, day, "until", until, zone);
        CellId where = blank(cell) ? null : uuid(cell).map(CellId::new).orElse(null);
        if (!blank(cell) && where == null) {
            errors.put("cell", "Choose a cell from the list.");
        }
        String what = purpose == null ? "" : purpose;
        UUID named = uuid(what.substring(what.indexOf(':') + 1)).orElse(new UUID(0, 0));
        if (start == null || end == null || !errors.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new JoinWait(
                me,
                where,
                start,
                end,
                what.startsWith("course:") ? new CourseId(named) : null,
                what.startsWith("assignment:") ? new AssignmentId(named) : null,
                me));
    }

    private static boolean blank(@Nullable String text) {
        return text == null || text.isBlank();
    }

    private static Optional<UUID> uuid(@Nullable String text) {
        try {
            return text == null ? Optional.empty() : Optional.of(Id.parse(text));
        } catch (IllegalArgumentException notAnId) {
            return Optional.empty();
        }
    }
}
