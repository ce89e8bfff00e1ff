package org.standclear.incident.records;

import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentSettings;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** One row per change; the highest number counts. Templates reach them as {@code @incidentNumbers}. */
@Repository("incidentNumbers")
class JdbcIncidentNumbers implements IncidentNumbers {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcIncidentNumbers(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public IncidentSettings inForce() {
        return changes(1).stream().findFirst().map(Change::settings).orElse(IncidentSettings.DEFAULTS);
    }

    @Override
    public List<Change> changes(int atMost) {
        return jdbc.sql(
                        "select * from incident_settings where lab_id = :lab order by number desc fetch first :most rows only")
                .param("lab", labs.theLab().id().value())
                .param("most", atMost)
                .query((row, number) -> new Change(
                        new IncidentSettings(
                                row.getInt("contact_form_hours"),
                                row.getInt("injury_form_hours"),
                                row.getInt("effect_check_days")),
                        new PersonId(row.getObject("changed_by", UUID.class)),
                        SqlTime.read(row, "changed_at"),
                        row.getString("reason")))
                .list();
    }

    @Override
    @Transactional
    public void change(IncidentSettings settings, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        IncidentSettings before = inForce();
        jdbc.sql("""
                insert into incident_settings (lab_id, number, contact_form_hours, injury_form_hours, effect_check_days,
                    changed_by, changed_at, reason)
                select cast(:lab as uuid), 1 + coalesce(max(number), 0), :contact, :injury, :effect, :by, :at, :reason
                from incident_settings where lab_id = :lab""")
                .param("lab", lab.value())
                .param("contact", settings.contactFormHours())
                .param("injury", settings.injuryFormHours())
                .param("effect", settings.effectCheckDays())
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason)
                .update();
        trail.append(
                TrailEntry.of(lab, "incident.numbers-changed", lab, by, "Changed the numbers of incidents: " + reason)
                        .with("before", before)
                        .with("after", settings));
    }
}
