package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.ByteArrayResource;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentPhotos;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.MedicalNotes;
import org.standclear.incident.photos.MadeUpFiles;
import org.standclear.incident.photos.PhotoDarkroom;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Incidents at the end of their time: the words go, the rows that nothing may change let them, and the counts stay. */
class DisposedIncidentsIT {

    abstract static class Cases extends RetentionCases {

        @Test
        void takesTheStoryOutOfAnIncidentAndKeepsItsNumberAndClass() {
            IncidentId id = closedIncident();
            assertThat(count("incident_forms", "incident_id", id.value())).isPositive();
            int number = now(id).number();
            UUID step = jdbc.sql("select id from incident_steps where incident_id = :id and kind = 'REPORTED'")
                    .param("id", id.value())
                    .query(UUID.class)
                    .single();
            writtenDownInAnotherTransaction("INCIDENTS", id.value());
            refused("update incident_steps set words = 'changed' where id = :id", step);
            refused("delete from incident_steps where id = :id", step);
            disposedAfter(RecordKind.INCIDENTS, id.value());
            refused("update incident_steps set words = 'changed' where id = :id", step);
            assertThat(jdbc.sql("select words from incident_steps where id = :id and taken_by is null")
                            .param("id", step)
                            .query(String.class)
                            .single())
                    .isEqualTo("Taken out at the end of its time.");
            assertThat(now(id).number()).isEqualTo(number);
            assertThat(now(id).reporter()).isNull();
            assertThat(now(id).sentence()).isEqualTo("Taken out at the end of its time.");
            assertThat(count("incident_forms", "incident_id", id.value())).isZero();
            assertThat(count("incident_steps", "incident_id", id.value())).isPositive();
            assertRecorded(id, "incident.reported");
        }

        @Test
        void takesTheWordsOutOfCausesAndActionsAndKeepsWhatIsCounted() {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            done(reports.fill(id, IncidentClass.NEAR_MISS, FORM, scene().hemi.id()));
            IncidentReviews reviews = application.getBean(IncidentReviews.class);
            done(reviews.take(id, ines.id()));
            done(reviews.addCause(
                    id, new IncidentReviews.NewCause(CauseBranch.PEOPLE, null, "Hemi looked away"), ines.id()));
            done(reviews.agree(
                    id,
                    new IncidentReviews.NewAction(
                            "Hemi tells the next ones",
                            ControlLevel.ADMINISTRATIVE,
                            scene().adaeze.id(),
                            today()),
                    ines.id()));
            closeNow(id);
            keepOnly(RecordKind.INCIDENTS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.INCIDENTS, id.value())).isFalse();
            assertThat(dueOf(RecordKind.INCIDENTS).keptBack())
                    .containsKey("the effect of an action of it is not checked yet");
            jdbc.sql("""
                    update incident_actions set done_by = :by, done_at = :at, done_words = 'Hemi did', check_due_on = :on,
                        checked_by = :checker, checked_at = :at, effective = true, check_words = 'Hemi remembers'
                    where incident_id = :id""")
                    .param("by", scene().adaeze.id().value())
                    .param("checker", ines.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .param("on", today())
                    .param("id", id.value())
                    .update();
            disposedAfter(RecordKind.INCIDENTS, id.value());

            assertThat(text("select words from incident_causes where incident_id = :id", id))
                    .containsExactly("Taken out at the end of its time.");
            assertThat(text("select branch from incident_causes where incident_id = :id", id))
                    .containsExactly("PEOPLE");
            assertThat(text(
                            "select concat(words, '|', done_words, '|', check_words) from incident_actions "
                                    + "where incident_id = :id",
                            id))
                    .allSatisfy(words -> assertThat(words).doesNotContain("Hemi"));
            assertThat(text(
                            "select concat(control_level, ' ', effective) from incident_actions where incident_id = :id",
                            id))
                    .singleElement()
                    .asString()
                    .startsWithIgnoringCase("ADMINISTRATIVE t");
            assertThat(text("select words from incident_steps where incident_id = :id", id))
                    .isNotEmpty()
                    .noneMatch(words -> words.contains("Hemi looked") || words.contains("Hemi tells"));
        }

        @Test
        void letsAMedicalNoteGoOnlyForADisposalOfTheSameTransaction() {
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            application.getBean(MedicalNotes.class).write(incident, "a graze", ines.id());
            UUID note = guarded("incident_medical_notes", incident);
            disposedAfter(RecordKind.MEDICAL_NOTES, note);
            assertThat(count("incident_medical_notes", "id", note)).isZero();
        }

        @Test
        void keepsLooksAtMedicalNotesAsLongAsTheNotes() {
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            MedicalNotes notes = application.getBean(MedicalNotes.class);
            notes.write(incident, "a graze", ines.id());
            assertThat(notes.open(incident, ines.id())).hasSize(1);
            application
                    .getBean(AccessLog.class)
                    .looked(
                            ines.id(),
                            Sight.MEDICAL,
                            incident.toString(),
                            List.of(scene().noor.id()));
            UUID look = jdbc.sql("select id from platform_looks where sight = 'MEDICAL' and subject = :subject")
                    .param("subject", incident.toString())
                    .query(UUID.class)
                    .single();
            UUID note = guarded("incident_medical_notes", incident);
            UUID view = guarded("incident_medical_views", incident);
            keepOnly(RecordKind.LOOKS, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.LOOKS, look))
                    .as("by the other looks' rule")
                    .isFalse();
            keepOnly(RecordKind.MEDICAL_LOOKS, KeepingTime.years(1));
            assertThat(isDue(RecordKind.MEDICAL_LOOKS, look))
                    .as("before the note")
                    .isFalse();
            keepOnly(RecordKind.MEDICAL_VIEWS, KeepingTime.years(1));
            assertThat(isDue(RecordKind.MEDICAL_VIEWS, view))
                    .as("before the note")
                    .isFalse();

            disposedAfter(RecordKind.MEDICAL_NOTES, note);
            disposedAfter(RecordKind.MEDICAL_LOOKS, look);
            disposedAfter(RecordKind.MEDICAL_VIEWS, view);
            assertThat(count("platform_looks", "id", look)).isZero();
            assertThat(count("incident_medical_views", "id", view)).isZero();
        }

        /** The row's id, after trying to get at the row in every other way. */
        private UUID guarded(String table, IncidentId incident) {
            UUID id = jdbc.sql("select id from " + table + " where incident_id = :id")
                    .param("id", incident.value())
                    .query(UUID.class)
                    .single();
            closeNow(incident);
            refused("delete from " + table + " where id = :id", id);
            refused("update " + table + " set incident_id = incident_id where id = :id", id);
            writtenDownInAnotherTransaction(table.replace("incident_", "").toUpperCase(java.util.Locale.ROOT), id);
            refused("delete from " + table + " where id = :id", id);
            jdbc.sql("update retention_items set state = 'GONE' where record_id = :id")
                    .param("id", id)
                    .update();
            return id;
        }

        @Test
        void letsAPhotoGoOnlyForADisposalOfTheSameTransaction() {
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            PhotoDarkroom.Developed.Photo picture = (PhotoDarkroom.Developed.Photo) application
                    .getBean(PhotoDarkroom.class)
                    .develop(new ByteArrayResource(MadeUpFiles.picture("jpeg", 12, 8)));
            done(application.getBean(IncidentPhotos.class).add(incident, picture, "", ines.id()));
            UUID photo = guarded("incident_photos", incident);
            disposedAfter(RecordKind.PHOTOS, photo);
            assertThat(application.getBean(IncidentPhotos.class).of(incident)).isEmpty();
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
