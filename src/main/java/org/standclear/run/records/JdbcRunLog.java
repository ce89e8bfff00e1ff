package org.standclear.run.records;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunEvent.Kind;
import org.standclear.run.RunLog;
import org.standclear.run.RunState;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;

/** Logs runs; booking, run, event and record change together or not at all. */
@Service
@Transactional
class JdbcRunLog implements RunLog {

    private final Bookings bookings;
    private final Releases releases;
    private final RunRows runs;
    private final EventWriter events;
    private final StopLog stopLog;
    private final Resets resets;
    private final Witnesses witnesses;
    private final Watching watching;
    private final CloseOuts closeOuts;
    private final CreditRows credits;
    private final LabTime labTime;
    private final Clock clock;

    JdbcRunLog(
            Bookings bookings,
            Releases releases,
            RunRows runs,
            EventWriter events,
            StopLog stopLog,
            Resets resets,
            Witnesses witnesses,
            Watching watching,
            CloseOuts closeOuts,
            CreditRows credits,
            LabTime labTime,
            Clock clock) {
        this.bookings = bookings;
        this.releases = releases;
        this.runs = runs;
        this.events = events;
        this.stopLog = stopLog;
        this.resets = resets;
        this.witnesses = witnesses;
        this.watching = watching;
        this.closeOuts = closeOuts;
        this.credits = credits;
        this.labTime = labTime;
        this.clock = clock;
    }

    @Override
    public Logged start(BookingId id, String code, PersonId by) {
        Instant now = now();
        Booking before = bookings.lock(id);
        if (!witnesses.mayStart(before, by)) {
            return notTheirs(before);
        }
        Releases.StartPermission permission = releases.useForStart(id, code, by);
        if (permission instanceof Releases.StartPermission.Refused refused) {
            return new Logged.Refused(refused.code(), refused.says());
        }
        Release release = ((Releases.StartPermission.Given) permission).release();
        Booking booking = moved(bookings.markRunning(id, by));
        Run run = running(booking, release, now);
        runs.involve(run, release.operator(), Part.OPERATOR);
        runs.involve(run, release.attendant(), Part.ATTENDANT);
        runs.involve(run, release.releaser(), Part.RELEASER);
        String watched = release.firstRun()
                ? "First run of this program version on this cell, or first after a return: the releaser watches it."
                : "";
        return new Logged.Kept(events.started(booking, run, release, watched, by, now));
    }

    private Run running(Booking booking, Release release, Instant now) {
        Optional<Run> stopped = runs.of(booking.id());
        if (stopped.isPresent()) {
            Run again = stopped.get().startedAgain(release.cellVersion(), release.revision());
            runs.change(again);
            return again;
        }
        Run run = new Run(
                RunId.next(),
                booking.id(),
                booking.cell(),
                release.cellVersion(),
                release.revision(),
                RunState.RUNNING,
                now,
                null,
                null,
                0,
                0,
                List.of(),
                1);
        runs.add(run, labTime.date(now));
        return run;
    }

    @Override
    public RunEvent stop(CellId cell, Kind kind, PersonId by) {
        return stopLog.stop(cell, kind, by, now());
    }

    @Override
    public Logged reset(BookingId id, ResetCause cause, String words, Witness by) {
        return resets.of(bookings.lock(id), new Resets.Found(cause, words, by), now());
    }

    @Override
    public Logged resetAt(CellId cell, ResetCause cause, String words, Witness by) {
        return resets.at(cell, new Resets.Found(cause, words, by), now());
    }

    @Override
    public Logged watched(BookingId id, Witness by) {
        Booking booking = bookings.lock(id);
        return watching.watched(booking, run(booking), by, now());
    }

    @Override
    public Logged pass(BookingId id, PersonId by) {
        Booking booking = bookings.lock(id);
        if (!witnesses.mayLog(booking, by)) {
            return notTheirs(booking);
        }
        Run run = run(booking);
        if (run == null || run.state() != RunState.RUNNING) {
            return new Logged.Refused("state", "The run is not running; no pass was counted.");
        }
        Run counted = run.passed();
        runs.change(counted);
        watching.ranThrough(id);
        return new Logged.Kept(events.add(
                booking,
                counted,
                Kind.PASS,
                null,
                String.valueOf(counted.passes()),
                watching.overLimit(id, events.passesSinceStart(id) + 1),
                by,
                now()));
    }

