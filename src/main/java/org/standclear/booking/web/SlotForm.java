package org.standclear.booking.web;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.MakeBooking;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;

/**
 * The booking form as it was sent.
 *
 * @param attendant a person's id, or empty for "needs one"
 * @param purpose {@code assignment:} or {@code course:} and an id, or empty for neither
 */
record SlotForm(
        @Nullable String formToken,
        @Nullable String cell,
        @Nullable String start,
        @Nullable String attendant,
        @Nullable String purpose) {

    private static final Instant EARLIEST = Instant.parse("2000-01-01T00:00:00Z");
    private static final Instant LATEST = Instant.parse("9999-01-01T00:00:00Z");

    /** The cell's id; empty when it cannot be read, which is as good as no such cell. */
    Optional<CellId> cellRead() {
        return uuid(cell).map(CellId::new);
    }

    /** The start; empty when it is no instant, or one in a year that calendars do not show. */
    Optional<Instant> startRead() {
        try {
            return Optional.ofNullable(start)
                    .map(Instant::parse)
                    .filter(at -> at.isAfter(EARLIEST) && at.isBefore(LATEST));
        } catch (DateTimeParseException notAnInstant) {
            return Optional.empty();
        }
    }

    /** The booking it asks for; ids that cannot be read become ids that nobody has, and are refused as such. */
    MakeBooking wanted(CellId cellRead, Instant startRead, PersonId me) {
        String purposeRead = purpose == null ? "" : purpose;
        UUID named = uuid(purposeRead.substring(purposeRead.indexOf(':') + 1)).orElse(new UUID(0, 0));
        return new MakeBooking(
                cellRead,
                startRead,
                me,
                blank(attendant) ? null : new PersonId(uuid(attendant).orElse(new UUID(0, 0))),
                purposeRead.startsWith("course:") ? new CourseId(named) : null,
                blank(purposeRead) || purposeRead.startsWith("course:") ? null : new AssignmentId(named),
                me);
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
