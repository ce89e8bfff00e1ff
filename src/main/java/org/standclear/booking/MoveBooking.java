package org.standclear.booking;

import java.time.Instant;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * A free slot to which staff move a booking.
 *
 * @param keepsAttendant whether the attendant comes along; otherwise the booking needs one again
 * @param by lab staff
 */
public record MoveBooking(
        BookingId booking, CellId cell, Instant start, boolean keepsAttendant, PersonId by, String reason) {}
