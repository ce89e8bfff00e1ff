package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.IllegalTransactionStateException;
import org.standclear.cell.CellStates.Return;
import org.standclear.cell.CellStates.StopCell;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** Anyone stops a cell; it comes back after a day test that passed since; the day test gates each day. */
class CellStatesIT {

    abstract static class Cases {

        @Autowired
        CellRegister register;

        @Autowired
        ApplicationContext application;

        @Autowired
        Cells cells;

        @Autowired
        CellStates states;

        @Autowired
        DayTests dayTests;

        @Autowired
        MovableClock clock;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        TrailReader reader;

        @Autowired
        Labs labs;

        private final PersonId technician = PersonId.next();
        private final PersonId student = PersonId.next();
        private CellId cell = CellId.next();
        private String name = "";

        @BeforeEach
        void aCell() {
            name = SampleCell.name();
            cell = SampleCell.inForce(register, name);
        }

        @Test
        void aTagStopsTheCellUntilADayTestHasPassedSince() {
            dayTests.record(cell, technician, SampleCell.goodReadings());
            assertThat(obstacles()).isEmpty();
            clock.moveBy(Duration.ofMinutes(1));

            states.tagOut(cell, student, "cable chafed at the elbow");
            states.tagOut(cell, student, "bolt loose");

            assertThat(state()).isEqualTo(CellState.OUT_OF_SERVICE);
            assertThat(found().stateReason()).isEqualTo("cable chafed at the elbow · bolt loose");
            assertThat(obstacles()).containsExactly("cell-not-in-service");
            assertThat(states.returnToService(cell, technician, "new cable")).isInstanceOf(Return.Refused.class);

            clock.moveBy(Duration.ofMinutes(1));
            dayTests.record(cell, technician, SampleCell.goodReadings());
            assertThat(((Return.Refused) states.returnToService(cell, technician, "new cable")).says())
                    .startsWith("Two people read tool and offset");
            SampleCell.readByTwo(application, cell);
            assertThat(states.returnToService(cell, technician, "new cable"))
                    .isEqualTo(new Return.Returned(CellState.IN_SERVICE));
            assertThat(found().stateReason()).isEmpty();
            assertThat(obstacles()).isEmpty();
            assertThat(states.tags(cell)).hasSize(2).noneMatch(CellTag::hangs);
            assertThat(reader.about(labs.theLab().id(), cell.toString()))
                    .extracting(RecordedEntry::kind)
                    .contains("cell.tagged-out", "cell.day-test-passed", "cell.returned");
        }

        @Test
        void nothingFromBeforeTheTagBringsTheCellBackWhenTheClockWasSetBack() {
            clock.moveBy(Duration.ofHours(2));
            dayTests.record(cell, technician, SampleCell.goodReadings());
            SampleCell.readByTwo(application, cell);
            clock.moveBy(Duration.ofMinutes(-55));
            states.tagOut(cell, student, "cable chafed at the elbow");

            assertThat(notReturned()).startsWith("No day test has passed");
            clock.moveBy(Duration.ofHours(1));
            assertThat(notReturned())
                    .as("once the clock has passed the old test")
                    .startsWith("No day test has passed");

            clock.moveBy(Duration.ofMinutes(-70));
            dayTests.record(cell, technician, SampleCell.goodReadings());
            assertThat(notReturned()).endsWith("read so far: 0.");
            SampleCell.readByTwo(application, cell);
            assertThat(states.returnToService(cell, technician, "new cable"))
                    .as("tested and read after the tag, whatever the clock says")
                    .isEqualTo(new Return.Returned(CellState.IN_SERVICE));
        }

        private String notReturned() {
            Return outcome = states.returnToService(cell, technician, "new cable");
            assertThat(outcome).isInstanceOf(Return.Refused.class);
            return ((Return.Refused) outcome).says();
        }

        @Test
        void theLatestDayTestIsTheOneRecordedLast() {
            clock.moveBy(Duration.ofHours(2));
            dayTests.record(cell, technician, SampleCell.goodReadings());
            clock.moveBy(Duration.ofHours(-1));
            var bad = new DayTestReadings("pillar", true, true, true, "full", "level 3", 50, "G-02", true);
            DayTest failed = dayTests.record(cell, technician, bad);
            clock.moveBy(Duration.ofHours(2));

            assertThat(dayTests.latest(cell, clock.instant())).contains(failed);
            assertThat(dayTests.passedOn(cell, LocalDate.of(2026, 3, 11))).isEmpty();
            assertThat(obstacles()).contains("day-test-failed");
        }

