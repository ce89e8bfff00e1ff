package org.standclear.run.records;

import java.time.Clock;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** What people typed into the run log, and sentences of it that name them; that it happened, and its code, stay. */
@Component
class OldRunWords extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldRunWords(JdbcClient jdbc, Clock clock) {
        super(RecordKind.RUN_WORDS, new DueRows(jdbc, """
                select e.id as id, e.happened_at as clock_start, e.account_id as person, '' as kept_back,
                    concat(case e.kind when 'RESET' then 'cause of a stop' when 'CORRECTION' then 'correction'
                        when 'HANDOVER' then 'handover of the e-stop' else 'credited minutes' end, ' on ', c.name) as said
                from run_events e join cells c on c.id = e.cell_id
                where e.kind in ('RESET', 'CORRECTION', 'HANDOVER', 'CREDIT') and e.words <> ''
                    and e.words_out_at is null""", event -> concerns(jdbc, event)));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private static Set<Concern> concerns(JdbcClient jdbc, UUID event) {
        Set<Concern> concerns = new HashSet<>();
        jdbc.sql("select run_id from run_events where id = :id and run_id is not null")
                .param("id", event)
                .query(UUID.class)
                .list()
                .forEach(run -> concerns.add(new Concern(About.RUN, run)));
        jdbc.sql("select p.person_id from run_people p join run_events e on e.run_id = p.run_id where e.id = :id")
                .param("id", event)
                .query(UUID.class)
                .list()
                .forEach(person -> concerns.add(Concern.person(person)));
        return concerns;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql(
                                "update run_events set words = :gone, words_out_at = :at where id = :id and words_out_at is null")
                        .param("gone", GONE)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
