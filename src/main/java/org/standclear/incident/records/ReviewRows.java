package org.standclear.incident.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.incident.Cause;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.Incidents.Restart;
import org.standclear.incident.RiskReview;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Causes, reviews of risk assessments and approved restarts. */
@Repository
class ReviewRows {

    private final JdbcClient jdbc;

    ReviewRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Cause> causes(IncidentId incident) {
        return jdbc.sql("select * from incident_causes where incident_id = :id order by added_at, id")
                .param("id", incident.value())
                .query(ReviewRows::cause)
                .list();
    }

    void add(IncidentId incident, Cause cause) {
        jdbc.sql("""
                insert into incident_causes (id, incident_id, parent_id, branch, words, added_by, added_at)
                values (:id, :incident, :parent, :branch, :words, :by, :at)""")
                .param("id", cause.id())
                .param("incident", incident.value())
                .param("parent", cause.parent(), Types.OTHER)
                .param("branch", cause.branch().name())
                .param("words", cause.words())
                .param("by", cause.addedBy().value())
                .param("at", SqlTime.toSql(cause.addedAt()))
                .update();
    }

    void strike(UUID cause, PersonId by, Instant at) {
        jdbc.sql("update incident_causes set struck_by = :by, struck_at = :at where id = :id and struck_at is null")
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("id", cause)
                .update();
    }

    private static Cause cause(ResultSet row, int number) throws SQLException {
        return new Cause(
                row.getObject("id", UUID.class),
                row.getObject("parent_id", UUID.class),
                CauseBranch.valueOf(row.getString("branch")),
                row.getString("words"),
                new PersonId(row.getObject("added_by", UUID.class)),
                SqlTime.read(row, "added_at"),
                row.getObject("struck_by") != null);
    }

    List<RiskReview> riskReviews(IncidentId incident) {
        return jdbc.sql("select * from incident_risk_reviews where incident_id = :id order by noted_at, id")
                .param("id", incident.value())
                .query((row, number) -> new RiskReview(
                        row.getObject("reviewed_on", java.time.LocalDate.class),
                        row.getString("outcome"),
                        row.getObject("cell_version", Integer.class),
                        new PersonId(row.getObject("noted_by", UUID.class)),
                        SqlTime.read(row, "noted_at")))
                .list();
    }

    void add(IncidentId incident, RiskReview review) {
        jdbc.sql("""
                insert into incident_risk_reviews (id, incident_id, reviewed_on, outcome, cell_version, noted_by, noted_at)
                values (:id, :incident, :on, :outcome, :version, :by, :at)""")
                .param("id", Id.newValue())
                .param("incident", incident.value())
                .param("on", review.reviewedOn())
                .param("outcome", review.outcome())
                .param("version", review.cellVersion(), Types.INTEGER)
                .param("by", review.notedBy().value())
                .param("at", SqlTime.toSql(review.notedAt()))
                .update();
    }

    /** The approval that stands: none that came before the incident held the cell once more, by number and not by time. */
    Optional<Restart> restart(IncidentId incident) {
        return jdbc
                .sql("""
                        select * from incident_restarts r where r.incident_id = :id and not exists (
                            select 1 from incident_steps s where s.incident_id = r.incident_id
                                and s.kind = 'CELL_HELD' and (s.kept_no > r.last_step
                                    or r.last_step is null and s.taken_at > r.approved_at))
                        order by coalesce(r.last_step, 0) desc, r.approved_at desc""")
                .param("id", incident.value())
                .query((row, number) -> new Restart(
                        new PersonId(row.getObject("approved_by", UUID.class)),
                        SqlTime.read(row, "approved_at"),
                        row.getString("words")))
                .list()
                .stream()
                .findFirst();
    }

    void add(IncidentId incident, Restart restart) {
        jdbc.sql("""
                insert into incident_restarts (incident_id, approved_by, approved_at, words, last_step)
                values (:incident, :by, :at, :words,
                    (select coalesce(max(kept_no), 0) from incident_steps where incident_id = :incident))""")
                .param("incident", incident.value())
                .param("by", restart.by().value())
                .param("at", SqlTime.toSql(restart.at()))
                .param("words", restart.words())
                .update();
    }
}
