package org.standclear.booking;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab bookings, waits, offers and moves belong to. */
@Component
class BookingThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.own("bookings"),
                Kind.own("booking_closures"),
                Kind.own("booking_waits"),
                Kind.own("booking_make_ups"),
                Kind.own("booking_resets"),
                Kind.own("booking_bulk_moves"),
                Kind.own("booking_feeds"),
                Kind.of("booking_offers", "wait_id", "booking_waits"));
    }
}
