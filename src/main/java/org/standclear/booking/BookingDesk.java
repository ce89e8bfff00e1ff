package org.standclear.booking;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** Makes bookings under the lab's rules and gives slots up again. */
public interface BookingDesk {

    /**
     * Books a slot, if no rule is against it and nobody was faster. Waits for others who want the same cell or people;
     * when the database gives up waiting it throws a {@link org.springframework.dao.TransientDataAccessException}, and
     * the whole transaction can be tried again.
     */
    Outcome book(MakeBooking wanted);

    /** What the desk would answer now, for a page that shows the form; empty when no rule is against it. */
    Optional<Outcome.Refused> objection(MakeBooking wanted);

    /** How much of the quotas somebody has used now. */
    QuotaUse quotaOf(PersonId operator);

    /** Gives the slot up, for its operator or by staff; shortly before the start that is a late cancel. */
    Bookings.Transition cancel(BookingId id, PersonId by);

    /** Staff take the booking off the calendar; nothing is counted. For anybody else there is no such booking. */
    Bookings.Transition moveByStaff(BookingId id, PersonId by, String reason);

    /**
     * Staff move the booking to a free slot: it ends as moved, and another stands in its place with the same people,
     * purpose and program. Every rule is asked anew but the quotas; what was counted stays counted once. For anybody else
     * there is no such booking, and none in another lab.
     */
    Outcome moveTo(MoveBooking order);

    /** Keeps a cell of this lab for its staff; refused where bookings stand. */
    Closing close(CloseCell order);

    /** The closure of that id, unless the cell was opened again. */
    Optional<CellClosure> closure(UUID id);

    /** Staff open the cell again; false when there was no such closure any more. */
    boolean reopen(UUID closure, PersonId by);

    /** Writes down which bookings were missed and frees what they held; says how many. Any number may do so at once. */
    int releaseMissed();

    /** What a person holds ahead and has used of this week, and how much of each is allowed. */
    record QuotaUse(int ahead, int aheadAllowed, int thisWeek, int weekAllowed) {}

    /** What came of asking for a slot. */
    sealed interface Outcome {

        /** It is booked. */
        record Booked(Booking booking) implements Outcome {}

        /**
         * It is not.
         *
         * @param rule stable, for pages and tests: {@code taken}, {@code quota-ahead}, {@code attendant-authorisation}, ...
         * @param says which rule, what was counted, and what to do
         * @param nextFree the next slots that the operator could take instead
         */
        record Refused(String rule, String says, List<Slot> nextFree) implements Outcome {

            public Refused {
                nextFree = List.copyOf(nextFree);
            }
        }
    }

    /** What came of asking to keep a cell for staff. */
    sealed interface Closing {

        /** It is kept. */
        record Closed(CellClosure closure) implements Closing {}

        /** Nothing was kept; these bookings stand there (none when another closure does), and words for it. */
        record Refused(String field, String says, List<Booking> standing) implements Closing {

            public Refused {
                standing = List.copyOf(standing);
            }
        }
    }
}
