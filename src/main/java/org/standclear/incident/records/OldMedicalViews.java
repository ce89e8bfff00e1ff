package org.standclear.incident.records;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.RecordKind;

/** Who opened a medical part, as the part itself tells it; goes with the time of its notes. */
@Component
class OldMedicalViews extends OldPieces {

    OldMedicalViews(JdbcClient jdbc, IncidentConcerns concerns) {
        super(jdbc, concerns, RecordKind.MEDICAL_VIEWS, "incident_medical_views");
    }
}
