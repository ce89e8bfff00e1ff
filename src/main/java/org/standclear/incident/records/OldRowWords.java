package org.standclear.incident.records;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Words of a review that stand in one column of a table of their own; who wrote them, and when, stays. */
final class OldRowWords extends OldReviewWords {

    private final String table;
    private final String column;

    private OldRowWords(
            JdbcClient jdbc, Clock clock, IncidentConcerns concerns, RecordKind kind, String step, Where where) {
        super(jdbc, clock, concerns, kind, where.standing(), step);
        this.table = where.table();
        this.column = where.column();
    }

    /** Which column of which table; never words from outside. */
    private record Where(String table, String column) {

        String standing() {
            return "exists (select 1 from " + table + " r where r.incident_id = i.id and r.words_out_at is null)";
        }
    }

    @Override
    int takeOut(JdbcClient jdbc, UUID incident, Instant at) {
        return jdbc.sql("update " + table + " set " + column
                        + " = :gone, words_out_at = :at where incident_id = :id and words_out_at is null")
                .param("gone", GONE)
                .param("at", SqlTime.toSql(at))
                .param("id", incident)
                .update();
    }

    /** The kinds of such words. */
    @Configuration(proxyBeanMethods = false)
    static class Kinds {

        /** Why restarts after an incident were approved. */
        @Bean
        OldRowWords oldRestarts(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
            return new OldRowWords(
                    jdbc,
                    clock,
                    concerns,
                    RecordKind.RESTARTS,
                    "RESTART_APPROVED",
                    new Where("incident_restarts", "words"));
        }

        /** What reviews of the risk assessment after an incident came to. */
        @Bean
        OldRowWords oldRiskReviews(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
            return new OldRowWords(
                    jdbc,
                    clock,
                    concerns,
                    RecordKind.RISK_REVIEWS,
                    "RISK_ASSESSMENT",
                    new Where("incident_risk_reviews", "outcome"));
        }
    }
}
