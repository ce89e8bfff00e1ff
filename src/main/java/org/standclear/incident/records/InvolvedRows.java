package org.standclear.incident.records;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Who had a part in an incident. */
@Repository
class InvolvedRows {

    private final JdbcClient jdbc;

    InvolvedRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Names the person once; a second naming changes nothing. */
    boolean add(IncidentId incident, PersonId person, String part, Instant at) {
        if (of(incident).contains(person)) {
            return false;
        }
        jdbc.sql("""
                insert into incident_people (incident_id, person_id, part, added_at)
                values (:incident, :person, :part, :at)""")
                .param("incident", incident.value())
                .param("person", person.value())
                .param("part", part)
                .param("at", SqlTime.toSql(at))
                .update();
        return true;
    }

    List<PersonId> of(IncidentId incident) {
        return jdbc.sql("select person_id from incident_people where incident_id = :id order by added_at, person_id")
                .param("id", incident.value())
                .query((row, number) -> new PersonId(row.getObject("person_id", UUID.class)))
                .list();
    }
}
