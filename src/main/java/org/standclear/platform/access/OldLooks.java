package org.standclear.platform.access;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** Looks of long ago. */
@Component
class OldLooks extends DisposableRows {

    private final JdbcClient jdbc;

    OldLooks(JdbcClient jdbc) {
        super(RecordKind.LOOKS, new DueRows(jdbc, new DueFrom("l.id", "l.seen_at", """
                cast(case when length(l.whose) = 36 then l.whose end as uuid) as person, '' as kept_back,
                concat('look by ', v.printed_name, ' (', v.login, ')') as said""", """
                platform_looks l left join people v on v.id = l.viewer where l.sight <> 'MEDICAL'""")));
        this.jdbc = jdbc;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from platform_looks where id = :id and sight <> 'MEDICAL'")
                        .param("id", id)
                        .update()
                == 1;
    }
}
