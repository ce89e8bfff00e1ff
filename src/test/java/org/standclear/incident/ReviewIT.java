package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.dao.DataAccessException;
import org.standclear.cell.CellState;
import org.standclear.cell.CellStates;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A review by somebody who had no part in it, its actions, and the way of a held cell back into service. */
class ReviewIT {

    abstract static class Cases extends IncidentCases {

        private static final IncidentReviews.Closing LEARNED = new IncidentReviews.Closing("Read it back.", "");

        private String toReturn() {
            return states.returnToService(scene().cell, scene().hemi.id(), "renewed")
                            instanceof CellStates.Return.Refused refused
                    ? refused.says()
                    : "";
        }

        private void tested() {
            application
                    .getBean(DayTests.class)
                    .record(scene().cell, scene().hemi.id(), SampleCell.goodReadings());
            SampleCell.readByTwo(application, scene().cell);
        }

        @Test
        void keepsTheCellHeldUntilTheRestartIsApproved() {
            IncidentId id = reported(IncidentClass.CONTACT);
            clock.moveBy(Duration.ofMinutes(5));
            tested();
            assertThat(toReturn()).contains("Incident " + now(id).number(), "restart is not approved");

            done(reviews.approveRestart(id, "Looked over, nothing bent", ines.id()));
            assertThat(toReturn()).isEmpty();

            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.IN_SERVICE);
            assertThat(now(id).state()).as("the review goes on").isEqualTo(IncidentState.OPEN);
        }

        @Test
        void letsNobodyWhoHadAPartInItPutTheCellBack() {
            IncidentId id = reported(IncidentClass.CONTACT);
            clock.moveBy(Duration.ofMinutes(5));
            tested();
            done(reviews.name(id, scene().hemi.id(), "held the part", ines.id()));
            done(reviews.approveRestart(id, "Looked over", ines.id()));

            assertThat(toReturn()).contains("You had a part in incident");
        }

        @Test
        void isReviewedOnlyByTheUninvolved() {
            running();
            IncidentId own = kept(send(IncidentClass.NEAR_MISS, new Teller.Named(ines.id(), ReporterPart.UNKNOWN)))
                    .incident();
            IncidentId seen = kept(send(IncidentClass.NEAR_MISS, new Teller.Named(ines.id(), ReporterPart.SAW_IT)))
                    .incident();

            assertThat(refused(reviews.take(own, ines.id()))).contains("You had a part in it");
            assertThat(refused(reviews.take(own, scene().hemi.id()))).contains("instructor or the safety reviewer");
            assertThat(refused(reviews.take(own, scene().noor.id()))).contains("instructor or the safety reviewer");
            done(reviews.take(own, rosalind.id()));
            done(reviews.take(seen, ines.id()));
            assertThat(refused(reviews.approveRestart(own, "words", ines.id()))).contains("You had a part");
        }

        @Test
        void asksForThreeBranchesActionsRiskAssessmentAndRestart() {
            IncidentId id = reported(IncidentClass.CONTACT);
            done(reviews.take(id, ines.id()));
            assertThat(reviews.missing(now(id), ines.id()))
                    .containsExactly(
                            "The form is not filled in.",
                            "The cause tree has causes in 0 of 4 branches; look into 3 at least.",
                            "No corrective action is agreed.",
                            "No review of the cell's risk assessment is noted.",
                            "The restart is not approved.");
            assertThat(refused(reviews.close(id, LEARNED, ines.id()))).startsWith("Not closed.");

            reviewed(id, ControlLevel.ENGINEERING);
            done(reviews.riskReviewed(id, today(), "A cover is added", 1, ines.id()));
            done(reviews.approveRestart(id, "Covered", ines.id()));
            assertThat(reviews.missing(now(id), ines.id())).containsExactly("An action is not done yet.");

            done(actions.done(
                    actions.of(id).get(0).id(), "The cover is on", scene().hemi.id()));
            done(reviews.close(id, LEARNED, ines.id()));

            assertThat(now(id).state()).isEqualTo(IncidentState.CLOSED);
            assertThat(incidents.steps(id))
                    .extracting(IncidentStep::forReporter)
                    .contains("It is closed. What was learned: Read it back.");
            assertRecorded(id, "incident.closed", "incident.risk-assessment", "incident.restart-approved");
        }

