package org.standclear.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.Slot;
import org.standclear.people.People;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.ClockHands;
import org.standclear.signoff.Rechecks;

/** Loads the invented college into an empty database and plays its past up to the start of the demo. */
@Component
@Profile("demo")
class DemoCollege {

    private static final Duration OPEN_BEFORE = Duration.ofMinutes(40);
    private static final Duration OPEN_AFTER = Duration.ofHours(4);
    private static final LocalTime MIDNIGHT = LocalTime.of(23, 59);

    private final DemoPeople people;
    private final DemoCells cells;
    private final DemoDuties duties;
    private final DemoEquipment equipment;
    private final DemoBookings bookings;
    private final DemoBench bench;
    private final DemoIncidents incidents;
    private final DemoTurns turns;
    private final RushScript rush;
    private final LongAgoScript longAgo;
    private final DemoCourseWork courseWork;
    private final DemoSecondLab secondLab;
    private final Rechecks rechecks;
    private final People known;
    private final Labs labs;
    private final Clock clock;
    private final ClockHands hands;
    private final DemoPace pace;
    private final TransactionTemplate transaction;

    DemoCollege(
            DemoPeople people,
            DemoCells cells,
            DemoDuties duties,
            DemoEquipment equipment,
            DemoBookings bookings,
            DemoBench bench,
            DemoIncidents incidents,
            DemoTurns turns,
            RushScript rush,
            LongAgoScript longAgo,
            DemoCourseWork courseWork,
            DemoSecondLab secondLab,
            Rechecks rechecks,
            People known,
            Labs labs,
            Clock clock,
            ClockHands hands,
            DemoPace pace,
            PlatformTransactionManager transactions) {
        this.people = people;
        this.cells = cells;
        this.duties = duties;
        this.equipment = equipment;
        this.bookings = bookings;
        this.bench = bench;
        this.incidents = incidents;
        this.turns = turns;
        this.rush = rush;
        this.longAgo = longAgo;
        this.courseWork = courseWork;
        this.secondLab = secondLab;
        this.rechecks = rechecks;
        this.known = known;
        this.labs = labs;
        this.clock = clock;
        this.hands = hands;
        this.pace = pace;
        this.transaction = new TransactionTemplate(transactions);
    }

    /** Whether the database holds the college, or anybody else, already. */
    boolean isLoaded() {
        return known.byLogin("ines").isPresent();
    }

    void load(SeedFiles files) {
        Instant start = clock.instant();
        try {
            LabScope.run(labs.theLab().id(), () -> load(files, start));
            // afterwards, so that nothing of the first lab's past depends on it
            secondLab.load(files.secondLab(), files.lab(), start);
        } finally {
            hands.standAt(start);
            hands.runOn();
        }
    }

    private void load(SeedFiles files, Instant start) {
        LabSeed lab = files.lab();
        WeekTimes times = WeekTimes.around(start, lab.zone());
        Timeline timeline =
                new Timeline(hands, pace, lab.zone(), act -> transaction.executeWithoutResult(status -> act.run()));
        Roster roster = new Roster();
        WeekSeed week = files.week();
        VisitScript visits = new VisitScript(timeline, bookings, bench, roster);
        NowScript now = new NowScript(times, timeline, roster, bookings, bench, visits);
        WeekScript script = new WeekScript(week, times, timeline, roster, bookings, visits, now, turns);

        Instant term = times.at(times.monday().minusWeeks(3), LocalTime.of(8, 0));
        longAgo.write(timeline, term, roster);
        timeline.add(term, () -> labs.change(named(lab)));
        timeline.add(term, () -> addPeople(files, lab, times, roster));
        timeline.add(term.plus(Duration.ofHours(1)), () -> {
            addCells(files, week, roster);
            duties.record(times.monday().minusWeeks(3), roster);
            equipment.register(roster);
        });
        timeline.add(term.plus(Duration.ofHours(2)), () -> {
            addDuties(files, times, roster, term.plus(Duration.ofHours(2)));
            rush.write(files.people(), week, times, roster);
            openAroundStart(times, roster.person("ines"));
            now.write(week.now(), slotsNow(week, times, roster));
            new StaffScript(week, times, timeline, roster, cells, bookings, now).write();
            script.write();
            new IncidentScript(times, timeline, roster, cells, bookings, bench, visits, incidents)
                    .write(files.incidents());
            new ToolChangeScript(week.toolChange(), times, timeline, roster, cells, bookings, rechecks).write();
        });
        timeline.playUntil(start);
        transaction.executeWithoutResult(status -> {
            script.bookAhead();
            turns.arrange(
                    roster.person("noor"),
                    roster.person("mateo"),
                    roster.person("adaeze"),
                    start.plus(Duration.ofDays(2)));
        });
    }

