package org.standclear.incident.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;

/**
 * Names stay as long as what an incident says of people: a medical note has no person in its row, and a note about nobody
 * would be worth nothing.
 */
@Component
class ToldIncidents implements KeepsBack {

    private static final Set<RecordKind> WHO = Set.of(RecordKind.ACCOUNTS, RecordKind.AUTHORISATIONS);

    private final JdbcClient jdbc;

    ToldIncidents(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Reasons now() {
        Set<UUID> people = new HashSet<>(jdbc.sql("""
                with told as (select i.id, i.run_id, i.reporter from incidents i where i.story_out_at is null
                    or exists (select 1 from incident_medical_notes n where n.incident_id = i.id)
                    or exists (select 1 from incident_photos f where f.incident_id = i.id))
                select t.reporter from told t where t.reporter is not null
                union select p.person_id from incident_people p join told t on t.id = p.incident_id
                union select r.person_id from run_people r join told t on t.run_id = r.run_id""").query(UUID.class).list());
        return (kind, record) ->
                WHO.contains(kind) && people.stream().anyMatch(person -> record.concerns(Concern.About.PERSON, person))
                        ? "named in an incident whose story, photos or medical notes are still kept"
                        : "";
    }
}
