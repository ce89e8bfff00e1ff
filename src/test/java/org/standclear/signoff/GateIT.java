package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellStates;
import org.standclear.cell.DayTestReadings;
import org.standclear.cell.DayTests;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.Duty;
import org.standclear.people.DutyRegister;
import org.standclear.people.Person;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Each gate closes on the facts of the features below, at the moment of the last signature. */
class GateIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        CellStates states;

        @Autowired
        DutyRegister duty;

        @Autowired
        AuthorisationRegister authorisations;

        private List<Obstacle> refused(Person releaser) {
            return is(Signed.Refused.class, scene().sign(Part.RELEASER, releaser))
                    .obstacles();
        }

        private void expect(Person releaser, String code, String words) {
            assertThat(refused(releaser)).anySatisfy(obstacle -> {
                assertThat(obstacle.code()).isEqualTo(code);
                assertThat(obstacle.line()).contains(words);
            });
            assertThat(scene().state()).isNotEqualTo(BookingState.RELEASED);
            assertThat(releases.of(scene().booking)).isEmpty();
        }

        private void releaserAnswers() {
            scene().awaitsReleaser();
            scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
        }

        private SignoffDesk.SignPart filledIn(Person releaser) {
            Sheet sheet = scene().sheet();
            SignoffDesk.Step.Sign step =
                    is(SignoffDesk.Step.Sign.class, scene().desk.step(sheet, Part.RELEASER, releaser.id()));
            return new SignoffDesk.SignPart(
                    sheet.id(),
                    Part.RELEASER,
                    releaser.id(),
                    releaser.id(),
                    null,
                    step.statement().sha256());
        }

        @Test
        void refusesACellThatWasTaggedOut() {
            releaserAnswers();
            SignoffDesk.SignPart filledIn = filledIn(scene().adaeze);
            states.tagOut(scene().cell, scene().mateo.id(), "cable chafe");
            // the values are read again after a return, so the list is void
            is(Signed.MovedOn.class, scene().desk.sign(filledIn));
            assertThat(releases.of(scene().booking)).isEmpty();
            Obstacle tagged = scene().desk.look(scene().booking).obstacles().get(0);
            assertThat(tagged.code()).isEqualTo("cell-not-in-service");
            assertThat(tagged.says()).contains("out of service: cable chafe");
            assertThat(tagged.mend()).contains("Adaeze Lanternby").contains("Hemi Coppergate");
        }

        @Test
        void keepsTheSignaturesWhileAGateIsClosed() {
            releaserAnswers();
            revoke(scene().mateo, Duty.ATTENDANT);
            assertThat(refused(scene().adaeze)).isNotEmpty();
            assertThat(scene().sheet().signatures()).hasSize(2);
        }

        @Test
        void refusesWithoutDayTest() {
            BenchScene tomorrow = scene();
            tomorrow.attached();
            SignoffDesk.Standing standing = tomorrow.desk.look(tomorrow.booking);
            assertThat(standing.obstacles()).isEmpty();

            application.getBean(DayTests.class).record(tomorrow.cell, tomorrow.adaeze.id(), failedReadings());
            assertThat(tomorrow.desk.look(tomorrow.booking).obstacles())
                    .extracting(Obstacle::code)
                    .contains("cell-not-in-service", "day-test-failed");
        }

        private DayTestReadings failedReadings() {
            return new DayTestReadings("door", true, true, true, "reduced", "level 3", 50, "G-02", true);
        }

        @Test
        void staysBeforeReadyWhileAGateIsClosedAndGoesOnByItself() {
            scene().attached();
            states.hold(scene().cell, scene().hemi.id(), "odd noise");
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(scene().desk.look(scene().booking).obstacles())
                    .extracting(Obstacle::code)
                    .containsExactly("cell-not-in-service");

            application
                    .getBean(DayTests.class)
                    .record(scene().cell, scene().adaeze.id(), org.standclear.cell.SampleCell.goodReadings());
            org.standclear.cell.SampleCell.readByTwo(application, scene().cell);
            states.returnToService(scene().cell, scene().adaeze.id(), "bolt tightened");
            scene().desk.look(scene().booking);
            assertThat(scene().state()).isEqualTo(BookingState.READY);
        }

        @Test
        void refusesAnAttendantWhoseAuthorisationWasRevoked() {
            releaserAnswers();
            revoke(scene().mateo, Duty.ATTENDANT);
            expect(scene().adaeze, "attendant-not-authorised", "Mateo Ironbark is not authorised as e-stop attendant");
        }

        @Test
        void refusesAnOperatorWhoseAuthorisationWasRevoked() {
            releaserAnswers();
            revoke(scene().noor, Duty.OPERATOR);
            expect(scene().adaeze, "operator-not-authorised", "Noor Candlewick is not authorised as operator");
        }

        private void revoke(Person person, Duty of) {
            jdbc.sql("select id from authorisations where person_id = :person and duty = :duty")
                    .param("person", person.id().value())
                    .param("duty", of.name())
                    .query(java.util.UUID.class)
                    .list()
                    .forEach(id -> authorisations.revoke(
                            id, "left the course", scene().hemi.id()));
        }

        @Test
        void refusesStaffOffDutyTheAuthorAndWhoHasAnotherPart() {
            scene().awaitsReleaser();
            Person wren = scene().lab.technician("Wren Saltmarsh");
            assertThat(is(
                                    SignoffDesk.Entered.Refused.class,
                                    scene().enter(Part.RELEASER, wren, 8, Map.of("people", "clear")))
                            .says())
                    .startsWith("Only staff on duty release.")
                    .contains("Adaeze Lanternby");
            assertThat(is(
                                    SignoffDesk.Entered.Refused.class,
                                    scene().enter(Part.RELEASER, scene().noor, 8, Map.of("people", "clear")))
                            .says())
                    .startsWith("The operator does not release their own run.");
            assertThat(is(
                                    SignoffDesk.Entered.Refused.class,
                                    scene().enter(Part.RELEASER, scene().mateo, 8, Map.of("people", "clear")))
                            .says())
                    .startsWith("Who attends the e-stop does not release that run.");
        }

        @Test
        void refusesStaffWhoWroteTheProgramEvenOnTheSharedScreen() {
            scene().preparation
                    .attach(
                            scene().booking,
                            scene().uploadBy(scene().adaeze, "by staff").id(),
                            scene().adaeze.id());
            scene().awaitsReleaser();
            scene().choosePins(scene().adaeze);
            scene().answer(Part.RELEASER, scene().screen, scene().adaeze);
            Signed.Refused refused = is(
                    Signed.Refused.class, scene().sign(Part.RELEASER, scene().screen, scene().adaeze, BenchScene.PIN));
            assertThat(refused.obstacles()).extracting(Obstacle::code).containsExactly("releaser-is-author");
            assertThat(scene().desk.mayRelease(scene().booking))
                    .contains(scene().hemi.id())
                    .doesNotContain(scene().adaeze.id());
        }

        @Test
        void refusesAnAttendantAtAnotherStop() {
            BenchScene here = new BenchScene(application);
            clock.moveTo(MovableClock.START);
            Person yuki = here.lab.student("Yuki Halfmoon");
            var next = here.lab.booked(here.cell, "2026-03-11T10:37:00Z", yuki, scene().mateo);
            clock.moveTo(BenchScene.START.plusSeconds(120));
            Release release = scene().released();
            clock.moveTo(Instant.parse("2026-03-11T10:38:00Z"));
            assertThat(here.desk.look(next.id()).obstacles())
                    .as("a release that ran out binds nobody")
                    .extracting(Obstacle::code)
                    .doesNotContain("attendant-elsewhere");

            clock.moveTo(BenchScene.START.plusSeconds(180));
            application
                    .getBean(org.standclear.run.RunLog.class)
                    .start(scene().booking, release.code(), scene().noor.id());
            clock.moveTo(Instant.parse("2026-03-11T10:38:00Z"));
            assertThat(here.desk.look(next.id()).obstacles()).anySatisfy(obstacle -> {
                assertThat(obstacle.code()).isEqualTo("attendant-elsewhere");
                assertThat(obstacle.says()).startsWith("Mateo Ironbark is at the e-stop of Avocet");
            });
        }

        @Test
        void signsWhatTheRecordSaysOfTheCellAndNothingBetter() {
            scene().attached();
            states.hold(scene().cell, scene().mateo.id(), "odd noise");
            Signed.Kept kept = is(Signed.Kept.class, scene().answerAndSign(Part.OPERATOR, scene().noor));
            assertThat(kept.signature().statement())
                    .contains("Last user closed out, nothing tagged? The record says: Avocet")
                    .contains("is held: odd noise.")
                    .doesNotContain("says: last user closed out");
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
        }

        @Test
        void refusesAReleaserWhoAttendsAnotherStop() {
            scene().awaitsReleaser();
            BenchScene here = new BenchScene(application);
            clock.moveTo(MovableClock.START);
            var other = here.lab.booked(here.cell, "2026-03-11T10:37:00Z", here.noor, scene().adaeze);
            clock.moveTo(Instant.parse("2026-03-11T10:38:00Z"));
            BenchScene second = here.at(other.id(), here.noor, scene().adaeze);
            second.awaitsReleaser();
            second.releasedBy(here.hemi);
            assertThat(scene().desk.mayRelease(scene().booking))
                    .contains(scene().hemi.id())
                    .doesNotContain(scene().adaeze.id());
        }

        @Test
        void freesPeopleOfAReleaseThatRanOutUnseen() {
            Release unseen = scene().released();
            BenchScene here = new BenchScene(application);
            clock.moveTo(MovableClock.START);
            Person yuki = here.lab.student("Yuki Halfmoon");
            var next = here.lab.booked(here.cell, "2026-03-11T10:37:00Z", yuki, scene().mateo);
            clock.moveTo(Instant.parse("2026-03-11T10:38:00Z"));
            BenchScene second = here.at(next.id(), yuki, scene().mateo);
            second.released();
            assertThat(second.state()).isEqualTo(BookingState.RELEASED);

            scene().desk.look(scene().booking);
            assertThat(releases.of(scene().booking)).singleElement().satisfies(release -> {
                assertThat(release.id()).isEqualTo(unseen.id());
                assertThat(release.lapsed()).isNotNull();
            });
        }

        @Test
        void releasesOnlyOnceForTwoTechniciansOneAfterTheOther() {
            scene().awaitsReleaser();
            scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
            scene().answer(Part.RELEASER, scene().hemi, scene().hemi);
            Sheet sheet = scene().sheet();
            SignoffDesk.Step.Sign late = is(
                    SignoffDesk.Step.Sign.class,
                    scene().desk.step(sheet, Part.RELEASER, scene().hemi.id()));
            is(Signed.Released.class, scene().sign(Part.RELEASER, scene().adaeze));

            Signed second = scene().desk
                    .sign(new SignoffDesk.SignPart(
                            sheet.id(),
                            Part.RELEASER,
                            scene().hemi.id(),
                            scene().hemi.id(),
                            null,
                            late.statement().sha256()));
            assertThat(second).isInstanceOf(Signed.MovedOn.class);
            assertThat(releases.of(scene().booking)).hasSize(1);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
