package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Period;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReviews;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.OwnRecords;
import org.standclear.retention.LegalHold.Target;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog.Witness;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What people wrote about stops, tags, reviews and their own record: the words go at their end, what happened stays. */
class DisposedWordsIT {

    private static final String GONE = "Taken out at the end of its time.";

    abstract static class Cases extends RetentionCases {

        @Autowired
        OwnRecords ownRecords;

        private UUID stoppedAndReset() {
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            var technician = scene().adaeze.id();
            log.reset(
                    scene().booking,
                    ResetCause.PERSON,
                    "Hemi reached for the nut",
                    new Witness(technician, technician, null));
            return jdbc.sql("select id from run_events where booking_id = :booking and kind = 'RESET'")
                    .param("booking", scene().booking.value())
                    .query(UUID.class)
                    .single();
        }

        private RunEvent event(UUID id) {
            return runs.events(scene().booking).stream()
                    .filter(one -> one.id().equals(id))
                    .findFirst()
                    .orElseThrow();
        }

        @Test
        void takesWhatWasTypedOutOfTheRunLogAndKeepsTheCause() {
            running();
            UUID reset = stoppedAndReset();
            assertThat(event(reset).words()).contains("Hemi");
            refused("update run_events set words = 'other' where id = :id", reset);
            refused("update run_events set words = 'x', words_out_at = current_timestamp where id = :id", reset);
            refused("delete from run_events where id = :id", reset);
            writtenDownInAnotherTransaction("RUN_WORDS", reset);
            refused("update run_events set words = 'x', words_out_at = current_timestamp where id = :id", reset);
            settledOtherwise(reset);
            int events = runs.events(scene().booking).size();
            disposedAfter(RecordKind.RUN_WORDS, reset);
            assertThat(event(reset).words()).isEqualTo(GONE);
            assertThat(event(reset).answer()).isEqualTo(ResetCause.PERSON.code());
            assertThat(event(reset).account()).isEqualTo(scene().adaeze.id());
            assertThat(runs.events(scene().booking)).hasSize(events);
            refused("update run_events set words = 'x', words_out_at = current_timestamp where id = :id", reset);
        }

        @Test
        void keepsTheWordsOfARunThatIsHeldOrInAnOpenIncident() {
            Run run = running();
            UUID reset = stoppedAndReset();
            keepOnly(RecordKind.RUN_WORDS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.RUN_WORDS, reset)).isTrue();
            UUID hold = hold(new Target.One(About.RUN, run.id().value()));
            assertThat(isDue(RecordKind.RUN_WORDS, reset)).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            jdbc.sql("update incidents set run_id = :run where id = :id")
                    .param("run", run.id().value())
                    .param("id", incident.value())
                    .update();
            assertThat(isDue(RecordKind.RUN_WORDS, reset)).isFalse();
            closeNow(incident);
            assertThat(isDue(RecordKind.RUN_WORDS, reset)).isTrue();
        }

