package org.standclear.booking;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;
import org.standclear.platform.lab.Labs;

/** Writes missed bookings down soon after the grace time; nothing depends on it, since every look at a booking knows. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
@ConditionalOnProperty(name = "standclear.bookings.by-themselves", havingValue = "true", matchIfMissing = true)
class MissedBookings {

    private final BookingDesk desk;
    private final Labs labs;

    MissedBookings(BookingDesk desk, Labs labs) {
        this.desk = desk;
        this.labs = labs;
    }

    @Scheduled(initialDelayString = "PT30S", fixedDelayString = "PT30S")
    void release() {
        labs.forEach(lab -> desk.releaseMissed());
    }
}
