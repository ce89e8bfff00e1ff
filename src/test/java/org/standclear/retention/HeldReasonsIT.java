package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Period;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.IncidentClass;
import org.standclear.people.Person;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.LegalHold.Target;
import org.standclear.run.Run;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.PaperCards.PaperCard;
import org.standclear.signoff.Release;
import org.standclear.signoff.Waiver;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A legal hold on somebody, or on an incident, keeps the words about a list, a release or a booking that they are part of. */
class HeldReasonsIT {

    abstract static class Cases extends RetentionCases {

        private static final KeepingTime TEN_DAYS = new KeepingTime(Period.ofDays(10), false);

        @Autowired
        PaperCards cards;

        /** The three of a release that was never used: there is no run that could name them. */
        @Test
        void keepsTheRemarkAboutTheListAndTheReleaseOfSomebodyOnHold() {
            Release release = scene().released();
            UUID sheet = jdbc.sql("select sheet_id from signoff_releases where id = :id")
                    .param("id", release.id().value())
                    .query(UUID.class)
                    .single();
            UUID ofSheet = read("same-answers", sheet);
            UUID ofRelease = read("signed-fast", release.id().value());
            UUID ofBooking = read("waived", scene().booking.value());
            UUID ofNothingOfTheirs = read("waived", UUID.randomUUID());
            keepOnly(RecordKind.EXCEPTION_REMARKS, TEN_DAYS);
            longAfter();
            List<UUID> theirs = List.of(ofSheet, ofRelease, ofBooking);
            assertThat(theirs).allMatch(this::isRemarkDue);

            for (Person person : List.of(scene().noor, scene().mateo, scene().adaeze)) {
                UUID hold = hold(new Target.One(About.PERSON, person.id().value()));
                assertThat(theirs).as(person.printedName()).noneMatch(this::isRemarkDue);
                assertThat(isRemarkDue(ofNothingOfTheirs)).isTrue();
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            }
            UUID hold = hold(new Target.One(About.PERSON, scene().hemi.id().value()));
            assertThat(theirs).as("he had no part in it").allMatch(this::isRemarkDue);
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
        }

        @Test
        void keepsTheRemarkAboutAWaiverOfWhoGaveIt() {
            waived();
            UUID ofBooking = read("waived", scene().booking.value());
            keepOnly(RecordKind.EXCEPTION_REMARKS, TEN_DAYS);
            longAfter();
            assertThat(isRemarkDue(ofBooking)).isTrue();
            for (Person person : List.of(ines, scene().mateo)) {
                UUID hold = hold(new Target.One(About.PERSON, person.id().value()));
                assertThat(isRemarkDue(ofBooking)).as(person.printedName()).isFalse();
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            }
        }

        @Test
        void keepsTheReasonOfAWaiverForAnIncidentBeforeAnyRun() {
            UUID waiver = waived().id();
            IncidentId incident = beforeAnyRun();
            keepOnly(RecordKind.WAIVERS, TEN_DAYS);
            longAfter();
            assertThat(isDue(RecordKind.WAIVERS, waiver)).isTrue();
            UUID hold = hold(new Target.One(About.INCIDENT, incident.value()));
            assertThat(isDue(RecordKind.WAIVERS, waiver)).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            assertThat(isDue(RecordKind.WAIVERS, waiver)).isTrue();
        }

        @Test
        void keepsTheRemarkOfACardForAnIncidentBeforeAnyRunAndForWhoReleased() {
            scene().released();
            PaperCard card = card(scene().hemi);
            IncidentId incident = beforeAnyRun();
            keepOnly(RecordKind.PAPER_REMARKS, TEN_DAYS);
            longAfter();
            assertThat(isDue(RecordKind.PAPER_REMARKS, card.id())).isTrue();
            for (Target.One target : List.of(
                    new Target.One(About.INCIDENT, incident.value()),
                    new Target.One(About.PERSON, scene().adaeze.id().value()))) {
                UUID hold = hold(target);
                assertThat(isDue(RecordKind.PAPER_REMARKS, card.id()))
                        .as("%s", target)
                        .isFalse();
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            }
        }

        /** One reported of the run itself is the run's, though nobody wrote the booking beside it. */
        @Test
        void keepsTheRemarkOfACardForAnIncidentOfItsRun() {
            Run run = running();
            PaperCard card = card(scene().adaeze);
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            closeNow(incident);
            jdbc.sql("update incidents set booking_id = null, run_id = :run where id = :id")
                    .param("run", run.id().value())
                    .param("id", incident.value())
                    .update();
            keepOnly(RecordKind.PAPER_REMARKS, TEN_DAYS);
            longAfter();
            assertThat(isDue(RecordKind.PAPER_REMARKS, card.id())).isTrue();
            UUID hold = hold(new Target.One(About.INCIDENT, incident.value()));
            assertThat(isDue(RecordKind.PAPER_REMARKS, card.id())).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
        }

        private boolean isRemarkDue(UUID id) {
            return isDue(RecordKind.EXCEPTION_REMARKS, id);
        }

        /** Reported of the booking, while nothing ran. */
        private IncidentId beforeAnyRun() {
            IncidentId incident = reported(IncidentClass.OBSERVATION);
            closeNow(incident);
            jdbc.sql("update incidents set booking_id = :booking, run_id = null where id = :id")
                    .param("booking", scene().booking.value())
                    .param("id", incident.value())
                    .update();
            return incident;
        }

        private Waiver waived() {
            attachWithoutItsPart();
            return waived("Hemi weighed the peg at the bench.", ines.id());
        }

        private PaperCard card(Person releaser) {
            PaperCard card = new PaperCard(
                    Id.newValue(),
                    scene().cell,
                    scene().booking,
                    clock.instant().minusSeconds(60),
                    scene().noor.id(),
                    scene().mateo.id(),
                    releaser.id(),
                    "Peg and plate, revision 1",
                    "a41e",
                    "reduced",
                    50,
                    "level 3",
                    "G-02",
                    "5",
                    "Hemi dropped a nut",
                    scene().hemi.id(),
                    clock.instant());
            is(PaperCards.Typed.Kept.class, cards.type(card));
            return card;
        }

        /** A signed line, as signing writes it. */
        private UUID read(String rule, UUID subject) {
            UUID id = UUID.randomUUID();
            jdbc.sql("""
                    insert into report_exception_readings (id, lab_id, week, rule, subject, words, remark, statement_sha256,
                        signed_by, printed_name, signed_at)
                    values (:id, :lab, :week, :rule, :subject, 'a line', 'Talk to both.', 'none', :by, 'Ines Quarryvale', :at)""")
                    .param("id", id)
                    .param("lab", everyLab.theLab().id().value())
                    .param("week", today())
                    .param("rule", rule)
                    .param("subject", subject.toString())
                    .param("by", rosalind.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            return id;
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
