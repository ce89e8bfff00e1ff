package org.standclear.cell;

import java.time.Clock;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Why something hung on a cell and why it came off; that it did stays. What still hangs keeps its reason. */
@Component
class OldTagReasons extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldTagReasons(JdbcClient jdbc, Clock clock) {
        super(RecordKind.TAG_REASONS, new DueRows(jdbc, """
                select t.id as id, t.lifted_at as clock_start, t.placed_by as person, '' as kept_back,
                    concat(lower(replace(t.kind, '_', ' ')), ' on ', c.name) as said
                from cell_tags t join cells c on c.id = t.cell_id
                where t.lifted_at is not null and t.words_out_at is null""", tag -> people(jdbc, tag)));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private static Set<Concern> people(JdbcClient jdbc, UUID tag) {
        return jdbc.sql("""
                select caused_by from cell_tags where id = :id and caused_by is not null
                union select lifted_by from cell_tags where id = :id and lifted_by is not null""").param("id", tag).query(UUID.class).list().stream()
                .map(Concern::person)
                .collect(Collectors.toSet());
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("""
                update cell_tags set reason = :gone, words_out_at = :at,
                    lift_reason = case when lift_reason is null then null else :gone end
                where id = :id and lifted_at is not null and words_out_at is null""")
                        .param("gone", GONE)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
