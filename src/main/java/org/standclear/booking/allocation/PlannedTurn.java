package org.standclear.booking.allocation;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * A turn with its place in a plan.
 *
 * @param booking null until the plan is accepted
 */
public record PlannedTurn(
        UUID request,
        int turn,
        PersonId operator,
        @Nullable AssignmentId assignment,
        CellId cell,
        Instant start,
        Instant end,
        PersonId attendant,
        @Nullable BookingId booking) {}
