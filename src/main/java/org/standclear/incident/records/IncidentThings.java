package org.standclear.incident.records;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab incidents and what belongs to them are of. */
@Component
class IncidentThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.own("incidents"),
                Kind.of("incident_steps", "incident_id", "incidents"),
                Kind.of("incident_forms", "incident_id", "incidents"),
                Kind.of("incident_statements", "incident_id", "incidents"),
                Kind.of("incident_evidence", "incident_id", "incidents"),
                Kind.of("incident_causes", "incident_id", "incidents"),
                Kind.of("incident_actions", "incident_id", "incidents"),
                Kind.of("incident_photos", "incident_id", "incidents"),
                Kind.of("incident_risk_reviews", "incident_id", "incidents"),
                Kind.of("incident_medical_notes", "incident_id", "incidents"),
                Kind.of("incident_medical_views", "incident_id", "incidents"));
    }
}
