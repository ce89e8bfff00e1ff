package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.standclear.check.ProgramChecks;
import org.standclear.incident.IncidentClass;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.program.ProgramUploads;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.program.RevisionChanges;
import org.standclear.retention.LegalHold.Target;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** Texts of programs: a note in their place, the fingerprint stays, and nothing is checked against a note. */
class DisposedTextsIT {

    abstract static class Cases extends RetentionCases {

        @Autowired
        MockMvc mvc;

        @Autowired
        Programs programs;

        @Autowired
        ProgramUploads uploads;

        @Autowired
        ProgramChecks checks;

        private Revision booked() {
            UUID id = jdbc.sql("select revision_id from bookings where id = :id")
                    .param("id", scene().booking.value())
                    .query(UUID.class)
                    .single();
            return programs.find(new RevisionId(id)).orElseThrow();
        }

        private UUID content(Revision revision) {
            return jdbc.sql("select content_id from program_revisions where id = :id")
                    .param("id", revision.id().value())
                    .query(UUID.class)
                    .single();
        }

        private void disposed(Revision revision) {
            keepOnly(RecordKind.PROGRAMS, KeepingTime.years(3));
            longAfter();
            assertThat(isDue(RecordKind.PROGRAMS, content(revision))).isTrue();
            carriedOut(approved());
        }

        @Test
        void putsANoteInThePlaceOfTheTextAndKeepsItsFingerprint() {
            running();
            Revision revision = booked();
            disposed(revision);
            assertThat(new String(programs.bytes(revision.id()), StandardCharsets.UTF_8))
                    .startsWith("# The text was taken out");
            assertThat(programs.find(revision.id())).contains(revision);
            assertThat(checks.check(
                            revision.id(), scene().cell, null, scene().noor.id()))
                    .isInstanceOfSatisfying(
                            ProgramChecks.Outcome.Unreadable.class,
                            unreadable -> assertThat(unreadable.toString()).contains("Upload it again"));
        }

        @Test
        void takesTheSameFileAgainAsANewRevision() {
            running();
            Revision revision = booked();
            byte[] bytes = programs.bytes(revision.id());
            disposed(revision);
            UploadProgram again = new UploadProgram(
                    revision.author(), revision.program(), null, "again.yaml", bytes, revision.declaration());
            Uploaded uploaded = is(Uploaded.class, uploads.upload(again));
            assertThat(uploaded.unchanged()).isFalse();
            assertThat(programs.bytes(uploaded.revision().id())).isEqualTo(bytes);
            assertThat(is(Uploaded.class, uploads.upload(again)).unchanged()).isTrue();
        }

        @Test
        void keepsATextWithABookingOfTheLastYear() {
            running();
            UUID content = content(booked());
            keepOnly(RecordKind.PROGRAMS, new KeepingTime(java.time.Period.ofDays(30), false));
            clock.moveBy(aDay().multipliedBy(365));
            assertThat(isDue(RecordKind.PROGRAMS, content)).isFalse();
            clock.moveBy(aDay().multipliedBy(2));
            assertThat(isDue(RecordKind.PROGRAMS, content)).isTrue();
        }

        @Test
        void keepsATextThatAnIncidentHasFrozenOrWhoseRunIsHeld() {
            var run = running();
            UUID content = content(booked());
            keepOnly(RecordKind.PROGRAMS, KeepingTime.years(3));
            longAfter();
            UUID hold = hold(new Target.One(About.RUN, run.id().value()));
            assertThat(isDue(RecordKind.PROGRAMS, content)).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            assertThat(isDue(RecordKind.PROGRAMS, content)).isTrue();
        }

        @Test
        void keepsFrozenEvidence() {
            running();
            IncidentId incident = reported(IncidentClass.CONTACT);
            assertThat(evidence.of(incident)).isPresent();
            keepOnly(RecordKind.PROGRAMS, KeepingTime.years(3));
            longAfter();
            assertThat(isDue(RecordKind.PROGRAMS, content(booked()))).isFalse();
            assertThat(dueOf(RecordKind.PROGRAMS).keptBack().keySet())
                    .anyMatch(why -> why.contains("frozen as evidence of an incident"));
        }

