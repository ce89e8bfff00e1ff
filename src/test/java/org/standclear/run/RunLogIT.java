package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** From a start to its end, with stops in between. */
class RunLogIT {

    abstract static class Cases extends RunLogCases {

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

        /**
         * Directive 2006/42/EC, annex I, 1.2.4.3, in our words: the stop stays until it is taken off on purpose, and taking
         * it off starts nothing but only lets a start be asked for. So here: a reset leads to a list, never to a run.
         */
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
            assertThat(again.firstRun()).as("no pass came to its end").isTrue();
            kept(log.start(scene().booking, again.code(), scene().noor.id()));
            assertThat(runs.of(scene().booking).orElseThrow().state()).isEqualTo(RunState.RUNNING);
            assertThat(runs.of(scene().booking).orElseThrow().stops()).isEqualTo(1);
        }

        @Test
        void staysAFirstRunUntilSomebodyOfTheStaffWatchedOne() {
            started();
            kept(log.pass(scene().booking, scene().noor.id()));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            Release again = scene().releasedBy(scene().hemi);
            assertThat(again.firstRun()).as("nobody watched it").isTrue();
            kept(log.start(scene().booking, again.code(), scene().noor.id()));
            assertThat(refused(log.watched(
                                    scene().booking,
                                    new RunLog.Witness(
                                            scene().mateo.id(), scene().mateo.id(), null)))
                            .code())
                    .isEqualTo("not-staff");
            kept(log.watched(scene().booking, adaeze()));
            assertThat(refused(log.watched(scene().booking, adaeze())).says()).contains("on record already");
            kept(log.finish(scene().booking, 2, scene().noor.id()));
            assertThat(jdbc.sql("select count(*) from signoff_releases where booking_id = :booking"
                                    + " and run_through_at is not null")
                            .param("booking", scene().booking.value())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(1);
        }

        @Test
        void saysAtTheFinishThatAFirstRunWasNotWatched() {
            started();
            assertThat(kept(log.finish(scene().booking, 1, scene().noor.id())).words())
                    .contains("The first run was not watched: the next one is a first run again.");
            assertThat(refused(log.watched(scene().booking, adaeze())).says())
                    .as("it has ended")
                    .contains("between its start and its end");
        }

        @Test
        void isNoFirstRunOnceAPassCameToItsEnd() {
            started();
            kept(log.watched(scene().booking, adaeze()));
            kept(log.pass(scene().booking, scene().noor.id()));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().releasedBy(scene().hemi).firstRun()).isFalse();
        }

        @Test
        void saysWhenAPassIsOneMoreThanDeclared() {
            started();
            for (int pass = 1; pass <= 5; pass++) {
                assertThat(kept(log.pass(scene().booking, scene().noor.id())).words())
                        .isEmpty();
            }
            assertThat(kept(log.pass(scene().booking, scene().noor.id())).words())
                    .isEqualTo("More passes than declared: 6 since the start, 5 declared.");
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
            kept(log.reset(scene().booking, ResetCause.PART, "", adaeze()));
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
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));

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
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
