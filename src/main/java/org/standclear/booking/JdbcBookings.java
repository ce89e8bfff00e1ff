package org.standclear.booking;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.LabTime;

/** Bookings from the table, each as it counts now. */
@Service
@Transactional
class JdbcBookings implements Bookings {

    private final BookingRows rows;
    private final BookingMoves moves;
    private final AttendantSwap swap;
    private final LabTime labTime;

    JdbcBookings(BookingRows rows, BookingMoves moves, AttendantSwap swap, LabTime labTime) {
        this.rows = rows;
        this.moves = moves;
        this.swap = swap;
        this.labTime = labTime;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Booking> find(BookingId id) {
        return rows.find(id).map(life -> life.bookingAsOf(moves.now(), moves.settings()));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Booking> all(Collection<BookingId> ids) {
        return rows.all(ids).stream()
                .map(life -> life.bookingAsOf(moves.now(), moves.settings()))
                .toList();
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Booking lock(BookingId id) {
        return moves.lock(id).booking();
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Optional<Booking> lockUnlessLocked(BookingId id) {
        return rows.lockHereUnlessLocked(id).map(life -> life.bookingAsOf(moves.now(), moves.settings()));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Booking> onDay(CellId cell, LocalDate day) {
        return holding(rows.ofCell(cell, startOf(day), startOf(day.plusDays(1))))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Booking> of(PersonId person, Instant endingAfter) {
        return holding(rows.ofPerson(person, endingAfter)).toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Booking> inRun(PersonId person) {
        return rows.inRun(person).stream().map(BookingLife::booking).toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Booking> recordOf(PersonId person, int atMost) {
        Instant now = moves.now();
        List<BookingLife> over = new ArrayList<>(rows.ofPerson(person, now));
        java.util.Collections.reverse(over);
        over.addAll(rows.pastOf(person, now, atMost));
        return asOfNow(over)
                .filter(booking ->
                        !booking.state().holdsItsSlot() || !booking.end().isAfter(now))
                .limit(atMost)
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Booking> awaitingCloseOut(CellId cell, BookingId otherThan) {
        return asOfNow(rows.startedButNotClosedOut(cell, otherThan)).toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Booking> currentOrNext(CellId cell, Instant at) {
        return holding(rows.ofCell(cell, at, startOf(labTime.date(at).plusDays(1))))
                .findFirst();
    }

    @Override
    public Transition attachRevision(BookingId id, RevisionId revision, PersonId by) {
        return moves.move(
                id, new Told("program-named", by, "the program was named"), life -> life.nameProgram(revision));
    }

    @Override
    public Transition nameAttendant(BookingId id, PersonId attendant, PersonId by) {
        return swap.name(id, attendant, by);
    }

    @Override
    public Transition handOver(BookingId id, PersonId attendant, PersonId by) {
        return swap.handOver(id, attendant, by);
    }

    @Override
    public Transition askForAttendant(BookingId id, PersonId by) {
        return swap.leaveOpen(id, by);
    }

    @Override
    public Transition markChecked(BookingId id, PersonId by) {
        return moves.move(id, new Told("checked", by, "the program's answer is within limits"), BookingLife::check);
    }

    @Override
    public Transition backToBooked(BookingId id, String reason) {
        return simple(id, BookingEvent.GO_BACK_TO_BOOKED, "back-to-booked", null, reason);
    }

    @Override
    public Transition checkIn(BookingId id, PersonId by) {
        return moves.move(
                id,
                new Told("checked-in", by, "the operator is at the cell"),
                life -> life.checkIn(moves.now(), moves.settings()));
    }

    @Override
    public Transition markReady(BookingId id, PersonId by) {
        return moves.move(
                id, new Told("ready", by, "the session list is signed"), life -> life.becomeReady(moves.now()));
    }

    @Override
    public Transition markReleased(BookingId id, PersonId by) {
        return simple(id, BookingEvent.RELEASE, "released", by, "released");
    }

    @Override
    public Transition backToReady(BookingId id, String reason) {
        return simple(id, BookingEvent.GO_BACK_TO_READY, "back-to-ready", null, reason);
    }

    @Override
    public Transition markRunning(BookingId id, PersonId by) {
        return moves.move(id, new Told("started", by, "the run started"), life -> life.start(moves.now()));
    }

    @Override
    public Transition markStopped(BookingId id, PersonId by, String reason) {
        return simple(id, BookingEvent.STOP, "stopped", by, reason);
    }

    @Override
    public Transition readyAfterStop(BookingId id, PersonId by) {
        return simple(id, BookingEvent.RESET, "ready-after-stop", by, "the stop was reset, its cause is known");
    }

    @Override
    public Transition checkedAfterStop(BookingId id, PersonId by) {
        return simple(
                id,
                BookingEvent.RESET_ANEW,
                "checked-after-stop",
                by,
                "the stop was reset, its cause is known; the session list is signed anew");
    }

    @Override
    public Transition markFinished(BookingId id, PersonId by) {
        return moves.move(id, new Told("finished", by, "the run is finished"), BookingLife::finish);
    }

    @Override
    public Transition markClosedOut(BookingId id, PersonId by) {
        return simple(id, BookingEvent.CLOSE_OUT, "closed-out", by, "the cell is handed back");
    }

    private Transition simple(BookingId id, BookingEvent event, String kind, @Nullable PersonId by, String words) {
        Function<BookingLife, Optional<String>> take = life -> life.take(event);
        return moves.move(id, new Told(kind, by, words), take);
    }

    private Instant startOf(LocalDate day) {
        return day.atStartOfDay(labTime.zone()).toInstant();
    }

    private Stream<Booking> asOfNow(List<BookingLife> lives) {
        Instant now = moves.now();
        BookingSettings settings = moves.settings();
        return lives.stream().map(life -> life.bookingAsOf(now, settings));
    }

    private Stream<Booking> holding(List<BookingLife> lives) {
        return asOfNow(lives).filter(booking -> booking.state().holdsItsSlot());
    }
}
