package org.standclear.incident.records;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Disposable;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.retention.Stretch;

/**
 * What hangs on a closed incident and goes whole; the database lets a row go only for a disposal that is written down.
 */
abstract class OldPieces implements Disposable {

    private final JdbcClient jdbc;
    private final RecordKind kind;
    private final String table;
    private final DueRows rows;

    /** The table is one of the room's own, never a word from outside. */
    OldPieces(JdbcClient jdbc, IncidentConcerns concerns, RecordKind kind, String table) {
        this.jdbc = jdbc;
        this.kind = kind;
        this.table = table;
        this.rows = new DueRows(
                jdbc,
                "select n.id as id, i.closed_at as clock_start, cast(null as uuid) as person, '' as kept_back, "
                        + "concat('incident ', i.number) as said from "
                        + table + " n join incidents i on i.id = n.incident_id where i.closed_at is not null",
                concerns::ofPiece);
    }

    @Override
    public RecordKind kind() {
        return kind;
    }

    @Override
    public List<Candidate> startedIn(Stretch stretch) {
        return rows.startedIn(stretch);
    }

    @Override
    public Optional<Candidate> find(UUID id) {
        return rows.find(id);
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from " + table + " where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