        @Test
        void keepsATextThatRanInAnIncidentUntilThatIsClosed() {
            running();
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            assertThat(evidence.of(incident)).isEmpty();
            UUID content = content(booked());
            keepOnly(RecordKind.PROGRAMS, KeepingTime.years(3));
            longAfter();
            assertThat(isDue(RecordKind.PROGRAMS, content)).isFalse();
            assertThat(dueOf(RecordKind.PROGRAMS).keptBack()).containsKey("it ran in an incident that is not closed");
            closeNow(incident);
            assertThat(isDue(RecordKind.PROGRAMS, content)).isTrue();
        }

        /** A booking may name another revision by now than the one that was signed off and ran. */
        @Test
        void keepsATextThatWasSignedOffAndRanThoughTheBookingNamesAnother() {
            running();
            Revision ran = booked();
            UploadProgram other = new UploadProgram(
                    ran.author(),
                    ran.program(),
                    null,
                    "other.yaml",
                    (new String(programs.bytes(ran.id()), StandardCharsets.UTF_8) + "\n# another\n")
                            .getBytes(StandardCharsets.UTF_8),
                    ran.declaration());
            Revision another = is(Uploaded.class, uploads.upload(other)).revision();
            jdbc.sql("update bookings set revision_id = :other where id = :id")
                    .param("other", another.id().value())
                    .param("id", scene().booking.value())
                    .update();
            keepOnly(RecordKind.PROGRAMS, new KeepingTime(java.time.Period.ofDays(30), false));
            clock.moveBy(aDay().multipliedBy(200));
            assertThat(isDue(RecordKind.PROGRAMS, content(ran))).isFalse();
            assertThat(isDue(RecordKind.PROGRAMS, content(another))).isFalse();
            longAfter();
            assertThat(isDue(RecordKind.PROGRAMS, content(ran))).isTrue();
        }

        @Test
        void saysThatATextWasTakenOutWhereItWouldBeCompared() {
            running();
            Revision first = booked();
            UploadProgram later = new UploadProgram(
                    first.author(),
                    first.program(),
                    null,
                    "later.yaml",
                    (new String(programs.bytes(first.id()), StandardCharsets.UTF_8) + "\n# later\n")
                            .getBytes(StandardCharsets.UTF_8),
                    first.declaration());
            Revision second = is(Uploaded.class, uploads.upload(later)).revision();
            RevisionChanges changes = application.getBean(RevisionChanges.class);
            assertThat(changes.since(second)).containsInstanceOf(RevisionChanges.Compared.class);
            disposed(first);
            assertThat(changes.since(second).orElseThrow())
                    .isInstanceOfSatisfying(
                            RevisionChanges.NotCompared.class,
                            none -> assertThat(none.toString()).contains("text taken out"));
        }

        @Test
        void doesNotHandTheNoteOutAsTheFile() throws Exception {
            running();
            Revision revision = booked();
            String address = "/revisions/" + revision.id() + "/file";
            assertThat(answered(address).getStatus()).isEqualTo(200);
            disposed(revision);
            MockHttpServletResponse gone = answered(address);
            assertThat(gone.getStatus()).isEqualTo(410);
            assertThat(gone.getHeader("Content-Disposition")).isNull();
            assertThat(gone.getContentAsString()).contains("was taken out on 2", revision.sha256());
        }

        private MockHttpServletResponse answered(String address) throws Exception {
            return mvc.perform(get(address).with(Accounts.as(scene().noor)))
                    .andReturn()
                    .getResponse();
        }

        @Test
        void freezesTheHashOfTheProgramAndNotOfTheNote() {
            running();
            Revision revision = booked();
            disposed(revision);
            IncidentId incident = reported(IncidentClass.CONTACT);
            assertThat(evidence.of(incident).orElseThrow().pieces())
                    .filteredOn(piece -> piece.kind().equals("program"))
                    .singleElement()
                    .satisfies(piece -> {
                        assertThat(piece.sha256()).isEqualTo(revision.sha256());
                        assertThat(piece.words()).contains("text taken out on 2");
                    });
        }

        @Test
        void refusesEveryOtherChangeOfAText() {
            running();
            UUID content = content(booked());
            for (String sql : new String[] {
                "delete from program_contents where id = :id",
                "update program_contents set sha256 = sha256 where id = :id",
                "update program_contents set taken_out_at = current_timestamp where id = :id"
            }) {
                assertThatThrownBy(() -> jdbc.sql(sql).param("id", content).update())
                        .isInstanceOf(DataAccessException.class)
                        .hasMessageContaining("written down");
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
