package org.standclear.booking;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Configuration;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;
import org.standclear.platform.lab.Labs;

/** What has to happen by itself: offers, reminders, slots that nobody confirmed. On every instance; each act happens once. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
@ConditionalOnProperty(name = "standclear.bookings.by-themselves", havingValue = "true", matchIfMissing = true)
class BookingRounds {

    private static final Logger LOG = LoggerFactory.getLogger(BookingRounds.class);

    private final WaitingList waitingList;
    private final Reminders reminders;
    private final Labs labs;

    BookingRounds(WaitingList waitingList, Reminders reminders, Labs labs) {
        this.waitingList = waitingList;
        this.reminders = reminders;
        this.labs = labs;
    }

    @Scheduled(initialDelayString = "PT15S", fixedDelayString = "PT10S")
    void offer() {
        labs.forEach(lab -> quietly(waitingList::round));
    }

    @Scheduled(initialDelayString = "PT20S", fixedDelayString = "PT30S")
    void remind() {
        labs.forEach(lab -> {
            quietly(reminders::remind);
            quietly(reminders::giveUpUnconfirmed);
        });
    }

    /** The next round does what this one could not. */
    private static void quietly(Runnable round) {
        try {
            round.run();
        } catch (DataAccessException gaveUp) {
            LOG.warn("a round was left for the next", gaveUp);
        }
    }
}
