package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.Person;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** From a start to the close-out, with stops in between. */
class RunLogIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        RunLog log;

        @Autowired
        Runs runs;

        @Autowired
        Cells cells;

        private Release.Lapsed lapsed() {
            return java.util.Objects.requireNonNull(
                    releases.latest(scene().booking).orElseThrow().lapsed());
        }

        private RunEvent kept(Logged logged) {
            return is(Logged.Kept.class, logged).event();
        }

        private Logged.Refused refused(Logged logged) {
            return is(Logged.Refused.class, logged);
        }

        private Run started() {
            Release release = scene().released();
            kept(log.start(scene().booking, release.code(), scene().noor.id()));
            return runs.of(scene().booking).orElseThrow();
        }

        private void closeOut() {
            for (CloseOutItem item : CloseOutItem.values()) {
                kept(log.closeOut(
                        scene().booking,
                        item,
                        item.choices().get(0).value(),
                        scene().mateo.id()));
            }
        }

        private Witness adaeze() {
            return new Witness(scene().adaeze.id(), scene().adaeze.id(), null);
        }

        @Test
        void goesFromStartToCloseOut() {
            Run run = started();
            assertThat(scene().state()).isEqualTo(BookingState.RUNNING);
            assertThat(run.inPart(Part.OPERATOR)).containsExactly(scene().noor.id());
            assertThat(run.inPart(Part.ATTENDANT)).containsExactly(scene().mateo.id());
            assertThat(run.inPart(Part.RELEASER)).containsExactly(scene().adaeze.id());

            kept(log.pass(scene().booking, scene().noor.id()));
            kept(log.pass(scene().booking, scene().screen.id()));
            kept(log.finish(scene().booking, 2, scene().noor.id()));
            assertThat(scene().state()).isEqualTo(BookingState.FINISHED);
            closeOut();

            Run closed = runs.of(scene().booking).orElseThrow();
            assertThat(scene().state()).isEqualTo(BookingState.CLOSED_OUT);
            assertThat(closed.state()).isEqualTo(RunState.CLOSED_OUT);
            assertThat(closed.passes()).isEqualTo(2);
            assertThat(runs.events(scene().booking))
                    .extracting(RunEvent::kind)
                    .containsExactly(
                            RunEvent.Kind.STARTED,
                            RunEvent.Kind.PASS,
                            RunEvent.Kind.PASS,
                            RunEvent.Kind.FINISHED,
                            RunEvent.Kind.CLOSE_OUT,
                            RunEvent.Kind.CLOSE_OUT,
                            RunEvent.Kind.CLOSE_OUT,
                            RunEvent.Kind.CLOSE_OUT,
                            RunEvent.Kind.CLOSE_OUT);
            assertThat(runs.events(scene().booking).get(0).words()).startsWith("First run of this program version");
            assertThat(record()).contains("run.started", "run.pass", "run.finished", "run.close-out");
        }

        @Test
        void endsTheReleaseOnAnEStopPressAndAsksForANewOne() {
            started();
            RunEvent stop = log.stop(
                    scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            assertThat(stop.booking()).isEqualTo(scene().booking);
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
            Release.Lapsed lapsed = lapsed();
            assertThat(lapsed.rule()).isEqualTo(LapseRule.E_STOP_PRESS);

            assertThat(refused(log.start(scene().booking, "K74M", scene().noor.id()))
                            .code())
                    .isEqualTo("not-released");
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(scene().sheet().brief()).isTrue();

            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            Release again = scene().releasedBy(scene().hemi);
            assertThat(again.firstRun()).isFalse();
            kept(log.start(scene().booking, again.code(), scene().noor.id()));
            assertThat(runs.of(scene().booking).orElseThrow().state()).isEqualTo(RunState.RUNNING);
            assertThat(runs.of(scene().booking).orElseThrow().stops()).isEqualTo(1);
        }

        @Test
        void readsTheFullListAfterAStopThatWasNoPrecaution() {
            started();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            kept(log.reset(scene().booking, ResetCause.MOTION, "wrong wrist turn", adaeze()));
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void letsOnlyStaffResetAndOnlyWithTheCauseKnown() {
            started();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            Witness noor = new Witness(scene().noor.id(), scene().noor.id(), null);
            assertThat(refused(log.reset(scene().booking, ResetCause.PRECAUTION, "", noor))
                            .says())
                    .isEqualTo("A technician or an instructor records the reset of a stop.");
            Witness forged = new Witness(scene().noor.id(), scene().adaeze.id(), null);
            assertThat(refused(log.reset(scene().booking, ResetCause.PRECAUTION, "", forged))
                            .code())
                    .isEqualTo("not-the-signer");
            scene().choosePins(scene().adaeze);
            Witness wrongPin = new Witness(scene().screen.id(), scene().adaeze.id(), "000111");
            assertThat(refused(log.reset(scene().booking, ResetCause.PRECAUTION, "", wrongPin))
                            .code())
                    .isEqualTo("pin");
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
            kept(log.reset(
                    scene().booking,
                    ResetCause.PRECAUTION,
                    "",
                    new Witness(scene().screen.id(), scene().adaeze.id(), BenchScene.PIN)));
        }

        @Test
        void holdsTheCellAfterTheSecondProtectiveStopInASlot() {
            started();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.IN_SERVICE);
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            kept(log.start(
                    scene().booking,
                    scene().releasedBy(scene().hemi).code(),
                    scene().noor.id()));
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());

            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
            assertThat(cells.find(scene().cell).orElseThrow().stateReason()).contains("look before a third");
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed())
                    .satisfies(lapsed -> assertThat(
                                    java.util.Objects.requireNonNull(lapsed).rule())
                            .isEqualTo(LapseRule.SECOND_PROTECTIVE_STOP));
        }

        @Test
        void logsAStopInAnyState() {
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().noor.id());
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);

            Release release = scene().released();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
            assertThat(refused(log.start(
                                    scene().booking,
                                    release.code(),
                                    scene().noor.id()))
                            .says())
                    .contains("E-stop pressed.");

            BenchScene empty = new BenchScene(application);
            clock.moveTo(BenchScene.START.plusSeconds(7 * 3600));
            RunEvent alone = log.stop(empty.cell, RunEvent.Kind.E_STOP_PRESS, empty.hemi.id());
            assertThat(alone.booking()).isNull();
            assertThat(runs.recentStops(empty.cell, 5)).extracting(RunEvent::id).containsExactly(alone.id());
        }

        @Test
        void logsEveryPressOnTopOfAStop() {
            started();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().hemi.id());
            assertThat(runs.of(scene().booking).orElseThrow().stops()).isEqualTo(2);
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
        }

        @Test
        void canBeFinishedWhileStoppedAndAfterAReset() {
            started();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            kept(log.finish(scene().booking, 0, scene().noor.id()));
            closeOut();
            assertThat(scene().state()).isEqualTo(BookingState.CLOSED_OUT);
        }

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
                        .hasMessageContaining("never changed or deleted");
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

    /** A second scene in the same database. */
    record RunPair(org.springframework.context.ApplicationContext application) {

        Run second(RunLog log) {
            BenchScene other = new BenchScene(application);
            Release release = other.released();
            log.start(other.booking, release.code(), other.noor.id());
            return application.getBean(Runs.class).of(other.booking).orElseThrow();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
