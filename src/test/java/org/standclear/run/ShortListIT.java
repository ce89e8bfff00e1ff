package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.CellStates;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The short list is for a repeat in the same slot in which nothing happened; anything else reads every value again. */
class ShortListIT {

    abstract static class Cases extends RunLogCases {

        @Autowired
        CellStates states;

        @Autowired
        DayTests dayTests;

        @BeforeEach
        void aRunThatWasStoppedAsAPrecaution() {
            started();
            clock.moveBy(Duration.ofSeconds(30));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            clock.moveBy(Duration.ofSeconds(1));
        }

        private void signedByTwo() {
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
        }

        @Test
        void isForARepeat() {
            assertThat(scene().sheet().brief()).isTrue();
        }

        @Test
        void isForARepeatWhoseReleaseWasNotStartedInTime() {
            signedByTwo();
            scene().releasedBy(scene().hemi);
            clock.moveBy(Duration.ofMinutes(10));
            assertThat(scene().sheet().brief()).isTrue();
        }

        @Test
        void isNotForACellThatWasHeldAndReturned() {
            states.hold(scene().cell, scene().hemi.id(), "odd noise");
            clock.moveBy(Duration.ofSeconds(1));
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            SampleCell.readByTwo(application, scene().cell);
            is(
                    CellStates.Return.Returned.class,
                    states.returnToService(scene().cell, scene().hemi.id(), "nothing found"));
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void leavesTheReturnToPeopleWhoHadNoPartAndWatchesTheFirstRunAfterIt() {
            kept(log.finish(scene().booking, 1, scene().noor.id()));
            states.hold(scene().cell, scene().screen.id(), "odd noise");
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            SampleCell.readByTwo(application, scene().cell);
            for (Person involved : List.of(scene().noor, scene().mateo, scene().adaeze)) {
                assertThat(is(
                                        CellStates.Return.Refused.class,
                                        states.returnToService(scene().cell, involved.id(), "nothing found"))
                                .says())
                        .startsWith("You had a part in the run");
            }
            is(
                    CellStates.Return.Returned.class,
                    states.returnToService(scene().cell, scene().hemi.id(), "nothing found"));
            closeOut();

            var next = scene().lab.booked(scene().cell, "2026-03-11T10:37:00Z", scene().noor, scene().mateo);
            scene().preparation
                    .attach(next.id(), scene().revision().id(), scene().noor.id());
            clock.moveTo(BenchScene.START.plusSeconds(1860));
            BenchScene again = scene().at(next.id(), scene().noor, scene().mateo);
            again.awaitsReleaser();
            Release release = again.releasedBy(scene().hemi);
            assertThat(release.firstRun())
                    .as("this version has run here, but not since the return")
                    .isTrue();
        }

        @Test
        void isVoidWhenTheCellIsHeldWhileItIsOpen() {
            signedByTwo();
            assertThat(scene().sheet().brief()).isTrue();
            clock.moveBy(Duration.ofSeconds(1));
            states.hold(scene().cell, scene().hemi.id(), "odd noise");
            assertThat(scene().sheet().brief()).isFalse();
            assertThat(scene().sheet().signatures()).isEmpty();
            assertThat(signed.lapses(scene().booking))
                    .anySatisfy(lapse -> assertThat(lapse.because()).endsWith("the values are read again."));
        }

        @Test
        void isNotForACellThatWasTestedAnew() {
            dayTests.record(scene().cell, scene().adaeze.id(), SampleCell.goodReadings());
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void isNotAfterAReleaseThatWasTakenBack() {
            signedByTwo();
            scene().releasedBy(scene().hemi);
            releases.withdraw(
                    scene().booking,
                    LapseRule.WITHDRAWN,
                    "Not now.",
                    scene().hemi.id());
            assertThat(scene().sheet().brief()).isFalse();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
