package org.standclear.incident.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;

/** Who looked at a medical part is kept at least as long as the notes in it, whatever the rule of such looks says. */
@Component
class NotesLookedAt implements KeepsBack {

    private static final Set<RecordKind> LOOKS = Set.of(RecordKind.MEDICAL_LOOKS, RecordKind.MEDICAL_VIEWS);

    private final JdbcClient jdbc;

    NotesLookedAt(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Reasons now() {
        Set<UUID> noted = new HashSet<>(jdbc.sql("select distinct incident_id from incident_medical_notes")
                .query(UUID.class)
                .list());
        return (kind, record) -> LOOKS.contains(kind) && isOfOneOf(noted, record)
                ? "the medical notes that were looked at are still kept"
                : "";
    }

    private static boolean isOfOneOf(Set<UUID> incidents, Candidate record) {
        return record.concerns().stream()
                .anyMatch(concern -> concern.about() == About.INCIDENT && incidents.contains(concern.id()));
    }
}
