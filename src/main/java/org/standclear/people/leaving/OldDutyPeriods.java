package org.standclear.people.leaving;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** The duty plan of long ago. */
@Component
class OldDutyPeriods extends DisposableRows {

    private final JdbcClient jdbc;

    OldDutyPeriods(JdbcClient jdbc) {
        super(
                RecordKind.DUTY_PERIODS,
                new DueRows(
                        jdbc,
                        "select p.id as id, p.until_at as clock_start, p.person_id as person, '' as kept_back, "
                                + "concat(w.printed_name, ' (', w.login, ')') as said from duty_periods p left join people w on w.id = p.person_id"));
        this.jdbc = jdbc;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from duty_periods where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
