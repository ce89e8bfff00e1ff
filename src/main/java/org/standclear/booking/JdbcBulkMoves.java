package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.interceptor.TransactionAspectSupport;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Plans each booking onto the earliest slot that nobody earlier in the plan takes, and moves them in one transaction. */
@Service
@Transactional
class JdbcBulkMoves implements BulkMoves {

    private static final int LOOKED_AT = 200;

    private final BookingRows rows;
    private final BulkRows bulk;
    private final BookingMoves moves;
    private final BookingDesk desk;
    private final FreeSlots freeSlots;
    private final JdbcWaitingList waitingList;
    private final MakeUps makeUps;
    private final MoveBack moveBack;
    private final BookingLetters letters;
    private final Courses courses;
    private final Cells cells;
    private final Trail trail;
    private final Labs labs;

    JdbcBulkMoves(
            BookingRows rows,
            BulkRows bulk,
            BookingMoves moves,
            BookingDesk desk,
            FreeSlots freeSlots,
            JdbcWaitingList waitingList,
            MakeUps makeUps,
            MoveBack moveBack,
            BookingLetters letters,
            Courses courses,
            Cells cells,
            Trail trail,
            Labs labs) {
        this.rows = rows;
        this.bulk = bulk;
        this.moves = moves;
        this.desk = desk;
        this.freeSlots = freeSlots;
        this.waitingList = waitingList;
        this.makeUps = makeUps;
        this.moveBack = moveBack;
        this.letters = letters;
        this.courses = courses;
        this.cells = cells;
        this.trail = trail;
        this.labs = labs;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Planned> plan(CellId cell, Instant until) {
        Instant now = moves.now();
        List<Planned> standing = rows.ofCell(cell, now, until).stream()
                .map(life -> life.bookingAsOf(now, moves.settings()))
                .filter(booking -> booking.state().ordinal() <= BookingState.READY.ordinal())
                .map(booking -> new Planned(booking, null, due(booking)))
                .sorted(Comparator.comparing(Planned::due, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(one -> one.booking().start())
                        .thenComparing(one -> one.booking().id().value()))
                .toList();
        List<Planned> plan = new ArrayList<>();
        for (Planned one : standing) {
            plan.add(new Planned(one.booking(), slotFor(one.booking(), cell, plan), one.due()));
        }
        return List.copyOf(plan);
    }

    private @Nullable Instant due(Booking booking) {
        return booking.assignment() == null
                ? null
                : courses.assignmentOf(booking.operator(), booking.assignment())
                        .map(Assignment::due)
                        .orElse(null);
    }

    /** On another cell, not before the booking would have begun, clear of everybody who is planned already. */
    private @Nullable Slot slotFor(Booking booking, CellId down, List<Planned> plan) {
        return freeSlots.next(booking.operator(), booking.start(), LOOKED_AT).stream()
                .filter(slot -> !slot.cell().equals(down) && !slot.start().isBefore(moves.now()))
                .filter(slot -> plan.stream().noneMatch(other -> clash(other, booking, slot)))
                .findFirst()
                .orElse(null);
    }

    /** The same cell, or the same people, at the same time. */
    private static boolean clash(Planned other, Booking booking, Slot slot) {
        Slot to = other.to();
        boolean shared =
                people(other.booking()).anyMatch(person -> people(booking).anyMatch(person::equals));
        return to != null && slot.overlaps(to.start(), to.end()) && (to.cell().equals(slot.cell()) || shared);
    }

    private static Stream<PersonId> people(Booking booking) {
        return Stream.of(Optional.of(booking.operator()), Optional.ofNullable(booking.attendant()))
                .flatMap(Optional::stream);
    }

    @Override
    public Done moveAll(CellId cell, Instant until, String seen, PersonId by, String reason) {
        List<Planned> plan = plan(cell, until);
        if (plan.isEmpty()) {
            return new Done.Refused("Nobody stands on the cell in that time any more.");
        }
        if (!BulkMoves.fingerprint(plan).equals(seen)) {
            return new Done.Refused(
                    "Bookings or free slots have changed since the plan was made. Nobody was moved; look at the new plan.");
        }
        List<Moved> moved = new ArrayList<>();
        for (Planned one : plan) {
            Optional<Moved> done = moveOne(one, by, reason);
            if (done.isEmpty()) {
                TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
                return new Done.Refused(
                        "Somebody was faster with one of the slots. Nobody was moved; look at the new plan.");
            }
            moved.add(done.get());
        }
        UUID id = Id.newValue();
        bulk.insert(labs.theLab().id(), new BulkMove(id, cell, by, moves.now(), reason, moved, null));
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "booking.all-moved",
                        id,
                        by,
                        "Moved everybody off "
                                + cells.find(cell).map(Cell::name).orElse("a cell") + ": " + reason)
                .with("bookings", moved.size()));
        return new Done.All(id);
    }

    /** First with the attendant, then without: a second person can be named again, a turn not. */
    private Optional<Moved> moveOne(Planned one, PersonId by, String reason) {
        Booking booking = one.booking();
        Slot to = one.to();
        if (to == null) {
            if (desk.moveByStaff(booking.id(), by, reason) instanceof Transition.Refused) {
                return Optional.empty();
            }
            waitInstead(booking, by);
            return Optional.of(new Moved(booking.id(), null));
        }
        Outcome outcome = desk.moveTo(new MoveBooking(booking.id(), to.cell(), to.start(), true, by, reason));
        if (outcome instanceof Outcome.Refused refused && refused.rule().startsWith("attendant")) {
            outcome = desk.moveTo(new MoveBooking(booking.id(), to.cell(), to.start(), false, by, reason));
        }
        return outcome instanceof Outcome.Booked booked
                ? Optional.of(new Moved(booking.id(), booked.booking().id()))
                : Optional.empty();
    }

    private void waitInstead(Booking booking, PersonId by) {
        Instant now = moves.now();
        makeUps.grant(labs.theLab().id(), booking.operator(), booking.id(), by, now);
        waitingList.put(
                new WaitingList.JoinWait(
                        booking.operator(),
                        null,
                        now,
                        now.plusSeconds(86_400L * moves.settings().horizonDays()),
                        booking.course(),
                        booking.assignment(),
                        by),
                true,
                now);
        letters.madeUp(booking);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<BulkMove> find(UUID id) {
        return bulk.find(id, false);
    }

    @Override
    public Optional<String> undo(UUID id, PersonId by) {
        BulkMove move = bulk.find(id, true).orElseThrow();
        if (move.undoneAt() != null) {
            return Optional.of("The move was undone already.");
        }
        for (Moved one : move.moved()) {
            Optional<String> refusal = moveBack.back(one, by);
            if (refusal.isPresent()) {
                TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
                return refusal;
            }
        }
        bulk.undone(id, by, moves.now());
        trail.append(TrailEntry.of(
                labs.theLab().id(), "booking.all-moved-back", id, by, "Undid the move of everybody off a cell"));
        return Optional.empty();
    }
}
