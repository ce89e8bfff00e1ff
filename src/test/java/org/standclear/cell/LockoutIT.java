package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A lockout is kept apart from tags: nobody else takes it off, and no return to service does. */
class LockoutIT {

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        CellStates states;

        @Autowired
        DayTests dayTests;

        @Autowired
        MovableClock clock;

        private final PersonId hemi = PersonId.next();
        private final PersonId adaeze = PersonId.next();
        private CellId cell = CellId.next();

        @BeforeEach
        void aCell() {
            cell = SampleCell.inForce(register, SampleCell.name());
            dayTests.record(cell, adaeze, SampleCell.goodReadings());
        }

        private CellState state() {
            return cells.find(cell).orElseThrow().state();
        }

        private UUID lock() {
            states.lockOut(cell, hemi, "cable exchanged; lock at the wall switch");
            return states.tags(cell).stream()
                    .filter(tag -> tag.hangs() && tag.kind() == CellTag.Kind.LOCKOUT)
                    .findFirst()
                    .orElseThrow()
                    .id();
        }

        private String refused(CellStates.Return outcome) {
            assertThat(outcome).isInstanceOf(CellStates.Return.Refused.class);
            return ((CellStates.Return.Refused) outcome).says();
        }

        @Test
        void weighsMoreThanAnyTag() {
            states.tagOut(cell, adaeze, "cable chafe");
            lock();
            assertThat(state()).isEqualTo(CellState.LOCKED_OUT);
            assertThat(cells.obstacles(cell, clock.instant()))
                    .extracting(Cells.Obstacle::code)
                    .contains("cell-not-in-service");
        }

        @Test
        void staysOnThroughAReturnToServiceThatItRefuses() {
            states.tagOut(cell, adaeze, "cable chafe");
            UUID lock = lock();
            clock.moveBy(Duration.ofMinutes(5));
            dayTests.record(cell, adaeze, SampleCell.goodReadings());
            SampleCell.readByTwo(application, cell);
            assertThat(refused(states.returnToService(cell, adaeze, "cable exchanged")))
                    .contains("is locked out")
                    .contains("Who put the lock on takes it off first");
            assertThat(state()).isEqualTo(CellState.LOCKED_OUT);

            states.removeLockout(cell, lock, hemi, false, "closed, everybody out");
            assertThat(state()).as("the tag hangs still").isEqualTo(CellState.OUT_OF_SERVICE);
            assertThat(states.returnToService(cell, adaeze, "cable exchanged"))
                    .isInstanceOf(CellStates.Return.Returned.class);
            assertThat(state()).isEqualTo(CellState.IN_SERVICE);
        }

        @Test
        void isTakenOffByItsOwnerOnlyOrByAnInstructorWhoSaysWhy() {
            UUID lock = lock();
            assertThat(refused(states.removeLockout(cell, lock, adaeze, false, "in the way")))
                    .contains("taken off by who put it on");
            assertThat(states.removeLockout(cell, lock, adaeze, true, "Hemi is ill; the cell was looked at"))
                    .isInstanceOf(CellStates.Return.Returned.class);
            assertThat(state()).as("back by the test list only").isEqualTo(CellState.HELD);
            assertThat(refused(states.removeLockout(cell, lock, hemi, false, "again")))
                    .contains("does not hang any more");
        }

        @Test
        void letsNobodyRunWhileACellIsUnderTest() {
            states.stop(new CellStates.StopCell(cell, CellTag.Kind.TEST, adaeze, "new firmware tried", null));
            assertThat(state()).isEqualTo(CellState.UNDER_TEST);
            assertThat(state().mayRun()).isFalse();
            states.hold(cell, hemi, "odd noise");
            assertThat(state()).as("a hold weighs more").isEqualTo(CellState.HELD);
            assertThat(List.of(CellTag.Kind.values()))
                    .containsExactly(
                            CellTag.Kind.RESTRICTION,
                            CellTag.Kind.TEST,
                            CellTag.Kind.HOLD,
                            CellTag.Kind.OUT_OF_SERVICE,
                            CellTag.Kind.LOCKOUT);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
