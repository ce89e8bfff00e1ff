package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.MedicalNotes;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.HoldMarks;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.LegalHold.Target;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Whoever is named in what is held, or in what is still told of an incident, keeps name and records. */
class NamedPeopleIT {

    abstract static class Cases extends RetentionCases {

        @Autowired
        HoldMarks marks;

        @Test
        void keepsTheNamesOfARunThatAnotherLabHolds() {
            var run = running();
            closeAccount(scene().mateo);
            keepOnly(RecordKind.ACCOUNTS, KeepingTime.years(1));
            longAfter();
            UUID mateo = scene().mateo.id().value();
            UUID otherLab = nextDoor();
            LabId other = new LabId(otherLab);
            UUID hold = LabScope.in(
                    other, () -> hold(new Target.One(About.RUN, run.id().value())));
            assertThat(isDue(RecordKind.ACCOUNTS, mateo)).isFalse();
            assertThat(dueOf(RecordKind.ACCOUNTS).keptBack())
                    .containsKey("another lab keeps it")
                    .doesNotContainKey("legal hold");
            assertThat(holds.standingOn(About.RUN, run.id().value())).isEmpty();
            assertThat(holds.find(hold)).isEmpty();
            assertThat(LabScope.in(
                            other, () -> holds.standingOn(About.RUN, run.id().value())))
                    .hasSize(1);
            assertThat(LabScope.in(other, () -> holds.lift(hold, "done", marit.id())))
                    .isEmpty();
            assertThat(isDue(RecordKind.ACCOUNTS, mateo)).isTrue();
        }

        private UUID nextDoor() {
            UUID otherLab = UUID.randomUUID();
            jdbc.sql("""
                    insert into labs (id, college, room, name, zone, emergency_number, first_aider, stop_map)
                    select :id, college, room, :name, zone, emergency_number, first_aider, stop_map from labs
                    order by id fetch first row only""")
                    .param("id", otherLab)
                    .param("name", "Next door " + otherLab)
                    .update();
            return otherLab;
        }

        @Test
        void aHoldOnAPersonShowsInItsOwnLabOnly() {
            UUID otherLab = nextDoor();
            UUID hold = LabScope.in(
                    new LabId(otherLab),
                    () -> hold(new Target.One(About.PERSON, scene().noor.id().value())));
            assertThat(marks.on("PERSON", scene().noor.id())).isEmpty();
            assertThat(LabScope.in(
                            new LabId(otherLab),
                            () -> marks.on("PERSON", scene().noor.id())))
                    .hasSize(1);
            LabScope.in(new LabId(otherLab), () -> holds.lift(hold, "done", marit.id()));
        }

        @Test
        void theDatabaseLetsNothingOfAHoldChangeButThatItIsLifted() {
            UUID hold = hold(new Target.One(About.PERSON, scene().noor.id().value()));
            UUID otherLab = nextDoor();
            for (String change : List.of(
                    "lab_id = :other",
                    "subject = :other",
                    "reason = 'another', lifted_by = :other, lifted_at = current_timestamp, lift_reason = 'x'",
                    "placed_at = current_timestamp")) {
                assertThatThrownBy(() -> changed(hold, change, otherLab))
                        .as(change)
                        .isInstanceOf(DataAccessException.class)
                        .hasMessageContaining("lifted once");
            }
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            assertThatThrownBy(() -> changed(hold, "lift_reason = cast(:other as varchar(36))", otherLab))
                    .hasMessageContaining("lifted once");
        }

        private void changed(UUID hold, String change, UUID other) {
            var statement = jdbc.sql("update retention_holds set " + change + " where id = :id")
                    .param("id", hold);
            (change.contains(":other") ? statement.param("other", other) : statement).update();
        }

