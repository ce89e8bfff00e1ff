package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellStates;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.CellLapses;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Turn;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * The clock is set back after the bench list was read: what happens at the cell then has an earlier time than the list, and
 * came after it all the same. What was read before is read again.
 */
class ClockSetBackIT {

    /** When the full list is read; the slot began at 10:07. */
    private static final Instant READ = BenchScene.START.plusSeconds(900);

    private static final Instant BACK = BenchScene.START.plusSeconds(240);

    abstract static class Cases extends RunLogCases {

        @Autowired
        CellStates states;

        @Autowired
        DayTests dayTests;

        @Autowired
        CellLapses lapses;

        @Autowired
        Handovers handovers;

        @Autowired
        PlatformTransactionManager transactions;

        @BeforeEach
        void aListIsReadLate() {
            scene().ready();
            clock.moveTo(READ);
            signedByTwo();
        }

        private void signedByTwo() {
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
        }

        private void aRun() {
            String code = scene().releasedBy(scene().adaeze).code();
            kept(log.start(scene().booking, code, scene().noor.id()));
            clock.moveBy(Duration.ofSeconds(30));
        }

        private void aRunThatWasStoppedAsAPrecaution() {
            aRun();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
        }

        private void heldAndReturned() {
            states.hold(scene().cell, scene().hemi.id(), "odd noise");
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            SampleCell.readByTwo(application, scene().cell);
            is(
                    CellStates.Return.Returned.class,
                    states.returnToService(scene().cell, scene().hemi.id(), "nothing found"));
        }

        @Test
        void asksForTheShortListWhileNothingHappened() {
            aRunThatWasStoppedAsAPrecaution();
            clock.moveTo(BACK);
            assertThat(scene().sheet().brief()).isTrue();
        }

        @Test
        void asksForTheFullListAfterADayTest() {
            aRunThatWasStoppedAsAPrecaution();
            clock.moveTo(BACK);
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void asksForTheFullListAfterAHold() {
            aRunThatWasStoppedAsAPrecaution();
            clock.moveTo(BACK);
            heldAndReturned();
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void asksForTheFullListAfterAStopThatWasNoPrecaution() {
            aRunThatWasStoppedAsAPrecaution();
            clock.moveTo(BACK);
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.MOTION, "It went another way.", adaeze()));
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void asksForTheFullListWhenTheRecordSaysSo() {
            aRunThatWasStoppedAsAPrecaution();
            clock.moveTo(BACK);
            releases.askFullList(scene().booking, "The part is another one.");
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void makesAnOpenListVoid() {
            assertThat(scene().sheet().signatures()).hasSize(2);
            clock.moveTo(BACK);
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            assertThat(scene().sheet().signatures()).isEmpty();
            assertThat(lastLapse().code()).isEqualTo("list-void");
            assertThat(lastLapse().because()).endsWith("held, tagged or tested since: the values are read again.");
        }

        private Lapse lastLapse() {
            List<Lapse> all = signed.lapses(scene().booking);
            return all.get(all.size() - 1);
        }

        @Test
        void makesAnOpenListVoidWhoseTurnCannotBeTold() {
            assertThat(scene().sheet().signatures()).hasSize(2);
            clock.moveTo(READ.minusSeconds(60));
            assertThat(scene().sheet().signatures()).as("a correction").hasSize(2);
            clock.moveTo(READ.minusSeconds(61));
            assertThat(scene().sheet().signatures()).isEmpty();
            assertThat(lastLapse().because()).contains("clock was set back");
            signedByTwo();
            assertThat(scene().releasedBy(scene().adaeze).attendant())
                    .as("whose turn has ended stands there anew")
                    .isEqualTo(scene().mateo.id());
        }

        @Test
        void suspendsAReleaseWhoseTurnCannotBeTold() {
            scene().releasedBy(scene().adaeze);
            clock.moveTo(BACK);
            scene().desk.look(scene().booking);
            assertThat(releases.latest(scene().booking).orElseThrow().suspended())
                    .contains("can no longer be told", "clock was set back");
        }

        @Test
        void asksForASwapInARunWhoseTurnCannotBeTold() {
            aRun();
            assertThat(handovers.turn(scene().booking).orElseThrow().over()).isFalse();
            clock.moveTo(BACK);
            Turn turn = handovers.turn(scene().booking).orElseThrow();
            assertThat(turn.told()).isFalse();
            assertThat(turn.over()).isTrue();
            Person tal = scene().lab.student("Tal Emberley");
            scene().lab.authorise(tal.id());
            handovers.ask(scene().booking, tal.id(), scene().noor.id());
            scene().takesOver(tal);
            assertThat(handovers.turn(scene().booking).orElseThrow())
                    .satisfies(next ->
                            assertThat(next.over()).as("another one's turn").isFalse());
        }

        @Test
        void makesAReleaseLapseWhenARevisionComesAfterIt() {
            scene().next(scene().revision(), "Peg and plate, before the release");
            scene().desk.look(scene().booking);
            scene().releasedBy(scene().adaeze);
            scene().desk.look(scene().booking);
            assertThat(scene().state())
                    .as("released all the same, though a newer one was there")
                    .isEqualTo(BookingState.RELEASED);
            clock.moveTo(BACK);
            scene().next(scene().revision(), "Peg and plate, after the release");
            scene().desk.look(scene().booking);
            assertThat(lapsed().rule()).isEqualTo(LapseRule.FILE_CHANGED);
        }

        @Test
        void makesAReleaseLapse() {
            scene().releasedBy(scene().adaeze);
            clock.moveTo(BACK);
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            scene().desk.look(scene().booking);
            assertThat(lapsed().rule()).isEqualTo(LapseRule.VALUES_CHANGED);
            assertThat(scene().state()).isEqualTo(BookingState.READY);
        }

        @Test
        void watchesTheFirstRunAfterAReturn() {
            aRun();
            kept(log.finish(scene().booking, 5, scene().noor.id()));
            closeOut();
            clock.moveTo(BACK);
            heldAndReturned();
            var next = scene().lab.booked(scene().cell, "2026-03-11T10:37:00Z", scene().noor, scene().mateo);
            scene().preparation
                    .attach(next.id(), scene().revision().id(), scene().noor.id());
            clock.moveTo(BenchScene.START.plusSeconds(1860));
            BenchScene again = scene().at(next.id(), scene().noor, scene().mateo);
            again.awaitsReleaser();
            assertThat(again.releasedBy(scene().hemi).firstRun())
                    .as("this version has run here, but not since the return")
                    .isTrue();
        }

        @Test
        void takesBackACheckThatLapsedWhileTheRunStoodStill() {
            aRun();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            clock.moveTo(BACK);
            new TransactionTemplate(transactions)
                    .executeWithoutResult(status -> lapses.lapseAll(
                            scene().cell,
                            LapseRule.INCIDENT,
                            "Something was hit.",
                            scene().adaeze.id()));
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