    @Override
    public Logged finish(BookingId id, int passes, PersonId by) {
        return bookings.lock(id).state() == BookingState.STOPPED
                ? new Logged.Refused("why", "Say why it was stopped, then finish.")
                : finish(id, passes, "", by);
    }

    @Override
    public Logged finishStopped(BookingId id, int passes, ResetCause cause, PersonId by) {
        Booking booking = bookings.lock(id);
        if (booking.state() != BookingState.STOPPED) {
            return new Logged.Refused(
                    "state", "The booking is " + booking.state().words() + "; no stop waits for its cause.");
        }
        return cause == ResetCause.PRECAUTION && events.protectiveStops(id) > 0
                ? new Logged.Refused("why", "The arm stopped itself, so it was no precaution. Choose what it was.")
                : finishStopped(booking, passes, cause, by, now());
    }

    /** What a precaution took, from the stop to now, is credited; what is left of the slot was given up, not lost. */
    private Logged finishStopped(Booking booking, int passes, ResetCause cause, PersonId by, Instant now) {
        BookingId id = booking.id();
        Optional<Instant> stoppedAt = credits.lastStop(id);
        Logged finished = finish(id, passes, "Stopped because: " + cause.words() + ".", by);
        if (finished instanceof Logged.Kept && cause == ResetCause.PRECAUTION) {
            stoppedAt.ifPresent(at -> credits.credit(booking, run(booking), at, now, by, now));
        }
        return finished;
    }

    private Logged finish(BookingId id, int passes, String words, PersonId by) {
        Instant now = now();
        Booking locked = bookings.lock(id);
        if (!witnesses.mayLog(locked, by)) {
            return notTheirs(locked);
        }
        Run run = run(locked);
        if (run == null || (run.state() != RunState.RUNNING && run.state() != RunState.STOPPED)) {
            return new Logged.Refused(
                    "state", "The booking is " + locked.state().words() + "; there is nothing to finish.");
        }
        releases.withdraw(id, LapseRule.WITHDRAWN, "The run was finished instead.", by);
        if (bookings.markFinished(id, by) instanceof Transition.Refused no) {
            return new Logged.Refused("state", no.says());
        }
        releases.latest(id)
                .filter(release -> release.usedAt() != null)
                .ifPresent(release -> releases.end(release.id()));
        if (passes > run.passes()) {
            watching.ranThrough(id);
        }
        Run finished = run.finished(passes, now);
        runs.change(finished);
        return new Logged.Kept(events.add(
                locked,
                finished,
                Kind.FINISHED,
                null,
                String.valueOf(passes),
                (words + watching.unwatched(id)).strip(),
                by,
                now));
    }

    @Override
    public Logged closeOut(BookingId id, CloseOutItem item, String value, PersonId by) {
        Booking booking = bookings.lock(id);
        return witnesses.mayLog(booking, by)
                ? closeOuts.tap(booking, run(booking), item, value, by, now())
                : notTheirs(booking);
    }

    @Override
    public Logged correct(RunId id, UUID event, String words, PersonId by) {
        Run run = runs.find(id).orElse(null);
        if (run == null || !events.belongs(event, run.booking())) {
            return new Logged.Refused("event", "That event is not in this run's log.");
        }
        Booking booking = bookings.lock(run.booking());
        if (!witnesses.mayLog(booking, by) && !run.involves(by)) {
            return notTheirs(booking);
        }
        return words.isBlank()
                ? new Logged.Refused("words", "Say what was different, and why it is corrected.")
                : new Logged.Kept(events.correction(booking, run, event, words.strip(), by, now()));
    }

    private Logged notTheirs(Booking booking) {
        return new Logged.Refused(
                "not-theirs",
                "Only " + witnesses.names(booking) + " or the lab's staff log this run; anyone may press the e-stop.");
    }

    private @Nullable Run run(Booking booking) {
        return runs.of(booking.id()).orElse(null);
    }

    static Booking moved(Transition transition) {
        if (transition instanceof Transition.Moved moved) {
            return moved.booking();
        }
        throw new IllegalStateException(((Transition.Refused) transition).says());
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
