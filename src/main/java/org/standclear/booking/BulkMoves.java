package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Moves everybody off a cell that went down, or whom it no longer suits, in one act that can be undone; nobody is counted for
 * it.
 */
public interface BulkMoves {

    /** Where all of them would go; those with the nearest due date first. */
    List<Planned> plan(Which which);

    /**
     * Moves everybody as the plan says that was looked at. Whose slot was taken since goes to the earliest that is left; nobody
     * is moved when that would cost somebody a turn that the plan had.
     *
     * @param seen the plan as it was written
     */
    Done moveAll(Which which, String seen, PersonId by, String reason);

    /** What was moved in one act. */
    Optional<BulkMove> find(UUID id);

    /**
     * Puts everybody back who has not checked in, nor got another slot for one that was lost; says why not, or nothing.
     */
    Optional<String> undo(UUID id, PersonId by);

    /** A plan as a form carries it: each booking, and where it would go. */
    static String written(List<Planned> plan) {
        return SeenPlan.written(plan);
    }

    /**
     * Which bookings move.
     *
     * @param until those that begin before
     * @param unfitOnly only those that need what the cell has not now
     */
    record Which(CellId cell, Instant until, boolean unfitOnly) {}

    /**
     * One booking and where it would go.
     *
     * @param to null when no slot is free: a make-up and the first place on the waiting list instead
     * @param due when the operator's assignment is due; null without one
     * @param attended whether its attendant comes along; otherwise it needs one there
     */
    record Planned(
            Booking booking, @Nullable Slot to, @Nullable Instant due, boolean attended) {

        Planned(Booking booking, @Nullable Instant due) {
            this(booking, null, due, false);
        }
    }

    /** A bulk move that was made. */
    record BulkMove(
            UUID id,
            CellId cell,
            PersonId by,
            Instant at,
            String reason,
            List<Moved> moved,
            @Nullable Instant undoneAt) {

        public BulkMove {
            moved = List.copyOf(moved);
        }
    }

    /**
     * One booking of it, before and after.
     *
     * @param elsewhere whether it went elsewhere than the plan said, since that slot was taken meanwhile
     * @param stays whether it stayed where it was when the move was undone, since its operator had got another slot
     */
    record Moved(BookingId was, @Nullable BookingId now, boolean elsewhere, boolean stays) {

        Moved(BookingId was, @Nullable BookingId now, boolean elsewhere) {
            this(was, now, elsewhere, false);
        }
    }

    /** What came of it. */
    sealed interface Done {

        /** Everybody was moved. */
        record All(UUID id) implements Done {}

        /** Nothing was. */
        record Refused(String says) implements Done {}
    }
}
