package org.standclear.incident.records;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.OnDemand;
import org.standclear.platform.retention.RecordKind;

/** The text of a program stays that an incident has frozen: its hash is among the evidence. */
@Component
class FrozenTexts implements KeepsBack {

    private final JdbcClient jdbc;

    FrozenTexts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Reasons now() {
        OnDemand frozen = new OnDemand(() -> jdbc.sql("""
                select distinct r.content_id from incident_evidence_pieces e
                join program_revisions r on cast(r.id as varchar(80)) = e.reference
                where e.kind = 'program'""").query(UUID.class).list());
        return (kind, record) ->
                kind == RecordKind.PROGRAMS && frozen.contains(record.id()) ? "frozen as evidence of an incident" : "";
    }
}
