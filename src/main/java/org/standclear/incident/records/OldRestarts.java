package org.standclear.incident.records;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Why restarts after an incident were approved; by whom, and when, stays. */
@Component
class OldRestarts extends OldReviewWords {

    private static final String STANDING =
            "exists (select 1 from incident_restarts r where r.incident_id = i.id and r.words_out_at is null)";

    OldRestarts(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
        super(jdbc, clock, concerns, RecordKind.RESTARTS, STANDING, "RESTART_APPROVED");
    }

    @Override
    int takeOut(JdbcClient jdbc, UUID incident, Instant at) {
        return jdbc.sql("""
                update incident_restarts set words = :gone, words_out_at = :at
                where incident_id = :id and words_out_at is null""")
                .param("gone", GONE)
                .param("at", SqlTime.toSql(at))
                .param("id", incident)
                .update();
    }
}
