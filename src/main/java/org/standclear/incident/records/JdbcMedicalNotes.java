package org.standclear.incident.records;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.MedicalNotes;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Medical notes in a table of their own. The record says that one was written or opened, and nothing of what it says. */
@Service
@Transactional
class JdbcMedicalNotes implements MedicalNotes {

    private final JdbcClient jdbc;
    private final IncidentRows incidents;
    private final Steps steps;
    private final Trail trail;
    private final Labs labs;

    JdbcMedicalNotes(JdbcClient jdbc, IncidentRows incidents, Steps steps, Trail trail, Labs labs) {
        this.jdbc = jdbc;
        this.incidents = incidents;
        this.steps = steps;
        this.trail = trail;
        this.labs = labs;
    }

    @Override
    public List<Note> open(IncidentId incident, PersonId by) {
        jdbc.sql("""
                insert into incident_medical_views (id, incident_id, viewed_by, viewed_at)
                values (:id, :incident, :by, :at)""")
                .param("id", Id.newValue())
                .param("incident", incident.value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(steps.now()))
                .update();
        append(incident, "incident.medical-opened", "The restricted medical part was opened", by);
        return jdbc.sql("select * from incident_medical_notes where incident_id = :id order by written_at, id")
                .param("id", incident.value())
                .query((row, number) -> new Note(
                        row.getString("words"),
                        new PersonId(row.getObject("written_by", UUID.class)),
                        SqlTime.read(row, "written_at")))
                .list();
    }

    @Override
    public IncidentOutcome write(IncidentId incident, String words, PersonId by) {
        jdbc.sql("""
                insert into incident_medical_notes (id, incident_id, words, written_by, written_at)
                values (:id, :incident, :words, :by, :at)""")
                .param("id", Id.newValue())
                .param("incident", incident.value())
                .param("words", words)
                .param("by", by.value())
                .param("at", SqlTime.toSql(steps.now()))
                .update();
        append(incident, "incident.medical-noted", "A note was added to the restricted medical part", by);
        return new IncidentOutcome.Done(incident);
    }

    private void append(IncidentId id, String kind, String words, PersonId by) {
        Incident incident = incidents.find(id).orElseThrow();
        trail.append(
                TrailEntry.of(labs.theLab().id(), kind, id, by, words + " of incident " + incident.number() + "."));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Opened> opened(IncidentId incident) {
        return jdbc.sql("select * from incident_medical_views where incident_id = :id order by viewed_at desc, id desc")
                .param("id", incident.value())
                .query((row, number) -> new Opened(
                        new PersonId(row.getObject("viewed_by", UUID.class)), SqlTime.read(row, "viewed_at")))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public int count(IncidentId incident) {
        return jdbc.sql("select count(*) from incident_medical_notes where incident_id = :id")
                .param("id", incident.value())
                .query(Integer.class)
                .single();
    }
}
