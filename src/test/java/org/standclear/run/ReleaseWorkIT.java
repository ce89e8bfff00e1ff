package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.BenchLog;
import org.standclear.people.Person;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** How long technicians took over a release, from the log. The slot starts at 10:07; times are told from there. */
class ReleaseWorkIT {

    private static final int ALL = 100_000;

    abstract static class Cases extends RunLogCases {

        @Autowired
        BenchLog benchLog;

        /** How many releases took exactly so long; the lab is shared by all tests, so seconds are chosen oddly. */
        private int took(double seconds) {
            return Collections.frequency(benchLog.releaseWork(ALL), seconds / 60);
        }

        private int inAll() {
            return benchLog.releaseWork(ALL).size();
        }

        private void at(long seconds) {
            clock.moveTo(BenchScene.START.plusSeconds(seconds));
        }

        /** The session list is signed within the grace time, the bench list then. */
        private void benchIsReadyAt(long seconds) {
            at(240);
            scene().ready();
            at(seconds);
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
        }

        private Entered readsTheDisplay(Person account, String override) {
            return scene().enter(Part.RELEASER, account, 2, Map.of("power", "reduced", "override", override));
        }

        private void seesEverybodyClear(Person account) {
            scene().enter(Part.RELEASER, account, 8, Map.of("people", "clear"));
        }

        private void start(Signed signed) {
            Release release = is(Signed.Released.class, signed).release();
            kept(log.start(scene().booking, release.code(), scene().noor.id()));
        }

        private List<Instant> firstAnswers() {
            return jdbc.sql("""
                    select f.answered_at from signoff_first_answers f join signoff_sheets s on s.id = f.sheet_id
                    where s.booking_id = :booking order by f.kept_no""")
                    .param("booking", scene().booking.value())
                    .query((row, number) -> SqlTime.read(row, "answered_at"))
                    .list();
        }

        @Test
        void isMeasuredFromTheFirstAnswerAndNotFromWhenTheBenchWasReady() {
            int before = took(203);
            benchIsReadyAt(391);
            at(991);
            readsTheDisplay(scene().adaeze, "50");
            at(991 + 203);
            seesEverybodyClear(scene().adaeze);
            start(scene().sign(Part.RELEASER, scene().adaeze));

            // 3 min 23 s; not the wait of ten minutes before them
            assertThat(took(203)).isEqualTo(before + 1);
            assertThat(took(803)).isZero();
            assertThat(firstAnswers()).containsExactly(BenchScene.START.plusSeconds(991));
        }

        @Test
        void countsAScreenAtTheBenchWithASigningPin() {
            int before = took(187);
            scene().choosePins(scene().adaeze);
            benchIsReadyAt(391);
            at(400);
            readsTheDisplay(scene().screen, "50");
            at(400 + 187);
            seesEverybodyClear(scene().screen);
            start(scene().sign(Part.RELEASER, scene().screen, scene().adaeze, BenchScene.PIN));

            assertThat(took(187)).isEqualTo(before + 1);
        }

        @Test
        void doesNotBeginWithWhatNobodyCanRead() {
            int before = took(131);
            benchIsReadyAt(391);
            at(400);
            is(Entered.Refused.class, readsTheDisplay(scene().adaeze, "about half"));
            assertThat(firstAnswers()).isEmpty();
            at(500);
            readsTheDisplay(scene().adaeze, "50");
            at(500 + 131);
            seesEverybodyClear(scene().adaeze);
            start(scene().sign(Part.RELEASER, scene().adaeze));

            assertThat(took(131)).isEqualTo(before + 1);
        }

        @Test
        void doesNotBeginWithTheOthersAnswers() {
            benchIsReadyAt(391);

            assertThat(firstAnswers()).isEmpty();
        }

        @Test
        void beginsAnewWithEachTryAndCountsTheOneThatReleased() {
            int before = inAll();
            int such = took(77);
            benchIsReadyAt(391);
            at(400);
            readsTheDisplay(scene().adaeze, "40");
            seesEverybodyClear(scene().adaeze);
            is(Signed.NotReleased.class, scene().sign(Part.RELEASER, scene().adaeze));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            at(600);
            readsTheDisplay(scene().adaeze, "50");
            at(677);
            seesEverybodyClear(scene().adaeze);
            start(scene().sign(Part.RELEASER, scene().adaeze));

            assertThat(firstAnswers())
                    .containsExactly(BenchScene.START.plusSeconds(400), BenchScene.START.plusSeconds(600));
            assertThat(inAll()).isEqualTo(before + 1);
            assertThat(took(77)).isEqualTo(such + 1);
        }

        @Test
        void countsATurnOnceAndNotItsShortList() {
            int before = inAll();
            int such = took(149);
            benchIsReadyAt(391);
            readsTheDisplay(scene().adaeze, "50");
            at(391 + 149);
            seesEverybodyClear(scene().adaeze);
            start(scene().sign(Part.RELEASER, scene().adaeze));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "nothing was wrong", adaeze()));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().sheet().brief()).isTrue();
            start(scene().answerAndSign(Part.RELEASER, scene().adaeze));

            assertThat(firstAnswers()).hasSize(2);
            assertThat(inAll()).isEqualTo(before + 1);
            assertThat(took(149)).isEqualTo(such + 1);
        }

        @Test
        void leavesOutWhatTwoTechniciansAnswered() {
            int before = inAll();
            benchIsReadyAt(391);
            readsTheDisplay(scene().hemi, "50");
            at(800);
            start(scene().answerAndSign(Part.RELEASER, scene().adaeze));

            assertThat(firstAnswers()).containsExactly(BenchScene.START.plusSeconds(391));
            assertThat(inAll()).isEqualTo(before);
        }

        @Test
        void leavesOutWhatAClockThatWasSetBackWouldSay() {
            int before = inAll();
            benchIsReadyAt(800);
            readsTheDisplay(scene().adaeze, "50");
            at(750);
            scene().desk
                    .stepBack(
                            scene().sheet().id(), Part.RELEASER, scene().adaeze.id());
            readsTheDisplay(scene().adaeze, "50");
            seesEverybodyClear(scene().adaeze);
            start(scene().sign(Part.RELEASER, scene().adaeze));

            // what was kept first stays, though the clock says that it came last
            assertThat(firstAnswers()).containsExactly(BenchScene.START.plusSeconds(800));
            assertThat(inAll()).isEqualTo(before);
        }

        @Test
        void countsNoReleaseThatLedToNoRun() {
            int before = inAll();
            benchIsReadyAt(391);
            scene().releasedBy(scene().adaeze);

            assertThat(firstAnswers()).hasSize(1);
            assertThat(inAll()).isEqualTo(before);
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "update signoff_first_answers set answered_at = current_timestamp where sheet_id = :sheet",
                    "delete from signoff_first_answers where sheet_id = :sheet",
                    "insert into signoff_first_answers (sheet_id, account_id, answered_at)"
                            + " values (:sheet, :sheet, current_timestamp)"
                })
        void isKeptOnceInTheDatabase(String change) {
            benchIsReadyAt(391);
            readsTheDisplay(scene().adaeze, "50");

            assertThatThrownBy(() -> jdbc.sql(change)
                            .param("sheet", scene().sheet().id())
                            .update())
                    .isInstanceOf(DataAccessException.class);

            assertThat(firstAnswers()).containsExactly(BenchScene.START.plusSeconds(391));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
