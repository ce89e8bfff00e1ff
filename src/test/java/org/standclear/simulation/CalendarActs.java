package org.standclear.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk.Closing;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.BulkMoves;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.booking.MoveBooking;
import org.standclear.booking.Turns.Lost;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * What happens to the calendar beside single bookings: people wait and are offered slots, staff keep cells for themselves,
 * move everybody off a cell and back, and make up for turns that were lost.
 */
final class CalendarActs {

    private static final int SLOTS_AFTER = 5;

    private final Lab lab;

    /** Offers that somebody was told of; some are answered when they are over. */
    private final List<UUID> offered = new ArrayList<>();

    private final List<UUID> closed = new ArrayList<>();
    private final List<UUID> moves = new ArrayList<>();
    private @Nullable Seen seen;

    CalendarActs(Lab lab) {
        this.lab = lab;
    }

    /** A plan as somebody looked at it. */
    private record Seen(BulkMoves.Which which, String written) {}

    /** Any of it, about the bench day that begins then. */
    String any(Instant morning) {
        return switch (lab.chance.between(0, 19)) {
            case 0, 1, 2, 3 -> "waits " + join(morning);
            case 4, 5, 6, 7, 8 -> "offers " + round();
            case 9, 10, 11 -> "offer " + answer();
            case 12 -> "wait " + leave();
            case 13, 14 -> keepCell(morning);
            case 15 -> "all moved " + moveAll(morning);
            case 16 -> "all moved back " + putBack();
            case 17 -> "moved " + moveOne(morning);
            default -> "turn " + makeUp();
        };
    }

    private String join(Instant morning) {
        Person who = lab.chance.one(lab.cast.students);
        CellId cell = lab.chance.percent(50) ? lab.chance.one(lab.cast.cells) : null;
        Instant from = lab.chance.percent(70) ? morning.plus(Duration.ofHours(2)) : lab.clock.instant();
        JoinWait wanted = new JoinWait(who.id(), cell, from, morning.plus(Duration.ofHours(5)), null, null, who.id());
        return who.printedName() + " " + Lab.word(lab.doors.waitingList().join(wanted));
    }

    /** What the application does by itself every ten seconds. */
    private String round() {
        int made = lab.doors.waitingList().round();
        for (Waiting one : lab.doors.waitingList().all()) {
            if (one.offer() != null && !offered.contains(one.offer().id())) {
                offered.add(one.offer().id());
            }
        }
        return "made " + made
                + (made > 0 && lab.chance.percent(60) ? ", " + answer(offered.get(offered.size() - 1)) : "");
    }

    /** In time or too late; now and then twice. */
    private String answer() {
        if (offered.isEmpty()) {
            return round();
        }
        return answer(lab.chance.one(offered));
    }

    private String answer(UUID id) {
        if (lab.chance.percent(80)) {
            offered.remove(id);
        }
        PersonId person = lab.doors.waitingList().offer(id).orElseThrow().person();
        if (lab.chance.percent(25)) {
            return "declined " + lab.doors.waitingList().decline(id, person);
        }
        Outcome outcome = lab.doors.waitingList().accept(id, person);
        if (outcome instanceof Outcome.Booked booked) {
            lab.made.add(booked.booking().id());
        }
        return "taken " + says(outcome);
    }

    private String leave() {
        List<Waiting> all = lab.doors.waitingList().all();
        if (all.isEmpty()) {
            return "of nobody";
        }
        Waiting one = lab.chance.one(all);
        return "left " + lab.doors.waitingList().leave(one.id(), one.person());
    }

    private String keepCell(Instant morning) {
        if (!closed.isEmpty() && lab.chance.percent(60)) {
            return "reopened " + lab.doors.bookingDesk().reopen(closed.remove(0), lab.cast.instructor.id());
        }
        CellId cell = lab.chance.one(lab.cast.cells);
        Instant from = slot(morning, cell);
        Closing outcome = lab.doors
                .bookingDesk()
                .close(new CloseCell(
                        cell,
                        from,
                        from.plus(Duration.ofMinutes(lab.chance.between(1, 3) * 30L)),
                        CellClosure.Kind.MAINTENANCE,
                        "cables are looked over",
                        lab.cast.instructor.id()));
        if (outcome instanceof Closing.Closed done) {
            closed.add(done.closure().id());
        }
        return "kept for staff " + Lab.word(outcome);
    }

