package org.standclear.simulation;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.Booking;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.simulation.MortalDatabase.Mortality;
import org.standclear.simulation.MortalDatabase.ProcessDied;
import org.standclear.testing.MovableClock;

/** One term of lab life: a bench day a week, and what people do before it. Audited after every act. */
final class Term {

    static final Instant BEGIN = Instant.parse("2026-01-12T08:00:00Z");
    /** After every act of a term. */
    static final Instant END = BEGIN.plus(Duration.ofDays(365));

    private static final Duration SLOT = Duration.ofHours(2);
    private static final int MOST_ACTS = 90;

    private final Lab lab;
    private final Auditor auditor;
    private final Mortality mortality;
    private final Journal journal;
    private final BookingActs booking;
    private final Programs programs;
    private final StaffActs staff;
    private final RunActs run;
    private final UpkeepActs upkeep;
    private final IncidentActs incidents;
    private final SlotActs slot;

    Term(ApplicationContext application, Auditor auditor, Journal journal) {
        MovableClock clock = application.getBean(MovableClock.class);
        clock.moveTo(BEGIN.minus(Duration.ofDays(3)));
        Doors doors = Doors.of(application);
        lab = new Lab(doors, new Cast(application, doors, BEGIN), clock, new Chance(journal.seed()));
        this.auditor = auditor;
        this.journal = journal;
        mortality = application.getBean(Mortality.class);
        booking = new BookingActs(lab);
        programs = new Programs(lab);
        staff = new StaffActs(lab);
        run = new RunActs(lab);
        upkeep = new UpkeepActs(lab);
        incidents = new IncidentActs(lab);
        slot = new SlotActs(lab, booking, programs, staff, run, upkeep, incidents);
    }

    /** Plays so many weeks. */
    void play(int weeks) throws SQLException {
        for (CellId cell : lab.cast.cells) {
            act("agree", () -> upkeep.agree(cell));
        }
        for (int week = 0; week < weeks; week++) {
            Instant morning = BEGIN.plus(Duration.ofDays(7L * week + lab.chance.between(0, 4)));
            before(morning);
            benchDay(morning);
        }
    }

    /** Two days ahead: people book, change their minds, write programs. */
    private void before(Instant morning) throws SQLException {
        lab.clock.moveTo(morning.minus(Duration.ofDays(2)));
        int already = lab.made.size();
        for (CellId cell : lab.cast.cells) {
            act("book", () -> booking.book(cell, start(morning, cell)));
        }
        CellId wanted = lab.chance.one(lab.cast.cells);
        act("book", () -> booking.book(wanted, start(morning, wanted)));
        for (BookingId id : List.copyOf(lab.made.subList(already, lab.made.size()))) {
            if (lab.chance.percent(70)) {
                act("attach", () -> programs.attach(lab.booking(id)));
            }
            if (lab.chance.percent(20)) {
                act("elsewhere", () -> second(lab.booking(id)));
            }
        }
    }

    private Instant start(Instant morning, CellId cell) {
        return morning.plus(SLOT).plus(Duration.ofMinutes(7L * lab.cast.cells.indexOf(cell)));
    }

    private String second(Booking of) {
        return switch (lab.chance.between(0, 4)) {
            case 0 -> "cancel " + booking.cancel(of);
            case 1 -> "open " + booking.leaveOpen(of);
            case 2 -> "move " + booking.moveByStaff(of);
            case 3 -> "change " + programs.change(of);
            default -> "swap " + booking.nameAttendant(of);
        };
    }

    private void benchDay(Instant morning) throws SQLException {
        lab.clock.moveTo(morning);
        for (Person one : lab.cast.staff()) {
            if (lab.chance.percent(90)) {
                act("duty", () -> staff.planDuty(one));
            }
        }
        for (CellId cell : lab.cast.cells) {
            tidy(cell);
            if (lab.chance.percent(90)) {
                act("morning", () -> staff.dayTest(cell));
            }
        }
        slots(morning.plus(SLOT).minus(Duration.ofMinutes(4)));
        CellId one = lab.chance.one(lab.cast.cells);
        if (lab.chance.percent(35)) {
            act("afterwards", () -> incidents.report(one));
        }
        if (lab.chance.percent(30)) {
            act("afterwards", () -> upkeep.paperCard(one));
        }
        for (CellId cell : lab.cast.cells) {
            tidy(cell);
            review(cell);
        }
    }

    /** What the reviewers of the week get done of the cell's incidents, and of what came of earlier ones. */
    private void review(CellId cell) throws SQLException {
        boolean any = !incidents.open(cell).isEmpty();
        for (int turn = 0; turn < (any ? 9 : 1) && lab.chance.percent(85); turn++) {
            act("review", () -> incidents.goOn(cell));
        }
    }

    /** The bookings of one round of slots, act by act, until their time is over. */
    private void slots(Instant from) throws SQLException {
        lab.clock.moveTo(from);
        Instant until = from.plus(Duration.ofMinutes(60));
        for (int acts = 0; acts < MOST_ACTS && lab.clock.instant().isBefore(until); acts++) {
            List<Booking> now = around(lab.clock.instant());
            if (now.isEmpty()) {
                act("meanwhile", slot::meanwhile);
                return;
            }
            if (lab.chance.percent(4)) {
                act("meanwhile", slot::meanwhile);
            } else {
                Booking chosen = lab.chance.one(now);
                act(chosen.state().words(), () -> slot.at(chosen));
                if (slot.waited() && lab.clock.instant().isBefore(chosen.start())) {
                    lab.clock.moveTo(chosen.start());
                }
            }
            lab.clock.moveBy(Duration.ofSeconds(lab.chance.between(0, 150) == 0 ? 700 : lab.chance.between(2, 14)));
        }
    }

    private List<Booking> around(Instant now) {
        List<Booking> found = new ArrayList<>();
        for (BookingId id : lab.made.subList(Math.max(0, lab.made.size() - 16), lab.made.size())) {
            Booking one = lab.booking(id);
            boolean open = one.state().awaitsCloseOut()
                    || one.state().holdsItsSlot()
                            && one.end().isAfter(now)
                            && one.start().minus(Duration.ofMinutes(12)).isBefore(now);
            if (open && one.state().ordinal() < org.standclear.booking.BookingState.CLOSED_OUT.ordinal()) {
                found.add(one);
            }
        }
        return found;
    }

    /** What the people of the day left undone on a cell; now and then it stays undone. */
    private void tidy(CellId cell) throws SQLException {
        if (lab.chance.percent(6)) {
            return;
        }
        for (int turn = 0; turn < 22 && lab.chance.percent(95) && !slot.isTidy(cell); turn++) {
            act("tidy", () -> slot.tidy(cell));
        }
    }

    /** One act, in which the process may die; then the audit. */
    private void act(String what, Supplier<String> act) throws SQLException {
        lab.clock.moveBy(Duration.ofSeconds(1));
        boolean mortal = lab.chance.percent(4);
        if (mortal) {
            dieSomewhere();
        }
        String came;
        try {
            came = act.get();
        } catch (ProcessDied died) {
            came = "the process died";
        }
        boolean died = mortality.rise();
        journal.write(lab.clock.instant(), what, came, died);
        List<String> faults = auditor.look(lab.clock.instant());
        if (!faults.isEmpty()) {
            throw journal.failure(faults);
        }
    }

    private void dieSomewhere() {
        if (lab.chance.percent(30)) {
            mortality.dieAtCommit(lab.chance.percent(50));
        } else {
            mortality.dieBeforeStatement(lab.chance.between(1, 60));
        }
    }
}
