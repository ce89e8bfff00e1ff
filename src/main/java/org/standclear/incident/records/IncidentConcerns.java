package org.standclear.incident.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.Concern.About;

/** Whom and what an incident, a photo or a note of it is about, so that a hold on them keeps it. */
@Repository
class IncidentConcerns {

    private final JdbcClient jdbc;

    IncidentConcerns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of the incident itself. */
    Set<Concern> of(UUID incident) {
        Set<Concern> concerns = new HashSet<>(Set.of(new Concern(About.INCIDENT, incident)));
        jdbc.sql("""
                select person_id from incident_people where incident_id = :id
                union select reporter from incidents where id = :id and reporter is not null
                union select p.person_id from run_people p join incidents i on i.run_id = p.run_id where i.id = :id""")
                .param("id", incident)
                .query(UUID.class)
                .list()
                .forEach(person -> concerns.add(Concern.person(person)));
        jdbc.sql("select run_id from incidents where id = :id and run_id is not null")
                .param("id", incident)
                .query(UUID.class)
                .list()
                .forEach(run -> concerns.add(new Concern(About.RUN, run)));
        return concerns;
    }

    /** Of the incident that a note, a look at it or a photo belongs to. */
    Set<Concern> ofPiece(UUID piece) {
        return jdbc.sql("""
                select incident_id from incident_medical_notes where id = :id
                union select incident_id from incident_photos where id = :id
                union select incident_id from incident_medical_views where id = :id""")
                .param("id", piece)
                .query(UUID.class)
                .optional()
                .map(this::of)
                .orElse(Set.of());
    }
}
