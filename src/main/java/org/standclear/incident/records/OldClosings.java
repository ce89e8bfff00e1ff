package org.standclear.incident.records;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Why an incident was closed; by whom, and when, stays. */
@Component
class OldClosings extends OldReviewWords {

    private static final String STANDING = "i.closing_out_at is null "
            + "and exists (select 1 from incident_steps s where s.incident_id = i.id and s.kind = 'CLOSED')";

    OldClosings(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
        super(jdbc, clock, concerns, RecordKind.CLOSINGS, STANDING, "CLOSED");
    }

    @Override
    int takeOut(JdbcClient jdbc, UUID incident, Instant at) {
        return jdbc.sql("""
                update incidents set closing_out_at = :at, version = version + 1
                where id = :id and closed_at is not null and closing_out_at is null""")
                .param("at", SqlTime.toSql(at))
                .param("id", incident)
                .update();
    }
}