    /** As planned a moment ago, or as planned when the world was another. */
    private String moveAll(Instant morning) {
        Seen plan = seen;
        if (plan == null) {
            BulkMoves.Which which = new BulkMoves.Which(
                    lab.chance.one(lab.cast.cells), morning.plus(Duration.ofHours(lab.chance.between(3, 9))), false);
            plan = new Seen(which, BulkMoves.written(lab.doors.bulkMoves().plan(which)));
            if (lab.chance.percent(30)) {
                seen = plan;
                return "planned";
            }
        }
        seen = null;
        BulkMoves.Done outcome =
                lab.doors.bulkMoves().moveAll(plan.which(), plan.written(), lab.cast.instructor.id(), "it rattles");
        if (outcome instanceof BulkMoves.Done.All all) {
            moves.add(all.id());
            return "All "
                    + lab.doors.bulkMoves().find(all.id()).orElseThrow().moved().size();
        }
        return Lab.word(outcome);
    }

    private String putBack() {
        if (moves.isEmpty()) {
            return "none";
        }
        UUID id = lab.chance.percent(80) ? moves.remove(moves.size() - 1) : lab.chance.one(moves);
        return lab.doors.bulkMoves().undo(id, lab.cast.instructor.id()).isEmpty() ? "Done" : "Refused";
    }

    private String moveOne(Instant morning) {
        Instant now = lab.clock.instant();
        List<Booking> ahead = lab.cast.students.stream()
                .flatMap(one -> lab.doors.bookings().of(one.id(), now).stream())
                .filter(one -> lab.cast.cells.contains(one.cell()))
                .toList();
        if (ahead.isEmpty()) {
            return "none";
        }
        Booking one = lab.chance.one(ahead);
        CellId to = lab.chance.one(lab.cast.cells);
        return says(lab.doors
                .bookingDesk()
                .moveTo(new MoveBooking(
                        one.id(),
                        to,
                        slot(morning, to),
                        lab.chance.percent(70),
                        lab.cast.instructor.id(),
                        "another tool is needed here")));
    }

    /** Lost turns are excused, or counted again; bookings beyond the quotas are given and taken back. */
    private String makeUp() {
        PersonId by = lab.cast.instructor.id();
        List<Lost> lost = lab.doors.turns().lost(14);
        if (!lost.isEmpty() && lab.chance.percent(60)) {
            Lost one = lab.chance.one(lost);
            return one.excusedBy() == null || lab.chance.percent(20)
                    ? "excused " + lab.doors.turns().excuse(one.booking().id(), lab.chance.percent(60), by)
                    : "counted again "
                            + lab.doors.turns().countAgain(one.booking().id(), by);
        }
        List<MakeUp> standing =
                lab.doors.turns().makeUps(14).stream().filter(MakeUp::stands).toList();
        if (!standing.isEmpty() && lab.chance.percent(50)) {
            UUID id = lab.chance.one(standing).id();
            return "make-up withdrawn "
                    + lab.doors.turns().withdraw(id, "given by mistake", by).isEmpty();
        }
        PersonId person = lab.chance.one(lab.cast.students).id();
        return "make-up given "
                + lab.doors.turns().giveMakeUp(person, "the cell was down", by).isEmpty();
    }

    /** A slot of the cell's grid on the bench day, at the round of runs or after it. */
    private Instant slot(Instant morning, CellId cell) {
        return morning.plus(Duration.ofHours(2))
                .plus(Duration.ofMinutes(7L * lab.cast.cells.indexOf(cell)))
                .plus(Duration.ofMinutes(30L * lab.chance.between(0, SLOTS_AFTER)));
    }

    private static String says(Outcome outcome) {
        return outcome instanceof Outcome.Refused refused ? "refused " + refused.rule() : "Booked";
    }
}