        @ParameterizedTest
        @ValueSource(strings = {"ADMINISTRATIVE", "PROTECTIVE_EQUIPMENT"})
        void doesNotCloseOnRulesOrEquipmentAlone(String level) {
            IncidentId id = reported(IncidentClass.PROPERTY_DAMAGE);
            reviewed(id, ControlLevel.valueOf(level));
            done(reviews.riskReviewed(id, today(), "Looked at", null, ines.id()));
            done(reviews.approveRestart(id, "Looked over", ines.id()));
            done(actions.done(
                    actions.of(id).get(0).id(),
                    "Told all sections",
                    scene().hemi.id()));

            assertThat(refused(reviews.close(id, LEARNED, ines.id()))).contains("the instructor writes why");
            assertThat(refused(reviews.close(
                            id, new IncidentReviews.Closing("Read it back.", "no room for a guard"), rosalind.id())))
                    .as("the instructor writes it, nobody else")
                    .contains("the instructor writes why");
            done(reviews.close(id, new IncidentReviews.Closing("Read it back.", "no room for a guard"), ines.id()));
            assertThat(incidents.steps(id))
                    .anySatisfy(step -> assertThat(step.words()).contains("no room for a guard"));
        }

        @Test
        void leavesAGraveOneToTheSafetyReviewer() {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            done(reviews.take(id, ines.id()));
            done(reviews.classify(
                    id,
                    new IncidentReviews.Classification(
                            IncidentClass.NEAR_MISS, Severity.NONE, Severity.LASTING, "The bit was at eye height"),
                    ines.id()));

            assertThat(reviews.level(now(id))).isEqualTo(ReviewLevel.FULL_REVIEW);
            assertThat(reviews.missing(now(id), ines.id()))
                    .anySatisfy(one -> assertThat(one).contains("the safety reviewer closes it"));
            assertThat(reviews.missing(now(id), rosalind.id()))
                    .noneSatisfy(one -> assertThat(one).contains("the safety reviewer closes it"));
        }

        @Test
        void holdsAndFreezesWhenTheReviewRaisesTheClass() {
            scene().released();
            IncidentId id =
                    kept(send(IncidentClass.NEAR_MISS, new Teller.Anonymous())).incident();
            done(reviews.classify(
                    id,
                    new IncidentReviews.Classification(
                            IncidentClass.CONTACT, Severity.NONE, Severity.TREATMENT, "It was a touch after all"),
                    ines.id()));

            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
            assertThat(evidence.of(id)).isPresent();
            assertThat(now(id).formIsDue()).as("the full form is asked for now").isTrue();
            assertThat(now(id).formDueAt()).isEqualTo(clock.instant().plus(Duration.ofHours(4)));
        }

        @Test
        void looksWhetherItHelpedThirtyDaysLaterAndOpensAgainWhenItDidNot() {
            IncidentId id = reported(IncidentClass.CONTACT);
            reviewed(id, ControlLevel.ENGINEERING);
            done(reviews.riskReviewed(id, today(), "Looked at", null, ines.id()));
            done(reviews.approveRestart(id, "Looked over", ines.id()));
            CorrectiveAction action = actions.of(id).get(0);
            assertThat(refused(actions.check(action.id(), true, "fine", ines.id())))
                    .contains("not done yet");
            assertThat(refused(actions.done(action.id(), "done", scene().noor.id())))
                    .contains("owns this action");
            done(actions.done(action.id(), "The cover is on", scene().hemi.id()));
            assertThat(refused(actions.done(action.id(), "again", scene().hemi.id())))
                    .contains("done already");
            done(reviews.close(id, LEARNED, ines.id()));

            clock.moveBy(Duration.ofDays(29));
            assertThat(refused(actions.check(action.id(), true, "fine", ines.id())))
                    .contains("shows with time");
            clock.moveBy(Duration.ofDays(1));
            assertThat(refused(actions.check(
                            action.id(), true, "fine", scene().hemi.id())))
                    .contains("other than the owner");
            done(actions.check(action.id(), false, "The cover is off again", ines.id()));

            assertThat(now(id).state()).isEqualTo(IncidentState.IN_REVIEW);
            assertThat(actions.unsettled(
                                    new CorrectiveActions.Whose.Of(scene().hemi.id()), null, 5)
                            .actions())
                    .isEmpty();
            assertRecorded(id, "incident.opened-again");
        }

