package org.standclear.simulation;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.SecondLab;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.simulation.MortalDatabase.Mortality;
import org.standclear.simulation.MortalDatabase.ProcessDied;
import org.standclear.testing.MovableClock;

/**
 * One term of lab life: a bench day a week, and what people do before it. Audited after every act. In every third term the
 * same people work in two labs.
 */
final class Term {

    static final Instant BEGIN = Instant.parse("2026-01-12T08:00:00Z");
    /** After every act of a term. */
    static final Instant END = BEGIN.plus(Duration.ofDays(365));

    private static final Duration SLOT = Duration.ofHours(2);
    private static final int MOST_ACTS = 90;
    private static final List<String> CELLS = List.of("Avocet", "Bittern", "Curlew");

    private final MovableClock clock;
    private final Chance chance;
    private final Auditor auditor;
    private final Mortality mortality;
    private final Journal journal;
    private final List<Crew> crews = new ArrayList<>();

    Term(ApplicationContext application, Auditor auditor, Journal journal) {
        this.auditor = auditor;
        this.journal = journal;
        clock = application.getBean(MovableClock.class);
        clock.moveTo(BEGIN.minus(Duration.ofDays(3)));
        chance = new Chance(journal.seed());
        mortality = application.getBean(Mortality.class);
        Doors doors = Doors.of(application);
        LabId first = application.getBean(Labs.class).all().get(0).id();
        boolean two = journal.seed() % 3 == 0;
        Cast cast = LabScope.in(first, () -> new Cast(application, doors, two ? CELLS.subList(0, 2) : CELLS));
        crews.add(new Crew(first, new Lab(doors, cast, clock, chance)));
        if (two) {
            LabId second = SecondLab.empty(application, "UTC");
            Cast there = LabScope.in(second, () -> new Cast(cast, CELLS.subList(2, 3)));
            crews.add(new Crew(second, new Lab(doors, there, clock, chance)));
        }
    }

    /** What is to be done at a cell, in the lab that has it. */
    private record At(Crew crew, CellId cell) {}

    private List<At> cells() {
        return crews.stream()
                .flatMap(crew -> crew.lab.cast.cells.stream().map(cell -> new At(crew, cell)))
                .toList();
    }

    /** Plays so many weeks. */
    void play(int weeks) throws SQLException {
        for (At at : cells()) {
            act(at.crew(), "agree", () -> at.crew().upkeep.agree(at.cell()));
        }
        for (int week = 0; week < weeks; week++) {
            Instant morning = BEGIN.plus(Duration.ofDays(7L * week + chance.between(0, 4)));
            before(morning);
            benchDay(morning);
        }
        List<String> faults = auditor.everything(clock.instant());
        if (!faults.isEmpty()) {
            throw journal.failure(faults);
        }
    }

    /** Two days ahead: people book, change their minds, write programs, wait for slots. */
    private void before(Instant morning) throws SQLException {
        clock.moveTo(morning.minus(Duration.ofDays(2)));
        List<Integer> already = crews.stream().map(crew -> crew.lab.made.size()).toList();
        for (At at : cells()) {
            book(at, morning);
        }
        book(chance.one(cells()), morning);
        for (int i = 0; i < crews.size(); i++) {
            Crew crew = crews.get(i);
            List<BookingId> made = crew.lab.made;
            for (BookingId id : List.copyOf(made.subList(already.get(i), made.size()))) {
                if (chance.percent(70)) {
                    act(crew, "attach", () -> crew.programs.attach(crew.lab.booking(id)));
                }
                if (chance.percent(20)) {
                    act(crew, "elsewhere", () -> second(crew, crew.lab.booking(id)));
                }
            }
        }
        calendar(morning, 3);
    }

    private void book(At at, Instant morning) throws SQLException {
        Instant start = morning.plus(SLOT)
                .plus(Duration.ofMinutes(7L * at.crew().lab.cast.cells.indexOf(at.cell())));
        act(at.crew(), "book", () -> at.crew().booking.book(at.cell(), start));
    }

    /** Some of what happens to the calendar, up to so many acts. */
    private void calendar(Instant morning, int most) throws SQLException {
        for (int acts = chance.between(0, most); acts > 0; acts--) {
            Crew crew = chance.one(crews);
            act(crew, "calendar", () -> crew.calendar.any(morning));
        }
    }

    private String second(Crew crew, Booking of) {
        return switch (chance.between(0, 4)) {
            case 0 -> "cancel " + crew.booking.cancel(of);
            case 1 -> "open " + crew.booking.leaveOpen(of);
            case 2 -> "move " + crew.booking.moveByStaff(of);
            case 3 -> "change " + crew.programs.change(of);
            default -> "swap " + crew.booking.nameAttendant(of);
        };
    }

