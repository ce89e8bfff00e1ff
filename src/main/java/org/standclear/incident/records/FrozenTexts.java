package org.standclear.incident.records;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.OnDemand;
import org.standclear.platform.retention.RecordKind;

/** What an incident has frozen stays as it was, the text of a program and the words of the log: their hashes are evidence. */
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
        OnDemand logged = new OnDemand(() -> jdbc.sql("""
                select distinct v.id from incident_evidence_pieces e
                join run_events v on cast(v.id as varchar(80)) = e.reference
                where e.kind = 'log entry' and v.kind in ('RESET', 'CORRECTION', 'HANDOVER', 'CREDIT')""").query(UUID.class).list());
        return (kind, record) -> (kind == RecordKind.PROGRAMS && frozen.contains(record.id()))
                        || (kind == RecordKind.RUN_WORDS && logged.contains(record.id()))
                ? "frozen as evidence of an incident"
                : "";
    }
}
