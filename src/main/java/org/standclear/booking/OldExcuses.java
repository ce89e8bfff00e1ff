package org.standclear.booking;

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

/** What students wrote about bookings that were lost; that they were excused stays. */
@Component
class OldExcuses implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    OldExcuses(JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.rows = new DueRows(jdbc, """
                select p.booking_id as id, b.ends_at as clock_start, b.operator_id as person, '' as kept_back,
                    concat(o.printed_name, ' (', o.login, '), booking on ', c.name) as said
                from booking_pleas p join bookings b on b.id = p.booking_id left join people o on o.id = b.operator_id
                    join cells c on c.id = b.cell_id""");
    }

    @Override
    public RecordKind kind() {
        return RecordKind.EXCUSES;
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
        return jdbc.sql("delete from booking_pleas where booking_id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
