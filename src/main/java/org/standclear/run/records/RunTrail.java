package org.standclear.run.records;

import java.util.Locale;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.Labs;
import org.standclear.run.RunEvent;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Writes events of runs into the lab's record. */
@Component
class RunTrail {

    private final Trail trail;
    private final Labs labs;

    RunTrail(Trail trail, Labs labs) {
        this.trail = trail;
        this.labs = labs;
    }

    /** The event under its booking; under its cell when nobody was booked. */
    void append(RunEvent event, String words) {
        Object subject = event.booking() == null ? event.cell() : event.booking();
        TrailEntry entry = TrailEntry.of(labs.theLab().id(), kind(event), subject, event.account(), words)
                .with("cell", event.cell())
                .with("event", event.id());
        trail.append(event.run() == null ? entry : entry.with("run", event.run()));
    }

    private static String kind(RunEvent event) {
        return "run." + event.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
