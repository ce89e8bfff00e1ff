package org.standclear.booking;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;

/**
 * A booking as other features see it.
 *
 * @param end the instant after the slot's last
 * @param attendant null when the booking needs one
 * @param revision null until the operator names a program
 * @param checkedInAt null until the operator has checked in at the cell
 * @param version counts changes; a form that carries an older one is stale
 */
public record Booking(
        BookingId id,
        CellId cell,
        Instant start,
        Instant end,
        PersonId operator,
        @Nullable PersonId attendant,
        @Nullable CourseId course,
        @Nullable AssignmentId assignment,
        @Nullable RevisionId revision,
        BookingState state,
        @Nullable Instant checkedInAt,
        int version) {

    /** Whether the person has a part in it. */
    public boolean involves(PersonId person) {
        return operator.equals(person) || person.equals(attendant);
    }

    /** The same booking with this person at its e-stop; nothing is stored by it. */
    public Booking withAttendant(PersonId next) {
        return new Booking(
                id, cell, start, end, operator, next, course, assignment, revision, state, checkedInAt, version);
    }
}
