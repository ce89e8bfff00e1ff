package org.standclear.run.records;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.live.LiveEvents;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunEvent.Kind;
import org.standclear.signoff.Release;

/** Adds an event to the log and to the lab's record at once. */
@Component
class EventWriter {

    private final EventLog log;
    private final RunTrail trail;
    private final LiveEvents live;
    private final People people;

    EventWriter(EventLog log, RunTrail trail, LiveEvents live, People people) {
        this.log = log;
        this.trail = trail;
        this.live = live;
        this.people = people;
    }

    RunEvent started(Booking booking, Run run, Release release, String words, PersonId by, Instant at) {
        return keep(new RunEvent(
                Id.newValue(),
                booking.cell(),
                booking.id(),
                run.id(),
                release.id(),
                Kind.STARTED,
                null,
                release.code(),
                words,
                by,
                at,
                null));
    }

    RunEvent add(
            Booking booking,
            @Nullable Run run,
            Kind kind,
            @Nullable Integer item,
            String answer,
            String words,
            PersonId by,
            Instant at) {
        return keep(new RunEvent(
                Id.newValue(),
                booking.cell(),
                booking.id(),
                run == null ? null : run.id(),
                null,
                kind,
                item,
                answer,
                words,
                by,
                at,
                null));
    }

    /** A stop, or its reset, on a cell where nobody is booked. */
    RunEvent unbooked(CellId cell, Kind kind, String answer, String words, PersonId by, Instant at) {
        return keep(new RunEvent(Id.newValue(), cell, null, null, null, kind, null, answer, words, by, at, null));
    }

    RunEvent correction(Booking booking, Run run, UUID corrects, String words, PersonId by, Instant at) {
        return keep(new RunEvent(
                Id.newValue(),
                booking.cell(),
                booking.id(),
                run.id(),
                null,
                Kind.CORRECTION,
                null,
                "",
                words,
                by,
                at,
                corrects));
    }

    int closeOutTaps(BookingId booking) {
        return (int) log.of(booking).stream()
                .filter(event -> event.kind() == Kind.CLOSE_OUT)
                .count();
    }

    int passesSinceStart(BookingId booking) {
        int passes = 0;
        for (RunEvent event : log.of(booking)) {
            passes = switch (event.kind()) {
                case STARTED -> 0;
                case PASS -> passes + 1;
                default -> passes;
            };
        }
        return passes;
    }

    int protectiveStops(BookingId booking) {
        return (int) log.of(booking).stream()
                .filter(event -> event.kind() == Kind.PROTECTIVE_STOP)
                .count();
    }

    /** Whether somebody watched the run since its latest start. */
    boolean isWatched(BookingId booking) {
        boolean watched = false;
        for (RunEvent event : log.of(booking)) {
            watched = switch (event.kind()) {
                case STARTED -> false;
                case WATCHED -> true;
                default -> watched;
            };
        }
        return watched;
    }

    Optional<Instant> lastStop(BookingId booking) {
        return log.of(booking).stream()
                .filter(event -> event.kind().isStop())
                .map(RunEvent::at)
                .reduce((one, later) -> later);
    }

    boolean belongs(UUID event, BookingId booking) {
        return log.of(booking).stream().anyMatch(one -> one.id().equals(event));
    }

    private RunEvent keep(RunEvent event) {
        log.add(event);
        live.cellChanged(event.cell());
        String said = event.words().isEmpty() ? "" : " " + event.words();
        trail.append(event, people.printedName(event.account()) + " logged: " + what(event) + "." + said);
        return event;
    }

    private static String what(RunEvent event) {
        return switch (event.kind()) {
            case STARTED -> "started under release " + event.answer();
            case PASS -> "pass " + event.answer();
            case FINISHED -> "finished after " + event.answer() + ("1".equals(event.answer()) ? " pass" : " passes");
            default -> event.kind().words();
        };
    }
}
