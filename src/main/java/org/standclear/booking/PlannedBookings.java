package org.standclear.booking;

import org.standclear.platform.ids.BookingId;

/** Bookings that a plan made: answered by who keeps the plans, so that taking a plan back finds those that were moved. */
public interface PlannedBookings {

    /** Staff moved a booking; the one that stands in its place is the plan's from now on, if the old one was. */
    void moved(BookingId from, BookingId to);
}
