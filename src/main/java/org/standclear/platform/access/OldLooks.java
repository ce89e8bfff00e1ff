package org.standclear.platform.access;

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

/** Looks of long ago. */
@Component
class OldLooks implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    OldLooks(JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.rows = new DueRows(jdbc, """
                select l.id as id, l.seen_at as clock_start,
                    cast(case when length(l.whose) = 36 then l.whose end as uuid) as person, '' as kept_back,
                    concat('look by ', v.printed_name, ' (', v.login, ')') as said
                from platform_looks l left join people v on v.id = l.viewer where l.sight <> 'MEDICAL'""");
    }

    @Override
    public RecordKind kind() {
        return RecordKind.LOOKS;
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
        return jdbc.sql("delete from platform_looks where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