    private void benchDay(Instant morning) throws SQLException {
        clock.moveTo(morning);
        for (Person one : crews.get(0).lab.cast.staff()) {
            if (chance.percent(90)) {
                Crew where = chance.one(crews);
                act(where, "duty", () -> where.staff.planDuty(one));
            }
        }
        for (At at : cells()) {
            tidy(at);
            if (chance.percent(90)) {
                act(at.crew(), "morning", () -> at.crew().staff.dayTest(at.cell()));
            }
        }
        calendar(morning, 4);
        slots(morning);
        At one = chance.one(cells());
        if (chance.percent(35)) {
            act(one.crew(), "afterwards", () -> one.crew().incidents.report(one.cell()));
        }
        if (chance.percent(30)) {
            act(one.crew(), "afterwards", () -> one.crew().upkeep.paperCard(one.cell()));
        }
        for (At at : cells()) {
            tidy(at);
            review(at);
        }
    }

    /** What the reviewers of the week get done of the cell's incidents, and of what came of earlier ones. */
    private void review(At at) throws SQLException {
        IncidentActs incidents = at.crew().incidents;
        boolean any = !at.crew().here(() -> incidents.open(at.cell())).isEmpty();
        for (int turn = 0; turn < (any ? 9 : 1) && chance.percent(85); turn++) {
            act(at.crew(), "review", () -> incidents.goOn(at.cell()));
        }
    }

    /** The bookings of one round of slots, act by act, until their time is over. */
    private void slots(Instant morning) throws SQLException {
        Instant from = morning.plus(SLOT).minus(Duration.ofMinutes(4));
        clock.moveTo(from);
        Instant until = from.plus(Duration.ofMinutes(60));
        for (int acts = 0; acts < MOST_ACTS && clock.instant().isBefore(until); acts++) {
            List<Standing> now = around(clock.instant());
            Crew any = chance.one(crews);
            if (now.isEmpty()) {
                act(any, "meanwhile", any.slot::meanwhile);
                return;
            }
            int draw = chance.between(1, 100);
            if (draw <= 4) {
                act(any, "meanwhile", any.slot::meanwhile);
            } else if (draw <= 7) {
                act(any, "calendar", () -> any.calendar.any(morning));
            } else {
                at(chance.one(now));
            }
            clock.moveBy(Duration.ofSeconds(chance.between(0, 150) == 0 ? 700 : chance.between(2, 14)));
        }
    }

    private void at(Standing chosen) throws SQLException {
        Booking booking = chosen.booking();
        SlotActs slot = chosen.crew().slot;
        act(chosen.crew(), booking.state().words(), () -> slot.at(booking));
        if (slot.waited() && clock.instant().isBefore(booking.start())) {
            clock.moveTo(booking.start());
        }
    }

    /** A booking about its time, in its lab. */
    private record Standing(Crew crew, Booking booking) {}

    private List<Standing> around(Instant now) {
        List<Standing> found = new ArrayList<>();
        for (At at : cells()) {
            for (Booking one : at.crew().here(() -> at.crew().lab.bookingsOn(at.cell()))) {
                boolean near = one.end().isAfter(now)
                        && one.start().minus(Duration.ofMinutes(12)).isBefore(now);
                if (one.state() != BookingState.CLOSED_OUT
                        && (near || one.state().awaitsCloseOut())) {
                    found.add(new Standing(at.crew(), one));
                }
            }
        }
        return found;
    }

    /** What the people of the day left undone on a cell; now and then it stays undone. */
    private void tidy(At at) throws SQLException {
        if (chance.percent(6)) {
            return;
        }
        SlotActs slot = at.crew().slot;
        for (int turn = 0; turn < 22 && chance.percent(95); turn++) {
            if (at.crew().here(() -> slot.isTidy(at.cell()))) {
                return;
            }
            act(at.crew(), "tidy", () -> slot.tidy(at.cell()));
        }
    }

    /** One act, in which the process may die; then the audit. */
    private void act(Crew crew, String what, Supplier<String> act) throws SQLException {
        clock.moveBy(Duration.ofSeconds(1));
        boolean mortal = chance.percent(4);
        if (mortal) {
            dieSomewhere();
        }
        String came;
        try {
            came = crew.here(act);
        } catch (ProcessDied died) {
            came = "the process died";
        }
        boolean died = mortality.rise();
        journal.write(clock.instant(), what, came, died);
        List<String> faults = auditor.look(clock.instant());
        if (!faults.isEmpty()) {
            throw journal.failure(faults);
        }
    }

    private void dieSomewhere() {
        if (chance.percent(30)) {
            mortality.dieAtCommit(chance.percent(50));
        } else {
            mortality.dieBeforeStatement(chance.between(1, 60));
        }
    }
}
