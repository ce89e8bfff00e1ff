package org.standclear.booking.allocation;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.booking.PlannedBookings;
import org.standclear.platform.ids.BookingId;

/** Which booking stands for a place of a plan. */
@Component
class PlacesOfBookings implements PlannedBookings {

    private final JdbcClient jdbc;

    PlacesOfBookings(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public void moved(BookingId from, BookingId to) {
        jdbc.sql("update booking_plan_places set booking_id = :to where booking_id = :from")
                .param("to", to.value())
                .param("from", from.value())
                .update();
    }
}
