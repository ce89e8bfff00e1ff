package org.standclear.incident.records;

import java.time.Clock;
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
import org.standclear.platform.time.SqlTime;

/** Who reported an incident and in what words; that it happened, and what was done about it, stays. */
@Component
class OldStories implements Disposable {

    private static final String GONE = "Taken out at the end of its time.";

    private final JdbcClient jdbc;
    private final Clock clock;
    private final DueRows rows;

    OldStories(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.rows = new DueRows(jdbc, """
                select i.id as id, i.closed_at as clock_start, i.reporter as person, '' as kept_back
                from incidents i where i.closed_at is not null and i.story_out_at is null""", concerns::of);
    }

    @Override
    public RecordKind kind() {
        return RecordKind.INCIDENTS;
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
        // before the reporter is gone: what the report, its form and the answers say, and who the reporter is in any
        // step
        jdbc.sql("""
                update incident_steps set for_reporter = '',
                    words = case when kind in ('REPORTED', 'FORM_FILLED', 'PHOTO_ADDED', 'PERSON_NAMED', 'ANSWERED')
                        then :gone else words end,
                    taken_by = case when taken_by = (select i.reporter from incidents i where i.id = :id) then null
                        else taken_by end
                where incident_id = :id""").param("gone", GONE).param("id", id).update();
        for (String told : List.of("incident_forms", "incident_statements")) {
            jdbc.sql("delete from " + told + " where incident_id = :id")
                    .param("id", id)
                    .update();
        }
        return jdbc.sql("""
                update incidents set reporter = null, receipt_sha256 = null, sentence = :gone, done_at_once = '',
                    story = case when story = '' then '' else :gone end, story_out_at = :at, version = version + 1
                where id = :id and closed_at is not null and story_out_at is null""")
                        .param("gone", GONE)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