        @Test
        void buildsTheTreeAndCrossesOutFromTheLeaves() {
            IncidentId id = reported(IncidentClass.CONTACT);
            done(reviews.addCause(
                    id, new IncidentReviews.NewCause(CauseBranch.CELL, null, "The bracket is in the way"), ines.id()));
            Cause root = incidents.causes(id).get(0);
            assertThat(refused(reviews.addCause(
                            id,
                            new IncidentReviews.NewCause(CauseBranch.PEOPLE, root.id(), "Nobody said so"),
                            ines.id())))
                    .contains("in the branch of the one");
            done(reviews.addCause(
                    id, new IncidentReviews.NewCause(CauseBranch.CELL, root.id(), "The camera moved"), ines.id()));
            Cause leaf = incidents.causes(id).get(1);

            assertThat(refused(reviews.strikeCause(id, root.id(), ines.id()))).contains("Other causes explain");
            done(reviews.strikeCause(id, leaf.id(), ines.id()));
            done(reviews.strikeCause(id, root.id(), ines.id()));
            assertThat(incidents.causes(id)).extracting(Cause::struck).containsExactly(true, true);
        }

        @Test
        void refusesVersionsThatTheCellDoesNotHaveAndDaysAhead() {
            IncidentId id = reported(IncidentClass.CONTACT);

            assertThat(refused(reviews.riskReviewed(id, today(), "words", 99, ines.id())))
                    .contains("no version 99");
            assertThat(refused(reviews.riskReviewed(id, today().plusDays(1), "words", null, ines.id())))
                    .contains("not come yet");
        }

        @Test
        void keepsWhoOpenedTheMedicalPartAndNothingOfItAnywhereElse() {
            IncidentId id = reported(IncidentClass.FIRST_AID);
            MedicalNotes medical = application.getBean(MedicalNotes.class);
            String secret = "graze on the second knuckle, cleaned";
            done(medical.write(id, secret, ines.id()));

            assertThat(medical.open(id, rosalind.id()))
                    .extracting(MedicalNotes.Note::words)
                    .containsExactly(secret);
            assertThat(medical.opened(id)).extracting(MedicalNotes.Opened::by).containsExactly(rosalind.id());
            assertThat(recordOf(id).toString()).doesNotContain("knuckle");
            assertThat(incidents.steps(id).toString()).doesNotContain("knuckle");
            assertRecorded(id, "incident.medical-opened", "incident.medical-noted");
        }

        @Test
        void changesNothingThatIsWritten() {
            scene().released();
            IncidentId id = reported(IncidentClass.CONTACT);
            application.getBean(MedicalNotes.class).write(id, "words", ines.id());
            application.getBean(MedicalNotes.class).open(id, ines.id());
            done(reviews.riskReviewed(id, today(), "words", null, ines.id()));
            done(reviews.approveRestart(id, "words", ines.id()));
            for (String table :
                    List.of("steps", "risk_reviews", "restarts", "medical_notes", "medical_views", "evidence")) {
                refusesChange(
                        "update incident_" + table + " set incident_id = incident_id where incident_id = :id", id);
                refusesChange("delete from incident_" + table + " where incident_id = :id", id);
            }
            refusesChange("delete from incidents where id = :id", id);
        }

        private void refusesChange(String sql, IncidentId id) {
            assertThatThrownBy(() -> jdbc.sql(sql).param("id", id.value()).update())
                    .as(sql)
                    .isInstanceOf(DataAccessException.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
