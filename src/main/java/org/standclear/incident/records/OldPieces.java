package org.standclear.incident.records;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/**
 * What hangs on a closed incident and goes whole; the database lets a row go only for a disposal that is written down.
 */
abstract class OldPieces extends DisposableRows {

    private final JdbcClient jdbc;
    private final String table;

    /** The table is one of the room's own, never a word from outside. */
    OldPieces(JdbcClient jdbc, IncidentConcerns concerns, RecordKind kind, String table) {
        super(
                kind,
                new DueRows(
                        jdbc,
                        "select n.id as id, i.closed_at as clock_start, cast(null as uuid) as person, '' as kept_back, "
                                + "concat('incident ', i.number) as said from "
                                + table + " n join incidents i on i.id = n.incident_id where i.closed_at is not null",
                        concerns::ofPiece));
        this.jdbc = jdbc;
        this.table = table;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from " + table + " where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
