package org.standclear.people.leaving;

import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Why somebody was authorised, and why it ended; that and when they were, stays. */
@Component
class OldAuthorisations extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldAuthorisations(JdbcClient jdbc, Clock clock) {
        super(RecordKind.AUTHORISATIONS, new DueRows(jdbc, new DueFrom("a.id", "a.over_at", """
                a.person_id as person, '' as kept_back,
                concat(p.printed_name, ' (', p.login, '), ', lower(a.duty)) as said""", """
                authorisations a left join people p on p.id = a.person_id where a.reasons_out_at is null""")));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("""
                update authorisations set reason = 'taken out at the end of its time', reasons_out_at = :at,
                    revoke_reason = case when revoke_reason is null then null else 'taken out at the end of its time' end
                where id = :id and reasons_out_at is null""")
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
