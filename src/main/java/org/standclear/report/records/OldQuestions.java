package org.standclear.report.records;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** Questions to own records that were answered long ago, with their answers. */
@Component
class OldQuestions extends DisposableRows {

    private final JdbcClient jdbc;

    OldQuestions(JdbcClient jdbc) {
        super(RecordKind.QUESTIONS, new DueRows(jdbc, """
                select q.id as id, q.answered_at as clock_start, q.asked_by as person, '' as kept_back,
                    concat('question of ', p.printed_name, ' (', p.login, ')') as said
                from report_questions q left join people p on p.id = q.asked_by where q.answered_at is not null"""));
        this.jdbc = jdbc;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from report_questions where id = :id and answered_at is not null")
                        .param("id", id)
                        .update()
                == 1;
    }
}
