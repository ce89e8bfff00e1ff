package org.standclear.incident.records;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.RecordKind;

/** Medical notes whose time is over. */
@Component
class OldMedicalNotes extends OldPieces {

    OldMedicalNotes(JdbcClient jdbc, IncidentConcerns concerns) {
        super(jdbc, concerns, RecordKind.MEDICAL_NOTES, "incident_medical_notes");
    }
}