        @Test
        void keepsTheWordsThatAnIncidentHasFrozen() {
            running();
            UUID reset = stoppedAndReset();
            IncidentId incident = reported(IncidentClass.CONTACT);
            closeNow(incident);
            keepOnly(RecordKind.RUN_WORDS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.RUN_WORDS, reset)).isFalse();
            assertThat(dueOf(RecordKind.RUN_WORDS).keptBack()).containsKey("frozen as evidence of an incident");
            assertThat(evidence.of(incident).orElseThrow().pieces())
                    .allSatisfy(piece -> assertThat(piece.holds()).isTrue());
        }

        @Test
        void takesTheReasonsOutOfATagThatCameOff() {
            var cell = scene().cell;
            states.restrict(cell, scene().adaeze.id(), "Hemi bent the bracket");
            UUID tag = states.tags(cell).get(0).id();
            keepOnly(RecordKind.TAG_REASONS, new KeepingTime(Period.ofDays(30), false));
            clock.moveBy(aDay().multipliedBy(60));
            assertThat(isDue(RecordKind.TAG_REASONS, tag)).as("it still hangs").isFalse();
            refused("update cell_tags set reason = 'other', words_out_at = current_timestamp where id = :id", tag);
            states.unrestrict(cell, scene().adaeze.id(), "Hemi straightened it");
            refused("update cell_tags set reason = 'other' where id = :id", tag);
            refused("update cell_tags set lift_reason = 'other' where id = :id", tag);
            writtenDownInAnotherTransaction("TAG_REASONS", tag);
            refused("update cell_tags set reason = 'other', words_out_at = current_timestamp where id = :id", tag);
            settledOtherwise(tag);
            disposedAfter(RecordKind.TAG_REASONS, tag);
            assertThat(states.tags(cell).get(0)).satisfies(left -> {
                assertThat(left.reason()).isEqualTo(GONE);
                assertThat(Objects.requireNonNull(left.lifted()).reason()).isEqualTo(GONE);
                assertThat(left.placedBy()).isEqualTo(scene().adaeze.id());
            });
        }

        /** A review to its end, as far as these words go. */
        private IncidentId reviewedAndClosed() {
            running();
            IncidentId id = reported(IncidentClass.CONTACT);
            reviewed(id, ControlLevel.ENGINEERING);
            done(reviews.riskReviewed(id, today(), "Hemi shall stand further back", null, ines.id()));
            done(reviews.approveRestart(id, "Hemi has seen the cover", ines.id()));
            jdbc.sql("""
                    update incident_actions set done_by = owner, done_at = :at, done_words = 'done', check_due_on = :on,
                        checked_by = :checker, checked_at = :at, effective = true, check_words = 'it helps'
                    where incident_id = :id""")
                    .param("at", SqlTime.toSql(clock.instant()))
                    .param("on", today())
                    .param("checker", rosalind.id().value())
                    .param("id", id.value())
                    .update();
            done(reviews.close(id, new IncidentReviews.Closing("Hemi will wait for the arm", ""), ines.id()));
            return id;
        }

        private static final Map<RecordKind, String> STEPS = Map.of(
                RecordKind.CLOSINGS, "CLOSED",
                RecordKind.RESTARTS, "RESTART_APPROVED",
                RecordKind.RISK_REVIEWS, "RISK_ASSESSMENT");

        private static final Map<RecordKind, String> ROWS = Map.of(
                RecordKind.CLOSINGS, "select words from incident_steps where incident_id = :id and kind = 'CLOSED'",
                RecordKind.RESTARTS, "select words from incident_restarts where incident_id = :id",
                RecordKind.RISK_REVIEWS, "select outcome from incident_risk_reviews where incident_id = :id");

        @ParameterizedTest
        @EnumSource(names = {"CLOSINGS", "RESTARTS", "RISK_REVIEWS"})
        void takesTheWordsOfAReviewOutKindByKind(RecordKind kind) {
            IncidentId id = reviewedAndClosed();
            writtenDownInAnotherTransaction(kind.name(), id.value());
            refused(
                    "update incident_steps set words = 'x' where incident_id = :id and kind = '" + STEPS.get(kind)
                            + "'",
                    id.value());
            refused("update incident_restarts set words = 'x' where incident_id = :id", id.value());
            refused("update incident_risk_reviews set outcome = 'x' where incident_id = :id", id.value());
            refused("delete from incident_restarts where incident_id = :id", id.value());
            settledOtherwise(id.value());
            disposedAfter(kind, id.value());

            ROWS.forEach((one, sql) -> {
                List<String> words = text(sql, id);
                assertThat(words).hasSize(1);
                assertThat(words.get(0).equals(GONE)).as("%s of %s", one, kind).isEqualTo(one == kind);
            });
            STEPS.forEach((one, step) -> assertThat(text(
                            "select words from incident_steps where incident_id = :id and kind = '" + step + "'", id))
                    .as("step of %s", one)
                    .allMatch(words -> words.contains("Hemi") != (one == kind)));
            assertThat(incidents.restart(id)).isPresent();
            assertThat(evidence.of(id).orElseThrow().listHolds()).isTrue();
        }

        @Test
        void deletesAQuestionThatWasAnsweredAndNoOther() {
            running();
            var noor = scene().noor.id();
            String line = ownRecords.of(noor).stream()
                    .flatMap(section -> section.lines().stream())
                    .findFirst()
                    .orElseThrow();
            ownRecords.ask(noor, line, "Was that me?");
            UUID question = ownRecords.questionsOf(noor).get(0).id();
            keepOnly(RecordKind.QUESTIONS, new KeepingTime(Period.ofDays(30), false));
            clock.moveBy(aDay().multipliedBy(60));
            assertThat(isDue(RecordKind.QUESTIONS, question))
                    .as("not answered yet")
                    .isFalse();
            clock.moveBy(Duration.ofMinutes(1));
            ownRecords.answer(question, "Hemi says so.", ines.id());
            disposedAfter(RecordKind.QUESTIONS, question);
            assertThat(ownRecords.questionsOf(noor)).isEmpty();
        }

        /** So that the line planted for the test does not stand in the way of the real one. */
        private void settledOtherwise(UUID record) {
            jdbc.sql("update retention_items set state = 'GONE' where record_id = :id")
                    .param("id", record)
                    .update();
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
