package org.standclear.run.records;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RunId;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.Runs;

/** Reads runs and events from the database. */
@Service
@Transactional(readOnly = true)
class JdbcRuns implements Runs {

    private final RunRows runs;
    private final EventLog events;

    JdbcRuns(RunRows runs, EventLog events) {
        this.runs = runs;
        this.events = events;
    }

    @Override
    public Optional<Run> find(RunId id) {
        return runs.find(id);
    }

    @Override
    public Optional<Run> of(BookingId booking) {
        return runs.of(booking);
    }

    @Override
    public List<RunEvent> events(BookingId booking) {
        return events.of(booking);
    }

    @Override
    public List<RunEvent> recentStops(CellId cell, int atMost) {
        return events.recentStops(cell, atMost);
    }

    @Override
    public List<Run> open() {
        return runs.open();
    }

    @Override
    public Page page(Filter filter, @Nullable Position after, int size) {
        List<Run> found = runs.page(filter, after, size);
        if (found.size() <= size) {
            return new Page(found, null);
        }
        List<Run> shown = found.subList(0, size);
        Run last = shown.get(size - 1);
        return new Page(shown, new Position(last.startedAt(), last.id()));
    }
}
