package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.people.Person;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** From the finish to the close-out, and what the log lets people see and mend. */
class RunCloseOutIT {

    abstract static class Cases extends RunLogCases {

        @Test
        void keepsTheOrderOfTheCloseOut() {
            started();
            assertThat(refused(log.closeOut(
                                    scene().booking,
                                    CloseOutItem.MOTION_DISABLED,
                                    "disabled",
                                    scene().noor.id()))
                            .code())
                    .isEqualTo("state");
            kept(log.finish(scene().booking, 5, scene().noor.id()));
            assertThat(refused(log.closeOut(
                                    scene().booking,
                                    CloseOutItem.PARTS_OUT,
                                    "out",
                                    scene().noor.id()))
                            .says())
                    .startsWith("That item is not due");
            kept(log.closeOut(
                    scene().booking,
                    CloseOutItem.MOTION_DISABLED,
                    "disabled",
                    scene().noor.id()));
            assertThat(refused(log.closeOut(
                                    scene().booking,
                                    CloseOutItem.MOTION_DISABLED,
                                    "disabled",
                                    scene().noor.id()))
                            .code())
                    .isEqualTo("order");
        }

        @Test
        void holdsTheCellWhenTheCloseOutFindsAFault() {
            started();
            kept(log.finish(scene().booking, 5, scene().noor.id()));
            kept(log.closeOut(
                    scene().booking,
                    CloseOutItem.MOTION_DISABLED,
                    "disabled",
                    scene().noor.id()));
            kept(log.closeOut(
                    scene().booking, CloseOutItem.PARTS_OUT, "out", scene().noor.id()));
            kept(log.closeOut(
                    scene().booking,
                    CloseOutItem.TOOL,
                    "as-declared",
                    scene().noor.id()));
            kept(log.closeOut(
                    scene().booking,
                    CloseOutItem.ARM_PARKED,
                    "parked",
                    scene().noor.id()));
            kept(log.closeOut(
                    scene().booking, CloseOutItem.ODD, "fault", scene().noor.id()));
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
        }

        @Test
        void gatesTheNextReleaseOnTheCellUntilItIsClosedOut() {
            clock.moveToStart();
            Person yuki = scene().lab.student("Yuki Halfmoon");
            Person saoirse = scene().lab.student("Saoirse Pinwheel");
            var next = scene().lab.booked(scene().cell, "2026-03-11T10:37:00Z", yuki, saoirse);
            clock.moveTo(BenchScene.START.plusSeconds(120));
            started();
            kept(log.finish(scene().booking, 5, scene().noor.id()));
            clock.moveTo(BenchScene.START.plusSeconds(1900));

            assertThat(scene().desk.look(next.id()).obstacles()).anySatisfy(obstacle -> {
                assertThat(obstacle.code()).isEqualTo("previous-not-closed-out");
                assertThat(obstacle.line()).contains("Noor Candlewick").contains("Adaeze Lanternby");
            });
            closeOut();
            assertThat(scene().desk.look(next.id()).obstacles())
                    .extracting(Obstacle::code)
                    .doesNotContain("previous-not-closed-out");
        }

        @Test
        void letsOthersLogStopsOnly() {
            Release release = scene().released();
            Person yuki = scene().lab.student("Yuki Halfmoon");
            assertThat(refused(log.start(scene().booking, release.code(), yuki.id()))
                            .code())
                    .isEqualTo("not-theirs");
            assertThat(refused(log.start(
                                    scene().booking,
                                    release.code(),
                                    scene().mateo.id()))
                            .code())
                    .as("the attendant has nothing else to do")
                    .isEqualTo("not-theirs");
            kept(log.start(scene().booking, release.code(), scene().noor.id()));
            assertThat(refused(log.finish(scene().booking, 1, yuki.id())).code())
                    .isEqualTo("not-theirs");
            assertThat(log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, yuki.id())
                            .account())
                    .isEqualTo(yuki.id());
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
        }

        @Test
        void correctsByAddingNeverByChanging() {
            Run run = started();
            RunEvent start = runs.events(scene().booking).get(0);
            kept(log.correct(
                    run.id(),
                    start.id(),
                    "The first pass was without a part.",
                    scene().noor.id()));
            List<RunEvent> events = runs.events(scene().booking);
            assertThat(events).hasSize(2).contains(start);
            assertThat(events.get(1).corrects()).isEqualTo(start.id());
            assertThat(refused(log.correct(
                                    run.id(),
                                    UUID.randomUUID(),
                                    "x",
                                    scene().noor.id()))
                            .code())
                    .isEqualTo("event");
            for (String change :
                    List.of("update run_events set words = 'other'", "delete from run_events", "delete from runs")) {
                assertThatThrownBy(() -> jdbc.sql(change).update())
                        .isInstanceOf(DataAccessException.class)
                        .hasMessageContaining("never changed");
            }
        }

        @Test
        void listsRunsPageByPage() {
            Run mine = started();
            assertThat(runs.page(new Runs.Filter(null, null, scene().mateo.id()), null, 10)
                            .runs())
                    .extracting(Run::id)
                    .containsExactly(mine.id());
            assertThat(runs.page(new Runs.Filter(scene().cell, java.time.LocalDate.parse("2026-03-11"), null), null, 10)
                            .runs())
                    .hasSize(1);
            assertThat(runs.page(new Runs.Filter(scene().cell, java.time.LocalDate.parse("2026-03-12"), null), null, 10)
                            .runs())
                    .isEmpty();
            Run other = new RunPair(application).second(log);
            Runs.Page first = runs.page(new Runs.Filter(null, null, null), null, 1);
            assertThat(first.runs()).hasSize(1);
            assertThat(first.next()).isNotNull();
            Runs.Page second = runs.page(new Runs.Filter(null, null, null), first.next(), 1);
            assertThat(second.runs()).hasSize(1).doesNotContainAnyElementsOf(first.runs());
            assertThat(runs.open()).extracting(Run::id).contains(mine.id(), other.id());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
