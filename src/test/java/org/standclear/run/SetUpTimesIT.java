package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Collections;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BenchLog;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.signoff.SignoffList;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** How long people took to get the bench ready, from the log. The slot starts at 10:07; times are told from there. */
class SetUpTimesIT {

    private static final int ALL = 100_000;

    abstract static class Cases extends RunLogCases {

        @Autowired
        BenchLog benchLog;

        /** How many turns in the log took exactly so long; the lab is shared by all tests, so seconds are chosen oddly. */
        private int turnsOf(double seconds) {
            return Collections.frequency(benchLog.setUps(ALL), seconds / 60);
        }

        private void at(long seconds) {
            clock.moveTo(BenchScene.START.plusSeconds(seconds));
        }

        private void bothSignTheBenchList() {
            is(Signed.Kept.class, scene().answerAndSign(Part.OPERATOR, scene().noor));
            is(Signed.Kept.class, scene().answerAndSign(Part.ATTENDANT, scene().mateo));
        }

        private void start(Release release) {
            kept(log.start(scene().booking, release.code(), scene().noor.id()));
        }

        @Test
        void endsWithTheAttendantsSignatureAndNotWithTheTechnician() {
            int before = turnsOf(391);
            at(240);
            scene().ready();
            at(391);
            bothSignTheBenchList();
            at(391 + 600);
            start(scene().releasedBy(scene().adaeze));

            // 6 min 31 s; neither the session list at 4 min nor the wait of ten minutes for the technician
            assertThat(turnsOf(391)).isEqualTo(before + 1);
            assertThat(turnsOf(240)).isZero();
            assertThat(turnsOf(991)).isZero();
        }

        @Test
        void countsNoTurnThatLedToNoRun() {
            int before = benchLog.setUps(ALL).size();
            at(240);
            scene().released();

            assertThat(benchLog.setUps(ALL)).hasSize(before);
        }

        @Test
        void countsATurnOnceHoweverOftenItIsReleased() {
            int before = benchLog.setUps(ALL).size();
            int such = turnsOf(283);
            at(240);
            scene().ready();
            at(283);
            bothSignTheBenchList();
            start(scene().releasedBy(scene().adaeze));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(
                    scene().booking,
                    ResetCause.PRECAUTION,
                    "nothing was wrong",
                    new RunLog.Witness(scene().adaeze.id(), scene().adaeze.id(), null)));
            // somebody sets the clock back: the later list has the earlier time
            at(269);
            bothSignTheBenchList();
            start(scene().releasedBy(scene().adaeze));

            assertThat(benchLog.setUps(ALL)).hasSize(before + 1);
            assertThat(turnsOf(283)).isEqualTo(such + 1);
            assertThat(turnsOf(269)).isZero();
        }

        @Test
        void takesABenchThatWasReadyBeforeItsSlotAsReadyAtItsStart() {
            int before = turnsOf(0);
            scene().ready();
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.BENCH);
            // the list is open; now somebody sets the clock back
            at(-Duration.ofMinutes(1).toSeconds());
            bothSignTheBenchList();
            at(130);
            start(scene().releasedBy(scene().adaeze));

            assertThat(turnsOf(0)).isEqualTo(before + 1);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