        @Test
        void theHeavierTagDecides() {
            states.restrict(cell, technician, "new bit holder");
            assertThat(state()).isEqualTo(CellState.RESTRICTED);
            states.hold(cell, student, "second protective stop");
            assertThat(state()).isEqualTo(CellState.HELD);
            states.tagOut(cell, student, "bolt loose");
            assertThat(state()).isEqualTo(CellState.OUT_OF_SERVICE);
            assertThat(found().stateReason()).isEqualTo("bolt loose");

            clock.moveBy(Duration.ofMinutes(1));
            dayTests.record(cell, technician, SampleCell.goodReadings());
            SampleCell.readByTwo(application, cell);
            assertThat(states.returnToService(cell, technician, "tightened"))
                    .isEqualTo(new Return.Returned(CellState.RESTRICTED));

            states.unrestrict(cell, technician, "bit holder proven");
            assertThat(state()).isEqualTo(CellState.IN_SERVICE);
        }

        @Test
        void thePersonWhoseRunCausedTheHoldDoesNotLiftIt() {
            states.stop(new StopCell(cell, CellTag.Kind.HOLD, technician, "second protective stop", student));
            clock.moveBy(Duration.ofMinutes(1));
            dayTests.record(cell, technician, SampleCell.goodReadings());

            SampleCell.readByTwo(application, cell);
            assertThat(states.returnToService(cell, student, "fine again")).isInstanceOf(Return.Refused.class);
            assertThatThrownBy(() -> jdbc.sql("update cell_tags set lifted_by = caused_by, lifted_at = placed_at "
                                    + "where cell_id = :cell")
                            .param("cell", cell.value())
                            .update())
                    .isInstanceOf(DataAccessException.class);
            assertThat(states.returnToService(cell, technician, "looked at"))
                    .isEqualTo(new Return.Returned(CellState.IN_SERVICE));
        }

        @Test
        void aDayTestThatDoesNotPassTakesTheCellOut() {
            var bad = new DayTestReadings("pillar", true, true, true, "full", "level 3", 50, "G-02", true);

            DayTest test = dayTests.record(cell, technician, bad);

            assertThat(test.passed()).isFalse();
            assertThat(test.failures()).hasSize(2);
            assertThat(state()).isEqualTo(CellState.OUT_OF_SERVICE);
            assertThat(found().stateReason()).contains("moved again");
            assertThat(obstacles()).containsExactly("cell-not-in-service", "day-test-failed");
            assertThat(dayTests.recent(cell, 1)).containsExactly(test);
        }

        @Test
        void aDayTestCountsForItsDayInTheLabsZone() {
            dayTests.record(cell, technician, SampleCell.goodReadings());
            LocalDate day = LocalDate.of(2026, 3, 11);
            assertThat(dayTests.passedOn(cell, day)).isPresent();
            assertThat(dayTests.passedOn(cell, day.plusDays(1))).isEmpty();

            clock.moveBy(Duration.ofDays(1));
            assertThat(obstacles()).containsExactly("day-test-missing");
        }

        @Test
        void anotherFittedToolAsksForAnotherDayTest() {
            dayTests.record(cell, technician, SampleCell.goodReadings());
            String changed = SampleCell.file(name, 8).replace("fitted-tool: G-02", "fitted-tool: V-01");
            register.approve(SampleCell.proposed(register, cell, changed), PersonId.next(), 7);

            assertThat(obstacles()).containsExactly("day-test-other-tool");
        }

        @Test
        void theDatabaseRefusesToChangeADayTestOrToLoseATag() {
            dayTests.record(cell, technician, SampleCell.goodReadings());
            states.hold(cell, student, "look first");

            for (String sql : new String[] {
                "update cell_day_tests set power = 'full' where cell_id = :cell",
                "delete from cell_day_tests where cell_id = :cell",
                "delete from cell_tags where cell_id = :cell"
            }) {
                assertThatThrownBy(
                                () -> jdbc.sql(sql).param("cell", cell.value()).update())
                        .isInstanceOf(DataAccessException.class)
                        .hasMessageContaining("never changed");
            }
        }

        @Test
        void aLockNeedsATransaction() {
            assertThatThrownBy(() -> cells.lock(cell)).isInstanceOf(IllegalTransactionStateException.class);
        }

        private Iterable<String> obstacles() {
            return cells.obstacles(cell, clock.instant()).stream()
                    .map(Cells.Obstacle::code)
                    .toList();
        }

        private CellState state() {
            return found().state();
        }

        private Cell found() {
            return cells.find(cell).orElseThrow();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
