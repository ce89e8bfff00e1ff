package org.standclear.incident.records;

import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.incident.FilledForm;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.Severity;
import org.standclear.incident.Statement;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Every state of forms, and statements; both only ever added. */
@Repository
class FormRows {

    private final JdbcClient jdbc;

    FormRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps the form that the incident has now beside those before it; called under the incident's lock. */
    void keep(Incident incident, @Nullable PersonId by, Instant at) {
        Incident.Form form = incident.form();
        if (form == null) {
            return;
        }
        jdbc.sql("""
                insert into incident_forms (id, incident_id, number, class, story, done_at_once, actual, foreseeable, outcomes,
                    filled_by, filled_at)
                values (:id, :incident, :number, :class, :story, :atOnce, :actual, :foreseeable, :outcomes, :by, :at)""")
                .param("id", Id.newValue())
                .param("incident", incident.id().value())
                .param("number", count(incident.id()) + 1)
                .param("class", incident.kind().name())
                .param("story", form.story())
                .param("atOnce", form.doneAtOnce())
                .param("actual", form.actual().name())
                .param("foreseeable", form.foreseeable().name())
                .param("outcomes", FormColumns.outcomes(form.outcomes()))
                .param("by", by == null ? null : by.value(), Types.OTHER)
                .param("at", SqlTime.toSql(at))
                .update();
    }

    int count(IncidentId incident) {
        return jdbc.sql("select count(*) from incident_forms where incident_id = :id")
                .param("id", incident.value())
                .query(Integer.class)
                .single();
    }

    List<FilledForm> forms(IncidentId incident) {
        return jdbc.sql("select * from incident_forms where incident_id = :id order by number")
                .param("id", incident.value())
                .query((row, number) -> {
                    UUID by = row.getObject("filled_by", UUID.class);
                    return new FilledForm(
                            row.getInt("number"),
                            IncidentClass.valueOf(row.getString("class")),
                            new Incident.Form(
                                    row.getString("story"),
                                    row.getString("done_at_once"),
                                    Severity.valueOf(row.getString("actual")),
                                    Severity.valueOf(row.getString("foreseeable")),
                                    FormColumns.outcomes(row.getString("outcomes"))),
                            by == null ? null : new PersonId(by),
                            SqlTime.read(row, "filled_at"));
                })
                .list();
    }

    void add(IncidentId incident, Statement statement) {
        jdbc.sql("""
                insert into incident_statements (id, incident_id, person_id, words, stated_at)
                values (:id, :incident, :person, :words, :at)""")
                .param("id", Id.newValue())
                .param("incident", incident.value())
                .param("person", statement.by().value())
                .param("words", statement.words())
                .param("at", SqlTime.toSql(statement.at()))
                .update();
    }

    List<Statement> statements(IncidentId incident) {
        return jdbc.sql("select * from incident_statements where incident_id = :id order by stated_at, id")
                .param("id", incident.value())
                .query((row, number) -> new Statement(
                        new PersonId(row.getObject("person_id", UUID.class)),
                        SqlTime.read(row, "stated_at"),
                        row.getString("words")))
                .list();
    }
}
