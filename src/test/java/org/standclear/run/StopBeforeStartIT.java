package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellStops;
import org.standclear.people.Person;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffList;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A stop while nothing runs: its cause comes first, and what was signed for the next run is void. */
class StopBeforeStartIT {

    abstract static class Cases extends RunLogCases {

        @Autowired
        CellStops stops;

        private void press() {
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
        }

        private Logged precaution() {
            return log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze());
        }

        @Test
        void voidsWhatIsSignedAndReleasesNothingUntilTheCauseIsKnown() {
            scene().awaitsReleaser();
            scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
            press();

            SignoffDesk.Standing standing = scene().desk.look(scene().booking);
            assertThat(standing.sheet()).as("no list while stopped").isEmpty();
            assertThat(standing.obstacles())
                    .extracting(obstacle -> obstacle.code())
                    .containsExactly("stop-not-reset");
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(signed.lapses(scene().booking)).anySatisfy(lapse -> {
                assertThat(lapse.what()).isEqualTo("bench list");
                assertThat(lapse.code()).isEqualTo("stop-not-reset");
            });
            assertThat(record()).contains("signoff.list-void");

            kept(precaution());
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.BENCH);
            assertThat(scene().sheet().signatures()).isEmpty();
            assertThat(scene().sheet().brief())
                    .as("nothing was read to the end yet")
                    .isFalse();
            assertThat(record()).contains("run.reset");
        }

        @Test
        void voidsTheSessionListToo() {
            scene().attached();
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            press();
            assertThat(scene().desk.look(scene().booking).sheet()).isEmpty();
            kept(precaution());
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.SESSION);
            assertThat(scene().sheet().signatures()).isEmpty();
        }

        @Test
        void releasesAgainByTheShortListAfterAPrecaution() {
            scene().released();
            press();
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(scene().desk.look(scene().booking).sheet()).isEmpty();
            kept(precaution());
            assertThat(scene().sheet().brief()).isTrue();
        }

        @Test
        void readsTheFullListWhenItWasNoPrecaution() {
            scene().released();
            press();
            kept(log.reset(scene().booking, ResetCause.PERSON, "a hand came over the line", adaeze()));
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void takesNoProtectiveStopForAPrecaution() {
            scene().released();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            press();
            assertThat(refused(precaution()).code()).isEqualTo("cause");
            assertThat(stops.open(scene().cell)).hasSize(2);
            kept(log.reset(scene().booking, ResetCause.CONTACT_LIMIT, "", adaeze()));
            assertThat(stops.open(scene().cell)).isEmpty();
            assertThat(scene().sheet().brief()).isFalse();
        }

        @Test
        void letsOnlyStaffRecordTheCause() {
            scene().ready();
            press();
            Witness noor = new Witness(scene().noor.id(), scene().noor.id(), null);
            assertThat(refused(log.reset(scene().booking, ResetCause.PRECAUTION, "", noor))
                            .code())
                    .isEqualTo("not-staff");
            assertThat(stops.open(scene().cell)).hasSize(1);
            kept(precaution());
            assertThat(refused(precaution()).says()).isEqualTo("No stop on this cell waits for its reset.");
        }

        @Test
        void gatesTheNextBookingAfterAStopThatNobodyReset() {
            started();
            press();
            kept(log.finishStopped(
                    scene().booking, 0, ResetCause.PART, scene().noor.id()));
            closeOut();
            assertThat(cells.obstacles(scene().cell, clock.instant()))
                    .extracting(obstacle -> obstacle.code())
                    .containsExactly("stop-not-reset");

            clock.moveTo(BenchScene.START.plusSeconds(6 * 3600));
            kept(log.resetAt(scene().cell, ResetCause.PRECAUTION, "", adaeze()));
            assertThat(cells.obstacles(scene().cell, clock.instant())).isEmpty();
            assertThat(refused(log.resetAt(scene().cell, ResetCause.PRECAUTION, "", adaeze()))
                            .code())
                    .isEqualTo("state");
        }

        @Test
        void asksTheSessionListOfAnAttendantWhoCameWhileItWasStopped() {
            started();
            press();
            Person tal = scene().lab.student("Tal Emberley");
            scene().bookings
                    .nameAttendant(scene().booking, tal.id(), scene().noor.id());
            kept(precaution());

            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.SESSION);
            assertThat(scene().sheet().attendant()).isEqualTo(tal.id());
            BenchScene after = scene().at(scene().booking, scene().noor, tal);
            after.answerAndSign(Part.OPERATOR, scene().noor);
            after.answerAndSign(Part.ATTENDANT, tal);
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.BENCH);
            assertThat(scene().sheet().brief()).isFalse();
            kept(log.finish(scene().booking, 0, scene().noor.id()));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