    private Lab named(LabSeed seed) {
        return new Lab(
                labs.theLab().id(),
                seed.college(),
                seed.room(),
                seed.name(),
                seed.zone(),
                seed.emergencyNumber(),
                seed.firstAider(),
                seed.stopMap());
    }

    private void addPeople(SeedFiles files, LabSeed lab, WeekTimes times, Roster roster) {
        List<PersonSeed> everybody = files.people();
        people.addPeople(everybody, lab, roster);
        people.addCourses(files.courses(), times, roster);
        people.enrol(everybody, roster, roster.person("ines"));
    }

    private void addDuties(SeedFiles files, WeekTimes times, Roster roster, Instant from) {
        LabSeed lab = files.lab();
        PersonId ines = roster.person("ines");
        people.authorise(
                files.people(), lab.authorisations(), new DemoPeople.Granting(roster, ines, from, times.start()));
        people.planDuty(lab.duty(), times, roster, ines);
        people.planOnCall(lab.onCall(), times, roster, ines);
    }

    private void addCells(SeedFiles files, WeekSeed week, Roster roster) {
        DemoCells.Approvers by = new DemoCells.Approvers(roster.person("adaeze"), roster.person("ines"));
        for (WeekSeed.CellSeed cell : week.cells()) {
            cells.add(cell, files.text("cells/" + cell.file()), by, roster);
            if (cell.restricted() != null) {
                cells.restrict(cell.name(), cell.restricted(), roster);
            }
        }
        cells.speaks(roster.cell("Avocet"), files.text("phrasebooks/plain-words.yaml"), roster.person("adaeze"));
        courseWork.write(roster);
    }

    /** The lab is open around the start, also at night and on Sundays; a period does not cross midnight. */
    private void openAroundStart(WeekTimes times, PersonId by) {
        ZonedDateTime from =
                times.start().minus(OPEN_BEFORE).atZone(times.zone()).truncatedTo(ChronoUnit.HOURS);
        ZonedDateTime until =
                times.start().plus(OPEN_AFTER).atZone(times.zone()).truncatedTo(ChronoUnit.HOURS);
        for (LocalDate date = from.toLocalDate(); !date.isAfter(until.toLocalDate()); date = date.plusDays(1)) {
            LocalTime opens = date.equals(from.toLocalDate()) ? from.toLocalTime() : LocalTime.MIN;
            LocalTime closes = date.equals(until.toLocalDate()) ? until.toLocalTime() : MIDNIGHT;
            if (opens.isBefore(closes)) {
                cells.openAround(date, opens, closes, by);
            }
        }
    }

    /** On cells that students attend and that are in service when the demo starts. */
    private List<Slot> slotsNow(WeekSeed week, WeekTimes times, Roster roster) {
        Stream<List<Slot>> slots = week.cells().stream()
                .filter(cell -> cell.restricted() == null)
                .filter(cell -> week.outOfService().stream().noneMatch(tag -> tag.covers(cell.name(), times)))
                .map(cell -> slots(roster.cell(cell.name()), times));
        return new NowSlots(times.start()).of(slots);
    }

    private List<Slot> slots(CellId cell, WeekTimes times) {
        return Stream.of(times.today(), times.today().plusDays(1))
                .flatMap(day -> bookings.freeSlots(cell, day))
                .filter(slot -> slot.end().isAfter(times.start()))
                .collect(Collectors.toList());
    }
}
