package org.standclear.booking;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;

/**
 * A slot somebody wants.
 *
 * @param start where the slot begins on the cell's grid
 * @param attendant null when the booking needs one
 * @param course null for a run outside any course; taken from the assignment when there is one
 * @param by the operator, or staff who book for the operator
 */
public record MakeBooking(
        CellId cell,
        Instant start,
        PersonId operator,
        @Nullable PersonId attendant,
        @Nullable CourseId course,
        @Nullable AssignmentId assignment,
        PersonId by) {}
