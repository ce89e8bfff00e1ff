package org.standclear.desk.web;

import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Release;

/** What a booking's state is called on a page: released is a time, and a slot that passed unused says so. */
record StateWords(LabTime labTime, Instant now, Function<Booking, Optional<Release>> releases) {

    String of(Booking booking) {
        if (booking.state() == BookingState.RELEASED) {
            return releases.apply(booking)
                    .map(release -> "released until " + labTime.time(release.startBy()))
                    .orElse("released");
        }
        boolean unused = booking.state().ordinal() < BookingState.RELEASED.ordinal()
                && !booking.end().isAfter(now);
        return unused ? "ended without a run" : booking.state().words();
    }
}
