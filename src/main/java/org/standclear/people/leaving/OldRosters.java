package org.standclear.people.leaving;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** The lines of roster files. */
@Component
class OldRosters extends DisposableRows {

    private final JdbcClient jdbc;

    OldRosters(JdbcClient jdbc) {
        super(RecordKind.ROSTERS, new DueRows(jdbc, """
                select i.id as id, coalesce(i.decided_at, i.read_at) as clock_start, cast(null as uuid) as person,
                    '' as kept_back, i.file_name as said
                from roster_imports i where exists (select 1 from roster_rows r where r.import_id = i.id)"""));
        this.jdbc = jdbc;
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
