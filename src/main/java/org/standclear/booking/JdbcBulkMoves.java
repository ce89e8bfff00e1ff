package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.interceptor.TransactionAspectSupport;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Moves everybody as planned in one transaction, or nobody. */
@Service
@Transactional
class JdbcBulkMoves implements BulkMoves {

    private final BulkPlan plans;
    private final BulkRows bulk;
    private final BookingMoves moves;
    private final BookingDesk desk;
    private final JdbcWaitingList waitingList;
    private final MakeUps makeUps;
    private final MoveBack moveBack;
    private final BookingLetters letters;
    private final Cells cells;
    private final Trail trail;
    private final Labs labs;

    JdbcBulkMoves(
            BulkPlan plans,
            BulkRows bulk,
            BookingMoves moves,
            BookingDesk desk,
            JdbcWaitingList waitingList,
            MakeUps makeUps,
            MoveBack moveBack,
            BookingLetters letters,
            Cells cells,
            Trail trail,
            Labs labs) {
        this.plans = plans;
        this.bulk = bulk;
        this.moves = moves;
        this.desk = desk;
        this.waitingList = waitingList;
        this.makeUps = makeUps;
        this.moveBack = moveBack;
        this.letters = letters;
        this.cells = cells;
        this.trail = trail;
        this.labs = labs;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Planned> plan(Which which) {
        return plans.of(which);
    }

    @Override
    public Done moveAll(Which which, String seen, PersonId by, String reason) {
        Optional<List<Planned>> looked = plans.seen(which, seen);
        if (looked.isEmpty()) {
            return new Done.Refused(
                    "Bookings or free slots have changed since the plan was made. Nobody was moved; look at the new plan.");
        }
        List<Planned> plan = looked.get();
        if (plan.isEmpty()) {
            return new Done.Refused("Nobody stands on the cell in that time any more.");
        }
        List<Moved> moved = new ArrayList<>();
        for (Planned one : plan) {
            Tried tried = moveOne(one, by, reason);
            if (tried instanceof Tried.Refused refused) {
                TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
                return new Done.Refused("Nobody was moved, since one booking cannot go where it was planned: "
                        + refused.says() + " Look at the new plan.");
            }
            moved.add(((Tried.Done) tried).moved());
        }
        UUID id = Id.newValue();
        bulk.insert(labs.theLab().id(), new BulkMove(id, which.cell(), by, moves.now(), reason, moved, null));
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "booking.all-moved",
                        id,
                        by,
                        (which.unfitOnly() ? "Moved who needs what the cell has not off " : "Moved everybody off ")
                                + cells.find(which.cell()).map(Cell::name).orElse("a cell") + ": " + reason)
                .with("bookings", moved.size()));
        return new Done.All(id);
    }

    /** What came of moving one. */
    private sealed interface Tried {

        record Done(Moved moved) implements Tried {}

        record Refused(String says) implements Tried {}
    }

    /** With the attendant where the plan has it so, else without: a second person can be named again, a turn not. */
    private Tried moveOne(Planned one, PersonId by, String reason) {
        Booking booking = one.booking();
        Slot to = one.to();
        if (to == null) {
            if (desk.moveByStaff(booking.id(), by, reason) instanceof Transition.Refused refused) {
                return new Tried.Refused(refused.says());
            }
            waitInstead(booking, by);
            return new Tried.Done(new Moved(booking.id(), null));
        }
        Outcome outcome = desk.moveTo(new MoveBooking(booking.id(), to.cell(), to.start(), one.attended(), by, reason));
        if (outcome instanceof Outcome.Refused refused && refused.rule().startsWith("attendant")) {
            outcome = desk.moveTo(new MoveBooking(booking.id(), to.cell(), to.start(), false, by, reason));
        }
        return outcome instanceof Outcome.Booked booked
                ? new Tried.Done(new Moved(booking.id(), booked.booking().id()))
                : new Tried.Refused(((Outcome.Refused) outcome).says());
    }

    private void waitInstead(Booking booking, PersonId by) {
        Instant now = moves.now();
        makeUps.grant(
                labs.theLab().id(),
                booking.operator(),
                booking.id(),
                "the cell went down, no other slot was free",
                by,
                now);
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
