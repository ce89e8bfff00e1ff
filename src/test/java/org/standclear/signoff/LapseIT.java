package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellStates;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.program.Revision;
import org.standclear.signoff.Releases.StartPermission;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Each lapse is seen on the next look, kept with its reason, and refuses the start. */
class LapseIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        CellStates states;

        @Autowired
        CellRegister register;

        @Autowired
        Bookings bookings;

        private Release.Lapsed lapsed() {
            return java.util.Objects.requireNonNull(
                    releases.latest(scene().booking).orElseThrow().lapsed());
        }

        private void expectLapsed(LapseRule rule, String because, BookingState after) {
            scene().desk.look(scene().booking);
            Release.Lapsed lapsed = lapsed();
            assertThat(lapsed.rule()).isEqualTo(rule);
            assertThat(lapsed.because()).contains(because);
            assertThat(scene().state()).isEqualTo(after);
            assertThat(signed.lapses(scene().booking)).anySatisfy(kept -> {
                assertThat(kept.code()).isEqualTo(rule.code());
                assertThat(kept.what()).isEqualTo("release");
            });
            assertThat(record()).contains("signoff.release-lapsed");
        }

        private String startRefused(Release release) {
            return is(
                            StartPermission.Refused.class,
                            releases.useForStart(
                                    scene().booking,
                                    release.code(),
                                    scene().noor.id()))
                    .says();
        }

        @Test
        void lapsesAfterTenMinutesAndRefusesTheStart() {
            Release release = scene().released();
            clock.moveBy(Duration.ofMinutes(10));
            assertThat(startRefused(release))
                    .isEqualTo(
                            "Not started: the release lapsed. Not started within 10 min. It is issued anew, never stretched.");
            expectLapsed(LapseRule.NOT_STARTED_IN_TIME, "Not started within 10 min.", BookingState.READY);
        }

        @Test
        void asksTheFullListOfAReleaseThatWasNeverStarted() {
            scene().released();
            clock.moveBy(Duration.ofMinutes(10));
            Sheet again = scene().sheet();
            assertThat(again.brief()).as("nothing ran, so nothing is repeated").isFalse();
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().releasedBy(scene().hemi).waits()).isTrue();
        }

        @Test
        void lapsesWhenTheSlotEnds() {
            scene().ready();
            clock.moveTo(scene().now().end().minusSeconds(120));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            Release release = scene().releasedBy(scene().adaeze);
            clock.moveTo(scene().now().end());
            assertThat(startRefused(release)).contains("The slot has ended.");
            expectLapsed(LapseRule.WINDOW_OVER, "The slot has ended.", BookingState.READY);
        }

        @Test
        void lapsesWhenTheFileOnTheBookingChanges() {
            Release release = scene().released();
            Revision changed = scene().next(scene().revision(), "Peg and plate.");
            scene().preparation
                    .attach(scene().booking, changed.id(), scene().noor.id());
            assertThat(startRefused(release)).contains("The program file changed. Revision 2 ");
            // it is checked anew by itself
            expectLapsed(LapseRule.FILE_CHANGED, "The program file changed.", BookingState.CHECKED);
        }

        @Test
        void lapsesWhenANewerRevisionIsUploaded() {
            Release release = scene().released();
            clock.moveBy(Duration.ofSeconds(30));
            scene().next(scene().revision(), "Peg and plate.");
            assertThat(startRefused(release)).contains("Revision 2 came after the release.");
        }

        @Test
        void lapsesWhenTheCellIsTaggedOut() {
            Release release = scene().released();
            states.tagOut(scene().cell, scene().mateo.id(), "cable chafe");
            assertThat(startRefused(release)).contains("is out of service: cable chafe.");
            expectLapsed(LapseRule.CELL_NOT_IN_SERVICE, "cable chafe", BookingState.READY);
        }

        @Test
        void lapsesWhenTheCellMovesToAnotherVersion() {
            Release release = scene().released();
            String name = application
                    .getBean(org.standclear.cell.Cells.class)
                    .find(scene().cell)
                    .orElseThrow()
                    .name();
            register.approve(SampleCell.proposed(register, scene().cell, SampleCell.file(name, 2)), PersonId.next(), 1);
            assertThat(startRefused(release)).contains("moved from version 1 to version 2.");
            // checked anew by itself on the new version; the lists begin again
            expectLapsed(LapseRule.CELL_VERSION_CHANGED, "version 2", BookingState.CHECKED);
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.SESSION);
            assertThat(scene().sheet().cellVersion()).isEqualTo(2);
        }

        @Test
        void lapsesTheCheckOfOtherBookingsWhenTheCellMoves() {
            scene().attached();
            String name = application
                    .getBean(org.standclear.cell.Cells.class)
                    .find(scene().cell)
                    .orElseThrow()
                    .name();
            register.approve(SampleCell.proposed(register, scene().cell, SampleCell.file(name, 2)), PersonId.next(), 1);
            Preparation.Prepared prepared = scene().preparation.look(scene().booking);
            assertThat(prepared.lapsed()).hasValueSatisfying(lapse -> {
                assertThat(lapse.what()).isEqualTo("check");
                assertThat(lapse.because()).endsWith("moved from version 1 to version 2.");
            });
            assertThat(prepared.says()).isEqualTo("Within limits on " + name + " version 2.");
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
        }

        @Test
        void lapsesWhenTheReleaserGoesOffDuty() {
            Person ines = scene().lab.technician("Tomasz Fennimore-Ash");
            application
                    .getBean(org.standclear.people.DutyRegister.class)
                    .plan(ines.id(), BenchScene.START.minusSeconds(3600), BenchScene.START.plusSeconds(300), null);
            scene().awaitsReleaser();
            Release release = scene().releasedBy(ines);
            clock.moveTo(BenchScene.START.plusSeconds(300));
            assertThat(startRefused(release)).contains("Tomasz Fennimore-Ash is off duty.");
            expectLapsed(LapseRule.RELEASER_OFF_DUTY, "off duty", BookingState.READY);
        }

        @Test
        void canBeTakenBack() {
            scene().released();
            assertThat(releases.withdraw(
                            scene().booking,
                            LapseRule.WITHDRAWN,
                            "Noor Candlewick took it back.",
                            scene().noor.id()))
                    .isTrue();
            expectLapsed(LapseRule.WITHDRAWN, "took it back", BookingState.READY);
        }

        @Test
        void goesBackToTheSessionListWhenASuspendedReleaseRunsOut() {
            Release release = scene().released();
            Person tal = scene().lab.student("Tal Emberley");
            bookings.nameAttendant(scene().booking, tal.id(), scene().noor.id());
            assertThat(startRefused(release)).contains("The release is suspended. Another e-stop attendant");
            clock.moveBy(Duration.ofMinutes(10));
            expectLapsed(LapseRule.NOT_STARTED_IN_TIME, "Not started within 10 min.", BookingState.CHECKED);
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.SESSION);
            assertThat(scene().sheet().attendant()).isEqualTo(tal.id());
        }

        @Test
        void startsTheListsAnewWithAnotherAttendant() {
            scene().ready();
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            Person tal = scene().lab.student("Tal Emberley");
            bookings.nameAttendant(scene().booking, tal.id(), scene().noor.id());
            Sheet sheet = scene().sheet();
            assertThat(sheet.list()).isEqualTo(SignoffList.SESSION);
            assertThat(sheet.attendant()).isEqualTo(tal.id());
            assertThat(sheet.signatures()).isEmpty();
        }

        @Test
        void asksTheAttendantAnewAfterALongWait() {
            scene().awaitsReleaser();
            clock.moveBy(Duration.ofMinutes(15).plusSeconds(1));
            Sheet sheet = scene().sheet();
            assertThat(sheet.signatures()).isEmpty();
            assertThat(signed.lapses(scene().booking))
                    .anySatisfy(lapse -> assertThat(lapse.because()).contains("somebody else takes the next one"));
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answer(Part.ATTENDANT, scene().mateo, scene().mateo);
            SignoffDesk.Signed.Refused refused =
                    is(SignoffDesk.Signed.Refused.class, scene().sign(Part.ATTENDANT, scene().mateo));
            assertThat(refused.obstacles()).extracting(Obstacle::code).containsExactly("attendant-turn-over");
            assertThat(refused.obstacles().get(0).mend()).contains("swap the attendant");
        }

        @Test
        void startsOnceAndOnlyByItsOwnCode() {
            Release release = scene().released();
            assertThat(is(
                                    StartPermission.Refused.class,
                                    releases.useForStart(
                                            scene().booking,
                                            "0000",
                                            scene().noor.id()))
                            .code())
                    .isEqualTo("other-release");
            is(
                    StartPermission.Given.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));
            assertThat(releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()))
                    .isInstanceOf(StartPermission.Refused.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
