package org.standclear.people.leaving;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Disposable;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.retention.Stretch;

/** The lines of roster files. */
@Component
class OldRosters implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    OldRosters(JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.rows = new DueRows(jdbc, """
                select i.id as id, coalesce(i.decided_at, i.read_at) as clock_start, cast(null as uuid) as person,
                    '' as kept_back, i.file_name as said
                from roster_imports i where exists (select 1 from roster_rows r where r.import_id = i.id)""");
    }

    @Override
    public RecordKind kind() {
        return RecordKind.ROSTERS;
    }

    @Override
    public List<Candidate> startedIn(Stretch stretch) {
        return rows.startedIn(stretch);
    }

    @Override
    public Optional<Candidate> find(UUID id) {
        return rows.find(id);
    }

    @Override
    public boolean dispose(UUID id) {
        // one that was never applied must not be applied without its lines: it would take everybody out
        jdbc.sql("update roster_imports set state = 'UNDONE' where id = :id and state = 'READ'")
                .param("id", id)
                .update();
        return jdbc.sql("delete from roster_rows where import_id = :id")
                        .param("id", id)
                        .update()
                > 0;
    }
}
