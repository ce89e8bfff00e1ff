package org.standclear.signoff.records;

import java.time.Clock;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.numbers.NumberHistory;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.BenchSettings;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Every change is a row and an entry of the record. */
@Repository
class JdbcBenchNumbers implements BenchNumbers {

    private final NumberHistory<BenchSettings> history;
    private final Labs labs;
    private final Trail trail;

    JdbcBenchNumbers(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.history = new NumberHistory<>(jdbc, labs, clock, SET);
        this.labs = labs;
        this.trail = trail;
    }

    @Override
    public BenchSettings inForce() {
        return history.inForce();
    }

    @Override
    public List<Change<BenchSettings>> changes(int atMost) {
        return history.changes(atMost);
    }

    @Override
    public void lock() {
        history.lock();
    }

    @Override
    @Transactional
    public void change(BenchSettings settings, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        BenchSettings before = history.inForce();
        history.add(settings, by, reason);
        trail.append(
                TrailEntry.of(lab, "signoff.numbers-changed", lab, by, "Changed the numbers of the bench: " + reason)
                        .with("before", before)
                        .with("after", settings));
    }
}
