package org.standclear.booking;

import java.time.Clock;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.numbers.NumberHistory;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Every change is a row and an entry of the record; what holds is remembered for a moment. */
@Repository
class JdbcBookingNumbers implements BookingNumbers {

    private final NumberHistory<BookingSettings> history;
    private final Labs labs;
    private final Trail trail;
    private final ShortMemory<BookingSettings> memory;

    JdbcBookingNumbers(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.history = new NumberHistory<>(jdbc, labs, clock, SET);
        this.memory = new ShortMemory<>(history::inForce);
        this.labs = labs;
        this.trail = trail;
    }

    @Override
    public BookingSettings inForce() {
        return memory.get();
    }

    @Override
    public List<Change<BookingSettings>> changes(int atMost) {
        return history.changes(atMost);
    }

    @Override
    public void lock() {
        history.lock();
    }

    @Override
    @Transactional
    public void change(BookingSettings settings, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        BookingSettings before = history.inForce();
        memory.forget();
        history.add(settings, by, reason);
        trail.append(TrailEntry.of(lab, "booking.numbers-changed", lab, by, "Changed the booking rules: " + reason)
                .with("before", before)
                .with("after", settings));
    }
}
