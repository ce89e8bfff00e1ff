package org.standclear.incident.records;

import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/**
 * Who reported an incident, and every free text about it: of the report, its causes and its actions. That it happened, its
 * class, and the branches, levels, dates and effects of causes and actions stay, so that nothing that is counted changes.
 */
@Component
class OldStories extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldStories(JdbcClient jdbc, Clock clock, IncidentConcerns concerns) {
        super(RecordKind.INCIDENTS, new DueRows(jdbc, """
                select i.id as id, i.closed_at as clock_start, i.reporter as person, case when exists (select 1 from
                    incident_actions a where a.incident_id = i.id and a.checked_at is null)
                    then 'the effect of an action of it is not checked yet' else '' end as kept_back,
                    concat('incident ', i.number) as said
                from incidents i where i.closed_at is not null and i.story_out_at is null""", concerns::of));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public boolean dispose(UUID id) {
        // before the reporter is gone: what the report, its form and the answers say, and who the reporter is in any
        // step
        jdbc.sql("""
                update incident_steps set for_reporter = '',
                    words = case when kind in ('REPORTED', 'FORM_FILLED', 'PHOTO_ADDED', 'PERSON_NAMED', 'ANSWERED',
                            'CAUSE_ADDED', 'CAUSE_STRUCK', 'ACTION_AGREED', 'ACTION_DONE', 'ACTION_CHECKED')
                        then :gone else words end,
                    taken_by = case when taken_by = (select i.reporter from incidents i where i.id = :id) then null
                        else taken_by end
                where incident_id = :id""").param("gone", GONE).param("id", id).update();
        for (String told : List.of("incident_forms", "incident_statements")) {
            jdbc.sql("delete from " + told + " where incident_id = :id")
                    .param("id", id)
                    .update();
        }
        takeOutOfReview(id);
        return jdbc.sql("""
                update incidents set reporter = null, receipt_sha256 = null, sentence = :gone, done_at_once = '',
                    story = case when story = '' then '' else :gone end, story_out_at = :at, version = version + 1
                where id = :id and closed_at is not null and story_out_at is null""")
                        .param("gone", GONE)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }

    private void takeOutOfReview(UUID incident) {
        jdbc.sql("update incident_causes set words = :gone where incident_id = :id")
                .param("gone", GONE)
                .param("id", incident)
                .update();
        jdbc.sql("""
                update incident_actions set words = :gone,
                    done_words = case when done_words is null then null else :gone end,
                    check_words = case when check_words is null then null else :gone end
                where incident_id = :id""").param("gone", GONE).param("id", incident).update();
    }
}
