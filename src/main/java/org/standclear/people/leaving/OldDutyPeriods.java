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

/** The duty plan of long ago. */
@Component
class OldDutyPeriods implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    OldDutyPeriods(JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.rows = new DueRows(
                jdbc,
                "select p.id as id, p.until_at as clock_start, p.person_id as person, '' as kept_back, "
                        + "concat(w.printed_name, ' (', w.login, ')') as said from duty_periods p left join people w on w.id = p.person_id");
    }

    @Override
    public RecordKind kind() {
        return RecordKind.DUTY_PERIODS;
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
        return jdbc.sql("delete from duty_periods where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
