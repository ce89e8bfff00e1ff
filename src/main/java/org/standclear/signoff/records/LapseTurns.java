package org.standclear.signoff.records;

import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.lab.Labs;
import org.standclear.signoff.Preparation;

/** Looks after releases that wait and turns that go on, so that what is over is over on every screen though nobody looks. */
@Component
@ConditionalOnProperty(name = "standclear.lapses.by-themselves", havingValue = "true", matchIfMissing = true)
class LapseTurns {

    private static final Logger LOG = LoggerFactory.getLogger(LapseTurns.class);

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Preparation preparation;
    private final TurnsOver turns;

    LapseTurns(JdbcClient jdbc, Labs labs, Preparation preparation, TurnsOver turns) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.preparation = preparation;
        this.turns = turns;
    }

    @Scheduled(initialDelayString = "PT5S", fixedDelayString = "PT2S")
    void run() {
        labs.forEach(lab -> {
            each("RELEASED", preparation::look);
            each("RUNNING", turns::look);
        });
    }

    private void each(String state, Consumer<BookingId> look) {
        List<UUID> bookings = jdbc.sql("select id from bookings where lab_id = :lab and state = :state")
                .param("lab", labs.theLab().id().value())
                .param("state", state)
                .query(UUID.class)
                .list();
        for (UUID booking : bookings) {
            try {
                look.accept(new BookingId(booking));
            } catch (DataAccessException busy) {
                // somebody else holds it now; the next turn comes soon
                LOG.debug("booking {} was not looked after", booking, busy);
            } catch (RuntimeException fault) {
                // one that is odd must not end the watch over the others; what it says may name people
                LOG.warn(
                        "Booking {} could not be looked after: {}",
                        booking,
                        fault.getClass().getSimpleName());
            }
        }
    }
}
