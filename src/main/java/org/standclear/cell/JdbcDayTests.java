package org.standclear.cell;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.CellStates.StopCell;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Records day tests under the cell's row lock, so that no release slips past one that fails. */
@Service
class JdbcDayTests implements DayTests {

    private final DayTestRows rows;
    private final Cells cells;
    private final CellStates states;
    private final CellFiles files;
    private final LiveEvents live;
    private final Trail trail;
    private final LabTime labTime;
    private final Clock clock;

    JdbcDayTests(
            DayTestRows rows,
            Cells cells,
            CellStates states,
            CellFiles files,
            LiveEvents live,
            Trail trail,
            LabTime labTime,
            Clock clock) {
        this.rows = rows;
        this.cells = cells;
        this.states = states;
        this.files = files;
        this.live = live;
        this.trail = trail;
        this.labTime = labTime;
        this.clock = clock;
    }

    @Override
    @Transactional
    public DayTest record(CellId id, PersonId by, DayTestReadings readings) {
        return record(id, by, readings, "");
    }

    @Override
    @Transactional
    public DayTest record(CellId id, PersonId by, DayTestReadings readings, String whySameStation) {
        Cell cell = cells.lock(id);
        CellVersion version = cells.current(id);
        Instant at = SqlTime.stored(clock.instant());
        List<String> failures = DayTestComparison.failures(readings, version, files.factsOf(version));
        DayTest test = new DayTest(Id.newValue(), id, version.number(), labTime.date(at), by, at, failures, readings);
        rows.add(test, whySameStation);
        live.cellChanged(id);
        String outcome = test.passed() ? "passed" : "failed";
        trail.append(TrailEntry.of(
                        cell.lab(), "cell.day-test-" + outcome, id, by, "Day test on " + cell.name() + " " + outcome)
                .with("version", version.number())
                .with("station", readings.stopStation())
                .with("same-station-because", whySameStation)
                .with("failures", String.join(" ", failures)));
        if (!test.passed()) {
            String reason = "The day test did not pass: " + String.join(" ", failures);
            states.stop(new StopCell(id, CellTag.Kind.OUT_OF_SERVICE, by, reason, null));
        }
        return test;
    }

    @Override
    public Optional<DayTest> lastOn(CellId cell, String station) {
        return rows.lastBefore(cell, labTime.date(clock.instant()))
                .filter(test -> CellGates.sameCode(test.readings().stopStation(), station));
    }

    @Override
    public Optional<DayTest> passedOn(CellId cell, LocalDate date) {
        return rows.lastOf(cell, date).filter(DayTest::passed);
    }

    @Override
    public Optional<DayTest> latest(CellId cell, Instant at) {
        return rows.latest(cell, at);
    }

    @Override
    public List<DayTest> recent(CellId cell, int atMost) {
        return rows.recent(cell, atMost);
    }
}
