package org.standclear.incident.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.incident.IncidentStep;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** The steps of incidents; only ever added. */
@Repository
class StepRows {

    private final JdbcClient jdbc;

    StepRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void add(IncidentId incident, IncidentStep step) {
        PersonId by = step.by();
        jdbc.sql("""
                insert into incident_steps (id, incident_id, kind, words, for_reporter, taken_by, taken_at)
                values (:id, :incident, :kind, :words, :forReporter, :by, :at)""")
                .param("id", step.id())
                .param("incident", incident.value())
                .param("kind", step.kind().name())
                .param("words", step.words())
                .param("forReporter", step.forReporter())
                .param("by", by == null ? null : by.value(), Types.OTHER)
                .param("at", SqlTime.toSql(step.at()))
                .update();
    }

    List<IncidentStep> of(IncidentId incident) {
        return jdbc.sql("select * from incident_steps where incident_id = :id order by taken_at, id")
                .param("id", incident.value())
                .query(StepRows::step)
                .list();
    }

    private static IncidentStep step(ResultSet row, int number) throws SQLException {
        UUID by = row.getObject("taken_by", UUID.class);
        return new IncidentStep(
                row.getObject("id", UUID.class),
                IncidentStep.Kind.valueOf(row.getString("kind")),
                row.getString("words"),
                row.getString("for_reporter"),
                by == null ? null : new PersonId(by),
                SqlTime.read(row, "taken_at"));
    }
}
