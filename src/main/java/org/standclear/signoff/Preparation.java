package org.standclear.signoff;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.program.Revision;

/** Puts programs on bookings and keeps their checks up to date with the cell. */
public interface Preparation {

    /**
     * Names the program for the booking and asks the check on the cell's current version. A release that waits for its
     * start lapses. The caller has checked that the person may change the booking.
     */
    Attached attach(BookingId booking, RevisionId revision, PersonId by);

    /** The revisions that the person may attach to the booking, most recently changed first. */
    List<Revision> choices(BookingId booking, PersonId by);

    /**
     * Brings the booking up to date with the program, the cell and the clock: what no longer holds lapses, and is checked
     * anew by itself.
     */
    Prepared look(BookingId booking);

    /**
     * Where a booking's preparation stands.
     *
     * @param revision null until a program is attached
     * @param answer null until the check answered
     * @param says the answer in one line
     * @param waiver what lets it run although it is not within limits
     * @param lapsed what lapsed last, until somebody signs a list that was opened after it
     * @param notChecked what the check could not check, advised or waived, each in words; it never reads as a pass
     */
    record Prepared(
            Booking booking,
            @Nullable Revision revision,
            @Nullable StoredAnswer answer,
            String says,
            Optional<Lapse> lapsed,
            Optional<Waiver> waiver,
            List<String> notChecked) {

        public Prepared {
            notChecked = List.copyOf(notChecked);
        }
    }

    /** What came of attaching. */
    sealed interface Attached {

        /** The program is on the booking; whether it is within limits says the answer. */
        record Kept(Prepared prepared) implements Attached {}

        /** It cannot be attached; says why and what to do. */
        record Refused(String code, String says) implements Attached {}
    }
}
