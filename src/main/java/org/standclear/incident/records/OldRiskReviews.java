package org.standclear.incident.records;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** What reviews of the risk assessment after an incident came to; that they were held, and on which version, stays. */
@Component
class OldRiskReviews extends OldReviewWords {

    private static final String STANDING =
            "exists (select 1 from incident_risk_reviews r where r.incident_id = i.id and r.words_out_at is null)";

    OldRiskReviews(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
        super(jdbc, clock, concerns, RecordKind.RISK_REVIEWS, STANDING, "RISK_ASSESSMENT");
    }

    @Override
    int takeOut(JdbcClient jdbc, UUID incident, Instant at) {
        return jdbc.sql("""
                update incident_risk_reviews set outcome = :gone, words_out_at = :at
                where incident_id = :id and words_out_at is null""")
                .param("gone", GONE)
                .param("at", SqlTime.toSql(at))
                .param("id", incident)
                .update();
    }
}
