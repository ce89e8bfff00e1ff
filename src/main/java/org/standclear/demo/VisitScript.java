package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.standclear.demo.WeekSeed.Goes;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.signoff.Release;

/** Puts what happens at a cell during one slot on the timeline, minute by minute. */
final class VisitScript {

    private final Timeline timeline;
    private final DemoBookings bookings;
    private final DemoBench bench;
    private final Roster roster;

    VisitScript(Timeline timeline, DemoBookings bookings, DemoBench bench, Roster roster) {
        this.timeline = timeline;
        this.bookings = bookings;
        this.bench = bench;
        this.roster = roster;
    }

    /** A booking whose people come. */
    record Visit(BookingId booking, CellId cell, Instant start, PersonId operator, PersonId attendant) {

        Instant minute(int minute) {
            return start.plus(Duration.ofMinutes(minute));
        }
    }

    /** The slot from check-in to close-out. */
    void play(Visit visit, Goes goes) {
        timeline.add(visit.minute(-4), () -> bookings.checkIn(visit.booking(), visit.operator()));
        timeline.add(visit.minute(-2), () -> bench.session(visit.booking(), roster));
        AtomicReference<@Nullable Release> release = new AtomicReference<>();
        switch (goes) {
            case E_STOP -> {
                run(visit, 3, release);
                stop(visit, RunEvent.Kind.E_STOP_PRESS, visit.attendant(), ResetCause.PRECAUTION, release);
                leave(visit, 18);
            }
            case PROTECTIVE_STOP -> {
                run(visit, 3, release);
                stop(visit, RunEvent.Kind.PROTECTIVE_STOP, visit.operator(), ResetCause.PART, release);
                leave(visit, 18);
            }
            case REFUSED -> {
                timeline.add(visit.minute(3), () -> bench.refuse(visit.booking(), roster));
                run(visit, 6, release);
                leave(visit, 16);
            }
            case LAPSED -> {
                timeline.add(visit.minute(4), () -> bench.release(visit.booking(), roster));
                // the list takes its time, and the release waits ten minutes from its end
                timeline.add(visit.minute(18), () -> bench.look(visit.booking()));
            }
            default -> {
                run(visit, 3, release);
                leave(visit, 14);
            }
        }
    }

    /** Released and started; for the run that goes on when the demo starts. */
    void run(Visit visit, int minute, AtomicReference<@Nullable Release> release) {
        timeline.add(visit.minute(minute), () -> release.set(bench.release(visit.booking(), roster)));
        timeline.add(visit.minute(minute + 1), () -> {
            Release issued = release.get();
            if (issued != null) {
                bench.start(visit.booking(), issued);
            }
        });
    }

    private void stop(
            Visit visit,
            RunEvent.Kind kind,
            PersonId by,
            ResetCause cause,
            AtomicReference<@Nullable Release> release) {
        timeline.add(visit.minute(7), () -> bench.stop(visit.cell(), kind, by));
        timeline.add(visit.minute(9), () -> {
            Release issued = release.get();
            if (issued != null) {
                bench.reset(visit.booking(), cause, words(cause), issued.releaser());
            }
        });
        run(visit, 11, release);
    }

    private static String words(ResetCause cause) {
        return cause == ResetCause.PRECAUTION
                ? "The attendant was not sure that the clamp held. It did."
                : "The part stood proud in its fixture. Seated again.";
    }

    private void leave(Visit visit, int minute) {
        timeline.add(visit.minute(minute), () -> bench.finish(visit.booking(), 5, visit.operator()));
        timeline.add(visit.minute(minute + 2), () -> bench.closeOut(visit.booking(), visit.operator()));
    }
}
