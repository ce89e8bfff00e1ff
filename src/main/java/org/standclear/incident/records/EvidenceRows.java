package org.standclear.incident.records;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.incident.records.EvidencePieces.Found;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.time.SqlTime;

/** Frozen evidence in the database; both engines refuse to change a row of it. */
@Repository
class EvidenceRows {

    private final JdbcClient jdbc;

    EvidenceRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The head of frozen evidence. */
    record Head(UUID id, Instant frozenAt, String because, int pieces, String sha256) {}

    Optional<Head> find(IncidentId incident) {
        return jdbc.sql("select * from incident_evidence where incident_id = :id")
                .param("id", incident.value())
                .query((row, number) -> new Head(
                        row.getObject("id", UUID.class),
                        SqlTime.read(row, "frozen_at"),
                        row.getString("because"),
                        row.getInt("pieces"),
                        row.getString("sha256")))
                .optional();
    }

    List<Found> pieces(UUID evidence) {
        return jdbc.sql("select * from incident_evidence_pieces where evidence_id = :id order by number")
                .param("id", evidence)
                .query((row, number) -> new Found(
                        row.getString("kind"),
                        row.getString("reference"),
                        row.getString("words"),
                        row.getString("sha256")))
                .list();
    }

    /** Writes them down; how many there are. */
    int freeze(IncidentId incident, String because, List<Found> pieces, Instant at) {
        UUID id = Id.newValue();
        jdbc.sql("""
                insert into incident_evidence (id, incident_id, frozen_at, because, pieces, sha256)
                values (:id, :incident, :at, :because, :pieces, :sha256)""")
                .param("id", id)
                .param("incident", incident.value())
                .param("at", SqlTime.toSql(at))
                .param("because", because)
                .param("pieces", pieces.size())
                .param("sha256", hash(pieces))
                .update();
        for (int i = 0; i < pieces.size(); i++) {
            add(id, i + 1, pieces.get(i));
        }
        return pieces.size();
    }

    private void add(UUID evidence, int number, Found piece) {
        jdbc.sql("""
                insert into incident_evidence_pieces (evidence_id, number, kind, reference, words, sha256)
                values (:evidence, :number, :kind, :reference, :words, :sha256)""")
                .param("evidence", evidence)
                .param("number", number)
                .param("kind", piece.kind())
                .param("reference", piece.reference())
                .param("words", piece.words())
                .param("sha256", piece.sha256())
                .update();
    }

    static String hash(List<Found> pieces) {
        return Sha256.of(pieces.stream().map(Found::line).collect(Collectors.joining()));
    }
}
