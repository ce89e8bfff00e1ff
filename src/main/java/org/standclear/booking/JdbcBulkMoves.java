package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.interceptor.TransactionAspectSupport;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.web.NotFoundException;
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
    private final ClaimLocks locks;
    private final People people;
    private final Trail trail;
    private final WhoActs whoActs;
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
            ClaimLocks locks,
            People people,
            Trail trail,
            WhoActs whoActs,
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
        this.locks = locks;
        this.people = people;
        this.trail = trail;
        this.whoActs = whoActs;
        this.labs = labs;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Planned> plan(Which which) {
        return plans.of(which);
    }

    @Override
    public Done moveAll(Which which, String seen, PersonId by, String reason) {
        whoActs.asStaff(by, "cell");
        whoActs.cellOfThisLab(which.cell());
        Optional<SeenPlan> looked = SeenPlan.read(seen);
        if (looked.isEmpty()) {
            return new Done.Refused("No plan came with the form. Nobody was moved; look at the plan first.");
        }
        lock(plans.standing(which));
        BulkPlan.Now now = plans.asSeen(which, looked.get());
        if (now.plan().isEmpty()) {
            return new Done.Refused("Nobody stands on the cell in that time any more.");
        }
        if (!now.lost().isEmpty()) {
            return new Done.Refused(tooFew(now.lost()));
        }
        Instant at = moves.now();
        List<Moved> moved = new ArrayList<>();
        for (Planned one : now.plan()) {
            Tried tried = moveOne(
                    one, by, reason, at, now.elsewhere().contains(one.booking().id()));
            if (tried instanceof Tried.Refused refused) {
                TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
                return new Done.Refused("Nobody was moved, since one booking cannot go where it was planned: "
                        + refused.says() + " Look at the new plan.");
            }
            moved.add(((Tried.Done) tried).moved());
        }
        UUID id = Id.newValue();
        bulk.insert(labs.theLab().id(), new BulkMove(id, which.cell(), by, at, reason, moved, null));
        tell(id, which, by, reason, moved.size());
        return new Done.All(id);
    }

    /** In the order in which all lock: bookings, cells, what is claimed. Nobody takes a slot between the look and the move. */
    private void lock(List<Planned> standing) {
        standing.stream()
                .map(one -> one.booking().id())
                .sorted(Comparator.comparing(BookingId::value))
                .forEach(moves::lock);
        List<CellId> running = cells.all().stream()
                .filter(cell -> cell.state().mayRun())
                .map(Cell::id)
                .sorted(Comparator.comparing(CellId::value))
                .toList();
        running.forEach(cells::lock);
        List<UUID> subjects =
                new ArrayList<>(running.stream().map(CellId::value).toList());
        standing.forEach(one -> {
            PersonId attendant = one.booking().attendant();
            subjects.add(one.booking().operator().value());
            if (attendant != null) {
                subjects.add(attendant.value());
            }
        });
        locks.lock(subjects);
    }

    private String tooFew(List<Booking> lost) {
        String who =
                lost.stream().map(one -> people.printedName(one.operator())).collect(Collectors.joining(", "));
        return "Slots of the plan were taken since it was made, and no other is left for " + who
                + ". Nobody was moved; look at the new plan.";
    }

    private void tell(UUID id, Which which, PersonId by, String reason, int bookings) {
        String whom = which.unfitOnly() ? "Moved who needs what the cell has not off " : "Moved everybody off ";
        String cell = cells.find(which.cell()).map(Cell::name).orElse("a cell");
        trail.append(TrailEntry.of(labs.theLab().id(), "booking.all-moved", id, by, whom + cell + ": " + reason)
                .with("bookings", bookings));
    }

    /** What came of moving one. */
    private sealed interface Tried {

        record Done(Moved moved) implements Tried {}

        record Refused(String says) implements Tried {}
    }

    /** With the attendant where the plan has it so, else without: a second person can be named again, a turn not. */
    private Tried moveOne(Planned one, PersonId by, String reason, Instant at, boolean elsewhere) {
        Booking booking = one.booking();
        Slot to = one.to();
        if (to == null) {
            if (desk.moveByStaff(booking.id(), by, reason) instanceof Transition.Refused refused) {
                return new Tried.Refused(refused.says());
            }
            waitInstead(booking, by, at);
            return new Tried.Done(new Moved(booking.id(), null, elsewhere));
        }
        Outcome outcome = desk.moveTo(new MoveBooking(booking.id(), to.cell(), to.start(), one.attended(), by, reason));
        if (outcome instanceof Outcome.Refused refused && refused.rule().startsWith("attendant")) {
            outcome = desk.moveTo(new MoveBooking(booking.id(), to.cell(), to.start(), false, by, reason));
        }
        return outcome instanceof Outcome.Booked booked
                ? new Tried.Done(new Moved(booking.id(), booked.booking().id(), elsewhere))
                : new Tried.Refused(((Outcome.Refused) outcome).says());
    }

    /** From the very instant of the move, by which the wait is found again should the move be undone. */
    private void waitInstead(Booking booking, PersonId by, Instant now) {
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
        return bulk.find(labs.theLab().id(), id, false);
    }

    @Override
    public Optional<String> undo(UUID id, PersonId by) {
        whoActs.asStaff(by, "move");
        BulkMove move = bulk.find(labs.theLab().id(), id, true).orElseThrow(() -> new NotFoundException("move"));
        if (move.undoneAt() != null) {
            return Optional.of("The move was undone already.");
        }
        // offers before cells, as who takes one locks them: so everybody is asked about before anybody goes back
        Set<BookingId> stay = move.moved().stream()
                .filter(one -> moveBack.gotAnother(one, move.at()))
                .map(Moved::was)
                .collect(Collectors.toSet());
        for (Moved one : move.moved()) {
            if (stay.contains(one.was())) {
                bulk.stays(id, one.was());
                continue;
            }
            Optional<String> refusal = moveBack.back(one, move.at(), by);
            if (refusal.isPresent()) {
                TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
                return refusal;
            }
        }
        bulk.undone(id, by, moves.now());
        trail.append(TrailEntry.of(
                        labs.theLab().id(), "booking.all-moved-back", id, by, "Undid the move of everybody off a cell")
                .with("stay", stay.size()));
        return Optional.empty();
    }
}
