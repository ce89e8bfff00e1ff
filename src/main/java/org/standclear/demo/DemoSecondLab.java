package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.LabMaker;
import org.standclear.booking.OpenPeriod;
import org.standclear.people.People;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.time.ClockHands;

/** Makes the college's second lab, and plays its quiet week in its own zone up to the start of the demo. */
@Component
@Profile("demo")
class DemoSecondLab {

    private final LabMaker labs;
    private final People known;
    private final DemoPeople people;
    private final DemoCells cells;
    private final DemoDuties duties;
    private final DemoBookings bookings;
    private final DemoBench bench;
    private final DemoTurns turns;
    private final ClockHands hands;
    private final DemoPace pace;
    private final TransactionTemplate transaction;

    DemoSecondLab(
            LabMaker labs,
            People known,
            DemoPeople people,
            DemoCells cells,
            DemoDuties duties,
            DemoBookings bookings,
            DemoBench bench,
            DemoTurns turns,
            ClockHands hands,
            DemoPace pace,
            PlatformTransactionManager transactions) {
        this.labs = labs;
        this.known = known;
        this.people = people;
        this.cells = cells;
        this.duties = duties;
        this.bookings = bookings;
        this.bench = bench;
        this.turns = turns;
        this.hands = hands;
        this.pace = pace;
        this.transaction = new TransactionTemplate(transactions);
    }

    /** What every act needs to know. */
    private record Stage(SecondLabSeed seed, WeekTimes times, Timeline timeline, Roster roster) {

        PersonId instructor() {
            return roster.person(seed.instructor());
        }

        PersonId technician() {
            return roster.person(seed.technician());
        }
    }

    /** Its people share the first lab's password and PIN. */
    void load(SecondLabSeed seed, LabSeed first, Instant start) {
        WeekTimes times = WeekTimes.around(start, seed.zone());
        Instant term = times.at(times.monday().minusWeeks(3), LocalTime.of(9, 0));
        hands.standAt(term);
        LabId lab = make(seed);
        Timeline timeline =
                new Timeline(hands, pace, seed.zone(), act -> LabScope.run(lab, () -> inOneTransaction(act)));
        Stage stage = new Stage(seed, times, timeline, new Roster());
        VisitScript visits = new VisitScript(timeline, bookings, bench, stage.roster());
        NowScript now = new NowScript(times, timeline, stage.roster(), bookings, bench, visits);
        WeekScript script = new WeekScript(seed.week(), times, timeline, stage.roster(), bookings, visits, now, turns);
        timeline.add(term.plus(Duration.ofMinutes(30)), () -> {
            people.addPeople(seed.people(), first, stage.roster());
            people.addCourses(new CoursesSeed(seed.courses()), times, stage.roster());
            people.enrol(seed.people(), stage.roster(), stage.instructor());
        });
        timeline.add(term.plus(Duration.ofHours(1)), () -> addCells(stage));
        Instant opening = term.plus(Duration.ofHours(2));
        timeline.add(opening, () -> {
            people.authorise(
                    seed.people(),
                    new LabSeed.Authorisations(List.of()),
                    new DemoPeople.Granting(stage.roster(), stage.instructor(), opening, start));
            people.planDuty(seed.duty(), times, stage.roster(), stage.instructor());
            new StaffScript(seed.week(), times, timeline, stage.roster(), cells, bookings, now).write();
            script.write();
        });
        timeline.playUntil(start);
        LabScope.run(lab, () -> inOneTransaction(script::bookAhead));
    }

    private void inOneTransaction(Runnable act) {
        transaction.executeWithoutResult(status -> act.run());
    }

    private LabId make(SecondLabSeed seed) {
        Lab lab = new Lab(
                LabId.next(),
                seed.college(),
                seed.room(),
                seed.name(),
                seed.zone(),
                seed.emergencyNumber(),
                seed.firstAider(),
                seed.stopMap());
        List<OpenPeriod> weekday = seed.opens().stream()
                .map(hours -> new OpenPeriod(hours.from(), hours.until()))
                .toList();
        PersonId administrator = known.byLogin("marit").orElseThrow().id();
        return labs.make(lab, weekday, administrator);
    }

    private void addCells(Stage stage) {
        SeedFiles files = new SeedFiles();
        Roster roster = stage.roster();
        for (WeekSeed.CellSeed cell : stage.seed().week().cells()) {
            cells.add(
                    cell,
                    files.text("cells/" + cell.file()),
                    new DemoCells.Approvers(stage.technician(), stage.instructor()),
                    roster);
            duties.record(
                    List.of(new DemoDuties.Seed(cell.name(), 60, 30)),
                    stage.times().monday().minusWeeks(3),
                    roster,
                    new DemoDuties.Staff(
                            stage.instructor(),
                            stage.technician(),
                            roster.seed(stage.instructor()).printedName()));
        }
    }
}
