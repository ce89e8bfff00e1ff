package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.dao.DataAccessException;
import org.standclear.incident.IncidentReports.Filling;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who had a part in an incident says it in their own words; its form is filled in by others, and keeps what it said before. */
class TellingIT {

    private static final Incident.Form MILDER =
            new Incident.Form("The bit touched the plate.", "Nothing.", Severity.NONE, Severity.FIRST_AID, Set.of());

    abstract static class Cases extends IncidentCases {

        @Test
        void refusesTheFormOfWhoeverHadAPartInIt() {
            running();
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);

            for (var involved : new org.standclear.people.Person[] {scene().noor, scene().mateo, scene().adaeze}) {
                assertThat(refused(reports.fill(id, IncidentClass.PROTECTIVE_STOP, FORM, involved.id())))
                        .contains("add a statement");
                done(reports.state(id, "I saw the arm stop, says " + involved.printedName(), involved.id()));
            }

            assertThat(now(id).form()).isNull();
            assertThat(now(id).formIsDue()).as("a statement is no form").isTrue();
            assertThat(incidents.statements(id))
                    .extracting(Statement::by)
                    .containsExactly(
                            scene().noor.id(),
                            scene().mateo.id(),
                            scene().adaeze.id());
            assertRecorded(id, "incident.stated");
        }

        @Test
        void keepsTheFullReportOfWhoeverHadAPartInItAsTheirStatement() {
            running();
            IncidentId id = kept(reports.report(new Report(
                            scene().cell,
                            IncidentClass.PROPERTY_DAMAGE,
                            "The bit met the plate",
                            null,
                            new Teller.Named(scene().noor.id(), ReporterPart.SAW_IT),
                            null,
                            FORM)))
                    .incident();

            assertThat(now(id).form()).isNull();
            assertThat(now(id).formIsDue()).isTrue();
            assertThat(incidents.statements(id))
                    .singleElement()
                    .satisfies(one -> assertThat(one.words())
                            .startsWith(FORM.story())
                            .contains(
                                    FORM.doneAtOnce(),
                                    FORM.actual().words(),
                                    FORM.foreseeable().words()));
        }

        @Test
        void keepsEveryStateOfTheForm() {
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            done(reports.fill(
                    id, IncidentClass.PROTECTIVE_STOP, FORM, scene().hemi.id()));
            done(reports.fill(
                    id, IncidentClass.PROTECTIVE_STOP, MILDER, scene().noor.id()));
            done(reviews.take(id, ines.id()));
            done(reviews.classify(
                    id,
                    new IncidentReviews.Classification(
                            IncidentClass.NEAR_MISS, Severity.NONE, Severity.NONE, "No stop was found in the log"),
                    ines.id()));

            assertThat(incidents.forms(id)).extracting(FilledForm::number).containsExactly(1, 2, 3);
            assertThat(incidents.forms(id))
                    .extracting(FilledForm::by)
                    .containsExactly(scene().hemi.id(), scene().noor.id(), ines.id());
            assertThat(incidents.forms(id).get(0).form()).isEqualTo(FORM);
            assertThat(incidents.forms(id).get(1).form()).isEqualTo(MILDER);
            assertThat(incidents.forms(id).get(2).kind()).isEqualTo(IncidentClass.NEAR_MISS);
        }

        @Test
        void refusesTheFormOfWhoeverDidNotSeeTheLastState() {
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            done(reports.fill(
                    id,
                    new Filling(IncidentClass.PROTECTIVE_STOP, FORM, 0),
                    scene().hemi.id()));

            assertThat(reports.fill(id, new Filling(IncidentClass.PROTECTIVE_STOP, MILDER, 0), ines.id()))
                    .isEqualTo(new IncidentOutcome.Stale(now(id)));
            assertThat(now(id).form()).isEqualTo(FORM);
            done(reports.fill(id, new Filling(IncidentClass.PROTECTIVE_STOP, MILDER, 1), ines.id()));
        }

        @Test
        void refusesAStatementToAClosedIncident() {
            IncidentId id = reported(IncidentClass.PRECAUTIONARY_STOP);

            assertThat(refused(reports.state(id, "Too late", scene().noor.id())))
                    .contains("closed");
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "update incidents set sentence = 'Nothing happened' where id = ?",
                    "update incidents set happened_at = current_timestamp where id = ?",
                    "update incidents set reporter = null where id = ?",
                    "update incident_forms set story = 'Nothing happened' where incident_id = ?",
                    "delete from incident_statements where incident_id = ?",
                })
        void refusesOtherWordsInTheDatabaseToo(String change) {
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            done(reports.fill(
                    id, IncidentClass.PROTECTIVE_STOP, FORM, scene().hemi.id()));
            done(reports.state(id, "I saw it", scene().noor.id()));

            assertThatThrownBy(() -> jdbc.sql(change).param(id.value()).update())
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("never changed");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