        @Test
        void keepsMessagesDutyExcusesAndLooksOfThePeopleOfAHeldRun() {
            var run = running();
            UUID noor = scene().noor.id().value();
            jdbc.sql("insert into booking_pleas (booking_id, words, sent_at) values (:id, 'the bus', :at)")
                    .param("id", scene().booking.value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            application
                    .getBean(AccessLog.class)
                    .looked(
                            ines.id(),
                            Sight.ACCOUNT,
                            noor.toString(),
                            List.of(scene().noor.id()));
            UUID adaeze = scene().adaeze.id().value();
            Map<RecordKind, UUID> records = Map.of(
                    RecordKind.MESSAGES, told(scene().noor, "a note"),
                    RecordKind.EXCUSES, scene().booking.value(),
                    RecordKind.LOOKS, one("select id from platform_looks where whose = cast(:id as varchar(36))", noor),
                    RecordKind.DUTY_PERIODS, one("select id from duty_periods where person_id = :id", adaeze));
            assertThat(count("run_people", "person_id", adaeze)).isPositive();
            records.forEach((kind, id) -> {
                keepOnly(kind, KeepingTime.years(1));
                longAfter();
                assertThat(isDue(kind, id)).as("%s", kind).isTrue();
                UUID hold = hold(new Target.One(About.RUN, run.id().value()));
                assertThat(isDue(kind, id)).as("%s held", kind).isFalse();
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            });
        }

        private UUID one(String sql, UUID person) {
            return jdbc.sql(sql + " order by id fetch first row only")
                    .param("id", person)
                    .query(UUID.class)
                    .single();
        }

        @Test
        void isNotLiftedByWhomItIsAboutOrWhoHadAPart() {
            var run = running();
            IncidentId incident = closedIncident();
            jdbc.sql("""
                    insert into incident_people (incident_id, person_id, part, added_at)
                    values (:incident, :person, 'saw it', :at)""")
                    .param("incident", incident.value())
                    .param("person", rosalind.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            UUID onNoor = hold(new Target.One(About.PERSON, scene().noor.id().value()));
            UUID onRun = hold(new Target.One(About.RUN, run.id().value()));
            UUID onIncident = hold(new Target.One(About.INCIDENT, incident.value()));
            for (UUID hold : List.of(onNoor, onRun, onIncident)) {
                assertThat(holds.lift(hold, "mine", scene().noor.id()))
                        .hasValueSatisfying(why -> assertThat(why).contains("about you"));
            }
            assertThat(holds.lift(onIncident, "named", rosalind.id())).isPresent();
            assertThat(holds.lift(onRun, "named", rosalind.id())).isPresent();
            assertThat(holds.lift(onIncident, "reported", scene().hemi.id())).isPresent();
            for (UUID hold : List.of(onNoor, onRun, onIncident)) {
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            }
        }

        @Test
        void keepsNamesWhileAnIncidentHasItsStory() {
            running();
            IncidentId incident = closedIncident();
            closeAccount(scene().hemi);
            UUID hemi = scene().hemi.id().value();
            keepOnly(RecordKind.ACCOUNTS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.ACCOUNTS, hemi)).isFalse();
            assertThat(dueOf(RecordKind.ACCOUNTS).keptBack().keySet()).anyMatch(why -> why.contains("story"));
            jdbc.sql("update incidents set story_out_at = :at where id = :id")
                    .param("at", SqlTime.toSql(clock.instant()))
                    .param("id", incident.value())
                    .update();
            assertThat(isDue(RecordKind.ACCOUNTS, hemi)).isTrue();
        }

        @Test
        void keepsNamesWhileAMedicalNoteIsKeptAfterTheStoryWent() {
            running();
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            application.getBean(MedicalNotes.class).write(incident, "a graze", ines.id());
            closeAccount(scene().noor);
            jdbc.sql("update incidents set state = 'CLOSED', closed_at = :at, story_out_at = :at where id = :id")
                    .param("at", SqlTime.toSql(clock.instant()))
                    .param("id", incident.value())
                    .update();
            keepOnly(RecordKind.ACCOUNTS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.ACCOUNTS, scene().noor.id().value())).isFalse();
        }

        @Test
        void keepsMessagesAndDutyOfWhoIsInAnOpenIncident() {
            running();
            UUID message = told(scene().noor, "a note");
            UUID duty = one(
                    "select id from duty_periods where person_id = :id",
                    scene().adaeze.id().value());
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            for (var one : Map.of(RecordKind.MESSAGES, message, RecordKind.DUTY_PERIODS, duty)
                    .entrySet()) {
                keepOnly(one.getKey(), KeepingTime.years(1));
                longAfter();
                jdbc.sql("update incidents set state = 'OPEN', closed_at = null where id = :id")
                        .param("id", incident.value())
                        .update();
                assertThat(isDue(one.getKey(), one.getValue())).isFalse();
                jdbc.sql("update incidents set state = 'CLOSED', closed_at = :at where id = :id")
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", incident.value())
                        .update();
                assertThat(isDue(one.getKey(), one.getValue())).isTrue();
            }
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
