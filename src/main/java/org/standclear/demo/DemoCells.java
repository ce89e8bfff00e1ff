package org.standclear.demo;

import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.cell.Cell;
import org.standclear.cell.CellFacts;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellVersion;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTestReadings;
import org.standclear.cell.DayTests;
import org.standclear.cell.ToolReading;
import org.standclear.cell.ToolReadings;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.program.Phrasebooks;

/** Makes the four cells of the demo, tests them, tags them and puts them back. */
@Component
@Profile("demo")
class DemoCells {

    /** What every demo cell shows as its level of collision detection. */
    static final String SENSITIVITY = "3";

    private final CellRegister register;
    private final Cells cells;
    private final CellStates states;
    private final DayTests dayTests;
    private final ToolReadings readings;
    private final OpeningHours openingHours;
    private final Phrasebooks phrasebooks;
    private final Clock clock;

    DemoCells(
            CellRegister register,
            Cells cells,
            CellStates states,
            DayTests dayTests,
            ToolReadings readings,
            OpeningHours openingHours,
            Phrasebooks phrasebooks,
            Clock clock) {
        this.register = register;
        this.cells = cells;
        this.states = states;
        this.dayTests = dayTests;
        this.readings = readings;
        this.openingHours = openingHours;
        this.phrasebooks = phrasebooks;
        this.clock = clock;
    }

    /** Two people, as every version needs them. */
    record Approvers(PersonId proposes, PersonId approves) {}

    void add(WeekSeed.CellSeed seed, String file, Approvers by, Roster roster) {
        var proposed = register.propose(new NewProposal(
                null,
                file,
                "First description in this program, from the cell's paper card",
                by.proposes(),
                seed.startsAt()));
        var kept = Expect.that(CellRegister.Proposed.Kept.class, proposed, "proposing " + seed.name());
        var decided = register.approve(kept.proposal().id(), by.approves(), 0);
        roster.addCell(
                seed.name(),
                Expect.that(CellRegister.Decided.Done.class, decided, "approving " + seed.name())
                        .cell());
        roster.setProgramFor(roster.cell(seed.name()), seed.program());
    }

    /** A new version of a cell that is there, proposed by one and approved by another. */
    void change(WeekSeed.ToolChangeSeed change, Roster roster) {
        CellId cell = roster.cell(change.cell());
        var proposed = register.propose(new NewProposal(
                cell,
                new SeedFiles().text("programs/cells/" + change.file()),
                change.reason(),
                roster.person(change.by()),
                0));
        var kept = Expect.that(CellRegister.Proposed.Kept.class, proposed, "proposing " + change.file());
        var decided = register.approve(
                kept.proposal().id(),
                roster.person(change.approvedBy()),
                cells.current(cell).number());
        Expect.that(CellRegister.Decided.Done.class, decided, "approving " + change.file());
    }

    void restrict(String name, String reason, Roster roster) {
        states.restrict(roster.cell(name), roster.person("ines"), reason);
    }

    /** Gives a cell the phrasebook of its robot's language. */
    void speaks(CellId cell, String book, PersonId by) {
        Phrasebooks.NewVersion first = new Phrasebooks.NewVersion(
                cell, book, "The sentences of the robot’s panel, as the course uses them", by, 0);
        Expect.that(Phrasebooks.Kept.class, phrasebooks.keep(first), "keeping a phrasebook");
    }

    boolean mayRun(CellId cell) {
        return find(cell).state().mayRun();
    }

    Cell find(CellId cell) {
        return cells.find(cell).orElseThrow();
    }

    /** The fitted tool and the override that stands on the display. */
    CellFacts facts(CellId cell) {
        CellVersion version = cells.current(cell);
        return register.facts(version);
    }

    void test(CellId cell, String station, PersonId by) {
        CellFacts facts = facts(cell);
        dayTests.record(
                cell,
                by,
                new DayTestReadings(
                        station,
                        true,
                        false,
                        true,
                        facts.power(),
                        SENSITIVITY,
                        facts.overridePercent(),
                        facts.fittedTool(),
                        true));
    }

    /** Day tests on all cells that are in service. */
    void testAll(String station, PersonId by) {
        cells.all().stream().filter(cell -> cell.state().mayRun()).forEach(cell -> test(cell.id(), station, by));
    }

    void tagOut(CellId cell, PersonId by, String reason) {
        states.tagOut(cell, by, reason);
    }

    /** Two people read tool and offset as they are, then one of them puts the cell back. */
    void putBack(CellId cell, PersonId by, PersonId second, String mended) {
        CellFacts facts = facts(cell);
        for (PersonId reader : List.of(by, second)) {
            ToolReading reading = new ToolReading(
                    cell, reader, SqlTime.stored(clock.instant()), facts.fittedTool(), facts.fittedOffsetMm());
            readings.read(reading).ifPresent(says -> {
                throw new IllegalStateException("the demo's script: a reading was refused: " + says);
            });
        }
        Expect.that(CellStates.Return.Returned.class, states.returnToService(cell, by, mended), "return to service");
    }

    /** Opens the lab around the demo's start, at night and on Sundays too, besides its ordinary hours. */
    void openAround(LocalDate date, LocalTime from, LocalTime until, PersonId by) {
        List<OpenPeriod> ordinary = openingHours.on(date).periods();
        List<OpenPeriod> wanted = Openings.with(ordinary, new OpenPeriod(from, until));
        if (!wanted.equals(ordinary)) {
            openingHours.except(new DayHours(date, wanted, "open for the demonstration"), by);
        }
    }
}
