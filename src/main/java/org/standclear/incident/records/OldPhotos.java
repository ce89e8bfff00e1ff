package org.standclear.incident.records;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.RecordKind;

/** Photos whose time is over. */
@Component
class OldPhotos extends OldPieces {

    OldPhotos(JdbcClient jdbc, IncidentConcerns concerns) {
        super(jdbc, concerns, RecordKind.PHOTOS, "incident_photos");
    }
}
