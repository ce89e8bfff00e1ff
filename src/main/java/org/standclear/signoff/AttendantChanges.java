package org.standclear.signoff;

import java.time.Instant;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** Told when the e-stop of a run that goes on has changed hands; the run log keeps it. */
public interface AttendantChanges {

    /** In the transaction of the signature, with the booking locked. */
    void handedOver(BookingId booking, PersonId from, PersonId to, Instant at);
}
