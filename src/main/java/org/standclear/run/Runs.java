package org.standclear.run;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/** Finds runs and what happened in them. */
public interface Runs {

    /** The run of that id. */
    Optional<Run> find(RunId id);

    /** The booking's run, once it has started. */
    Optional<Run> of(BookingId booking);

    /** What happened in the booking, before the first start too; first to last. */
    List<RunEvent> events(BookingId booking);

    /** Stops on the cell, latest first. */
    List<RunEvent> recentStops(CellId cell, int atMost);

    /** Runs that are not closed out, oldest first. */
    List<Run> open();

    /** A part of the list of runs, latest start first. */
    Page page(Filter filter, @Nullable Position after, int size);

    /**
     * Which runs to list; null means all.
     *
     * @param person somebody who had a part in it
     */
    record Filter(
            @Nullable CellId cell,
            @Nullable LocalDate day,
            @Nullable PersonId person) {}

    /** A place in the list. */
    record Position(Instant startedAt, RunId run) {}

    /** A part of the list, and where the next part begins; null at its end. */
    record Page(List<Run> runs, @Nullable Position next) {

        public Page {
            runs = List.copyOf(runs);
        }
    }
}
