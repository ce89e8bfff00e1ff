package org.standclear.incident.records;

import java.time.Clock;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentSettings;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.numbers.NumberHistory;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Every change is a row and an entry of the record. Templates reach them as {@code @incidentNumbers}. */
@Repository("incidentNumbers")
class JdbcIncidentNumbers implements IncidentNumbers {

    private final NumberHistory<IncidentSettings> history;
    private final Labs labs;
    private final Trail trail;

    JdbcIncidentNumbers(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.history = new NumberHistory<>(jdbc, labs, clock, SET);
        this.labs = labs;
        this.trail = trail;
    }

    @Override
    public IncidentSettings inForce() {
        return history.inForce();
    }

    @Override
    public List<Change<IncidentSettings>> changes(int atMost) {
        return history.changes(atMost);
    }

    @Override
    public void lock() {
        history.lock();
    }

    @Override
    @Transactional
    public void change(IncidentSettings settings, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        IncidentSettings before = history.inForce();
        history.add(settings, by, reason);
        trail.append(
                TrailEntry.of(lab, "incident.numbers-changed", lab, by, "Changed the numbers of incidents: " + reason)
                        .with("before", before)
                        .with("after", settings));
    }
}
