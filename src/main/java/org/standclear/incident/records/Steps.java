package org.standclear.incident.records;

import java.time.Clock;
import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentStep;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/**
 * Takes a step in the life of an incident: its own row, and an entry in the lab's record. The record says what was done and
 * names what was written by its hash; the words themselves, which may speak of people, stay with the incident.
 */
@Component
class Steps {

    private final StepRows rows;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    Steps(StepRows rows, Trail trail, Labs labs, Clock clock) {
        this.rows = rows;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    /**
     * A step to take.
     *
     * @param words for those who work on the incident
     * @param forReporter what the reporter reads of it; empty when nothing
     * @param by null for somebody without a name
     */
    record Taken(
            IncidentStep.Kind kind,
            String words,
            String forReporter,
            @Nullable PersonId by) {}

    void take(Incident incident, Taken taken) {
        Instant now = now();
        rows.add(
                incident.id(),
                new IncidentStep(Id.newValue(), taken.kind(), taken.words(), taken.forReporter(), taken.by(), now));
        trail.append(entry(incident, taken));
    }

    private TrailEntry entry(Incident incident, Taken taken) {
        String kind = "incident." + taken.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        String words = "Incident " + incident.number() + ", " + incident.kind().label() + ": "
                + taken.kind().words() + ".";
        return TrailEntry.of(labs.theLab().id(), kind, incident.id(), taken.by(), words)
                .with("cell", incident.cell())
                .with("class", incident.kind().code())
                .with("words-sha256", Sha256.of(taken.words()));
    }

    Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
