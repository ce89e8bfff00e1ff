package org.standclear.run.records;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab runs and their events belong to. */
@Component
class RunThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.of("runs", "cell_id", "cells"),
                Kind.of("run_events", "cell_id", "cells"),
                Kind.of("run_credits", "booking_id", "bookings"));
    }
}
