package org.standclear.incident.records;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Disposable;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** Photos of incidents; the database lets one go only for a disposal that is written down. */
@Component
class OldPhotos implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    OldPhotos(JdbcClient jdbc, IncidentConcerns concerns) {
        this.jdbc = jdbc;
        this.rows = new DueRows(jdbc, """
                select n.id as id, i.closed_at as clock_start, cast(null as uuid) as person, '' as kept_back
                from incident_photos n join incidents i on i.id = n.incident_id where i.closed_at is not null""", concerns::ofPiece);
    }

    @Override
    public RecordKind kind() {
        return RecordKind.PHOTOS;
    }

    @Override
    public List<Candidate> startedBefore(Instant instant, int atMost) {
        return rows.startedBefore(instant, atMost);
    }

    @Override
    public Optional<Candidate> find(UUID id) {
        return rows.find(id);
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from incident_photos where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
