package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Objects;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessException;
import org.standclear.incident.FrozenEvidence.Piece;
import org.standclear.incident.FrozenEvidence.Recomputed;
import org.standclear.people.Person;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.program.Programs;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.signoff.Handovers;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Evidence is frozen from class 2 up, named by hashes, and recomputed from what the lab has. */
class EvidenceIT {

    abstract static class Cases extends IncidentCases {

        private Recomputed frozen(IncidentId id) {
            return evidence.of(id).orElseThrow();
        }

        @Test
        void namesProgramCellReleaseSignaturesAndLog() {
            Run run = running();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);

            Recomputed frozen = frozen(id);
            assertThat(frozen.holds()).isTrue();
            assertThat(frozen.pieces())
                    .extracting(Piece::kind)
                    .contains(
                            "program",
                            "declaration",
                            "cell version",
                            "release",
                            "signature",
                            "log entry",
                            "record entry");
            assertThat(frozen.pieces())
                    .filteredOn(piece -> piece.kind().equals("signature"))
                    .hasSize(5);
            assertThat(frozen.pieces())
                    .filteredOn(piece -> piece.kind().equals("program"))
                    .singleElement()
                    .satisfies(piece -> assertThat(piece.sha256())
                            .as("of the bytes themselves")
                            .isEqualTo(Sha256.of(
                                    application.getBean(Programs.class).bytes(run.revision()))));
            assertThat(frozen.pieces())
                    .filteredOn(piece -> piece.kind().equals("cell version"))
                    .singleElement()
                    .satisfies(piece -> assertThat(piece.sha256())
                            .isEqualTo(
                                    cells.version(scene().cell, 1).orElseThrow().sha256()));
        }

        @Test
        void holdsWhileTheRunGoesOn() {
            running();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            int pieces = frozen(id).pieces().size();
            clock.moveBy(Duration.ofMinutes(1));
            log.finishStopped(scene().booking, 1, ResetCause.PART, scene().noor.id());

            assertThat(frozen(id).holds()).isTrue();
            assertThat(frozen(id).pieces()).hasSize(pieces);
        }

        @Test
        void holdsWhenTheEStopChangesHandsAfterwards() {
            Run run = running();
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            String release = sha256("release", id);
            Person tal = scene().lab.student("Tal Emberley");
            Handovers handovers = application.getBean(Handovers.class);
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, tal.id(), scene().noor.id()));
            scene().takesOver(tal);

            assertThat(releases.latest(scene().booking).orElseThrow().attendant())
                    .isEqualTo(tal.id());
            assertThat(frozen(id).holds()).isTrue();
            assertThat(sha256("release", id))
                    .as("what was frozen stays what it was")
                    .isEqualTo(release);

            jdbc.sql("update signoff_releases set attendant_id = :hemi where booking_id = :booking")
                    .param("hemi", scene().hemi.id().value())
                    .param("booking", run.booking().value())
                    .update();
            assertThat(frozen(id).holds()).as("nobody signed for that").isFalse();
        }

        private String sha256(String kind, IncidentId id) {
            return frozen(id).pieces().stream()
                    .filter(piece -> piece.kind().equals(kind))
                    .findFirst()
                    .orElseThrow()
                    .sha256();
        }

        @Test
        void isFrozenOnceWhateverTheClassBecomes() {
            running();
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            Recomputed first = frozen(id);
            clock.moveBy(Duration.ofMinutes(3));
            log.pass(scene().booking, scene().noor.id());
            done(reports.fill(id, IncidentClass.CONTACT, FORM, scene().hemi.id()));

            assertThat(frozen(id)).isEqualTo(first);
        }

        @Test
        void findsAPieceThatIsNotAsItWas() {
            Run run = running();
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            assertThat(frozen(id).holds()).isTrue();
            // the guards refuse every other change; who is at the e-stop may change while a release is in use
            jdbc.sql("update signoff_releases set attendant_id = :other where booking_id = :booking")
                    .param("other", Id.newValue())
                    .param("booking", run.booking().value())
                    .update();

            assertThat(frozen(id).holds()).isFalse();
            assertThat(frozen(id).pieces())
                    .filteredOn(piece -> !piece.holds())
                    .singleElement()
                    .satisfies(piece -> assertThat(piece.kind()).isEqualTo("release"));
        }

        @Test
        void refusesToChangeAPiece() {
            running();
            IncidentId id = reported(IncidentClass.CONTACT);
            Objects.requireNonNull(frozen(id));
            String pieces = " incident_evidence_pieces where evidence_id in "
                    + "(select id from incident_evidence where incident_id = :id)";
            assertThatThrownBy(
                            () -> jdbc.sql("update incident_evidence_pieces set sha256 = sha256 where evidence_id in "
                                            + "(select id from incident_evidence where incident_id = :id)")
                                    .param("id", id.value())
                                    .update())
                    .isInstanceOf(DataAccessException.class);
            assertThatThrownBy(() -> jdbc.sql("delete from" + pieces)
                            .param("id", id.value())
                            .update())
                    .isInstanceOf(DataAccessException.class);
        }

        @Test
        void freezesTheCellAloneWhenNothingRan() {
            IncidentId id = reported(IncidentClass.CONTACT);

            assertThat(frozen(id).pieces()).extracting(Piece::kind).containsExactly("cell version");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
