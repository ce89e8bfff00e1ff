package org.standclear.booking;

import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;

/** Writes missed bookings down soon after the grace time; nothing depends on it, since every look at a booking knows. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class MissedBookings {

    private final BookingDesk desk;

    MissedBookings(BookingDesk desk) {
        this.desk = desk;
    }

    @Scheduled(initialDelayString = "PT30S", fixedDelayString = "PT30S")
    void release() {
        desk.releaseMissed();
    }
}
