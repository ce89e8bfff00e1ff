package org.standclear.report.records;

import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** What instructors wrote beside a week's exceptions; the lines, who signed them and the SHA-256 of what was read stay. */
@Component
class OldRemarks extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldRemarks(JdbcClient jdbc, LineConcerns concerns, Clock clock) {
        super(RecordKind.EXCEPTION_REMARKS, new DueRows(jdbc, """
                select e.id as id, e.signed_at as clock_start, e.signed_by as person, '' as kept_back,
                    concat('remark of ', e.printed_name, ', week of ', cast(e.week as varchar(10))) as said
                from report_exception_readings e where e.remark <> '' and e.words_out_at is null""", concerns::of));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("""
                update report_exception_readings set remark = :gone, words_out_at = :at
                where id = :id and remark <> '' and words_out_at is null""")
                        .param("gone", GONE)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
