package org.standclear.booking;

import java.time.Instant;
import java.util.Optional;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/**
 * The operator's word that they come. Where the lab's rules ask for it, a slot that nobody confirms is free again in time
 * for the waiting list.
 */
public interface Confirmations {

    /**
     * Until when the operator has to say so; empty when nobody asks, when it is said, when the program is named, or when
     * it was booked too late to ask.
     */
    Optional<Instant> askedUntil(BookingId booking);

    /** When the operator said so. */
    Optional<Instant> confirmedAt(BookingId booking);

    /** Says so, for the operator; false when it is said already, or when the booking does not wait for a start any more. */
    boolean confirm(BookingId booking, PersonId by);
}
