package org.standclear.incident.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;

/** What says who was there and what ran stays until an incident is closed: it may be needed to understand it. */
@Component
class OpenIncidents implements KeepsBack {

    private static final Set<RecordKind> OF_A_PERSON = Set.of(
            RecordKind.ACCOUNTS,
            RecordKind.ADDRESSES,
            RecordKind.AUTHORISATIONS,
            RecordKind.MESSAGES,
            RecordKind.DUTY_PERIODS,
            RecordKind.QUESTIONS,
            RecordKind.RUN_WORDS,
            RecordKind.LAPSES,
            RecordKind.WAIVERS,
            RecordKind.PAPER_REMARKS,
            RecordKind.EXCEPTION_REMARKS,
            RecordKind.TAG_REASONS);

    private final JdbcClient jdbc;

    OpenIncidents(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Reasons now() {
        Set<UUID> people = new HashSet<>(jdbc.sql("""
                select reporter from incidents where state <> 'CLOSED' and reporter is not null
                union select reviewer from incidents where state <> 'CLOSED' and reviewer is not null
                union select p.person_id from incident_people p join incidents i on i.id = p.incident_id
                    where i.state <> 'CLOSED'
                union select r.person_id from run_people r join incidents i on i.run_id = r.run_id where i.state <> 'CLOSED'
                union select owner from incident_actions where checked_at is null""").query(UUID.class).list());
        Set<UUID> texts = new HashSet<>(jdbc.sql("""
                select v.content_id from program_revisions v join runs r on r.revision_id = v.id
                    join incidents i on i.run_id = r.id where i.state <> 'CLOSED'""").query(UUID.class).list());
        return (kind, record) -> {
            if (kind == RecordKind.PROGRAMS && texts.contains(record.id())) {
                return "it ran in an incident that is not closed";
            }
            return OF_A_PERSON.contains(kind) && isAboutOneOf(people, record)
                    ? "named in an incident that is not closed, or in an action that is not checked"
                    : "";
        };
    }

    private static boolean isAboutOneOf(Set<UUID> people, Candidate record) {
        return people.stream().anyMatch(person -> record.concerns(Concern.About.PERSON, person));
    }
}
