package org.standclear.incident.records;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RunId;
import org.standclear.run.Run;
import org.standclear.run.Runs;

/** Finds the run that was going on at a cell when something happened there. */
@Component
class RunAtThatTime {

    /** Something is reported a while after the cell was handed back; later than this it is another story. */
    private static final Duration AFTER_CLOSE_OUT = Duration.ofMinutes(30);

    private static final int LATEST = 20;

    private final Runs runs;

    RunAtThatTime(Runs runs) {
        this.runs = runs;
    }

    /** The one that was named, if it is of that cell; else the latest that had begun and was not long over. */
    Optional<Run> of(CellId cell, @Nullable RunId named, Instant at) {
        if (named != null) {
            return runs.find(named).filter(run -> run.cell().equals(cell));
        }
        return runs.page(new Runs.Filter(cell, null, null), null, LATEST).runs().stream()
                .filter(run -> !run.startedAt().isAfter(at))
                .findFirst()
                .filter(run -> run.closedOutAt() == null
                        || !run.closedOutAt().plus(AFTER_CLOSE_OUT).isBefore(at));
    }
}
