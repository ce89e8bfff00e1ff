package org.standclear.run.records;

import java.time.Instant;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellStop;
import org.standclear.cell.CellStops;
import org.standclear.cell.CellTag;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunEvent.Kind;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;

/** Logs stops. No state refuses one: what does not fit a run is kept under the booking, or under the cell alone. */
@Component
class StopLog {

    private final Bookings bookings;
    private final Releases releases;
    private final CellStates cellStates;
    private final CellStops stops;
    private final RunRows runs;
    private final EventWriter events;
    private final BenchNumbers numbers;

    StopLog(
            Bookings bookings,
            Releases releases,
            CellStates cellStates,
            CellStops stops,
            RunRows runs,
            EventWriter events,
            BenchNumbers numbers) {
        this.bookings = bookings;
        this.releases = releases;
        this.cellStates = cellStates;
        this.stops = stops;
        this.runs = runs;
        this.events = events;
        this.numbers = numbers;
    }

    RunEvent stop(CellId cell, Kind kind, PersonId by, Instant now) {
        if (!kind.isStop()) {
            throw new IllegalArgumentException(kind + " is not a stop");
        }
        Optional<BookingId> at = booking(cell, now);
        RunEvent event = at.isEmpty()
                ? events.unbooked(cell, kind, "", "", by, now)
                : stop(bookings.lock(at.get()), kind, by, now);
        stops.log(new CellStop(event.id(), cell, kind == Kind.PROTECTIVE_STOP, by, now, null));
        return event;
    }

    /** Whose stop it is: the run that moves, else the booking whose slot it is. */
    Optional<BookingId> booking(CellId cell, Instant now) {
        Optional<BookingId> moving = runs.moving(cell).map(Run::booking);
        return moving.isPresent()
                ? moving
                : bookings.currentOrNext(cell, now)
                        .filter(booking -> !now.isBefore(booking.start()) || booking.checkedInAt() != null)
                        .map(Booking::id);
    }

    private RunEvent stop(Booking booking, Kind kind, PersonId by, Instant now) {
        Run run = runs.of(booking.id()).orElse(null);
        RunEvent event = events.add(booking, run, kind, null, "", "", by, now);
        LapseRule rule = rule(booking, kind);
        String because = capital(kind.words()) + ".";
        if (booking.state() == BookingState.RELEASED) {
            releases.withdraw(booking.id(), rule, because, by);
        }
        if (booking.state() == BookingState.RUNNING) {
            JdbcRunLog.moved(bookings.markStopped(booking.id(), by, because));
            Release used = releases.latest(booking.id()).orElseThrow();
            releases.lapse(used.id(), rule, because, by);
        }
        if (run != null) {
            runs.change(run.stopped());
        }
        if (rule == LapseRule.SECOND_PROTECTIVE_STOP) {
            hold(booking, by);
        }
        return event;
    }

    private LapseRule rule(Booking booking, Kind kind) {
        if (kind == Kind.E_STOP_PRESS) {
            return LapseRule.E_STOP_PRESS;
        }
        return events.protectiveStops(booking.id()) >= numbers.inForce().lookAfterStops()
                ? LapseRule.SECOND_PROTECTIVE_STOP
                : LapseRule.PROTECTIVE_STOP;
    }

    private void hold(Booking booking, PersonId by) {
        int stopsSoFar = events.protectiveStops(booking.id());
        String because = stopsSoFar == 2
                ? "second protective stop in one slot: look before a third"
                : "protective stops in one slot, " + stopsSoFar + " so far: look before the next";
        cellStates.stop(new CellStates.StopCell(booking.cell(), CellTag.Kind.HOLD, by, because, booking.operator()));
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
