package org.standclear.booking;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** What students wrote about bookings that were lost; that they were excused stays. */
@Component
class OldExcuses extends DisposableRows {

    private final JdbcClient jdbc;

    OldExcuses(JdbcClient jdbc) {
        super(RecordKind.EXCUSES, new DueRows(jdbc, """
                select p.booking_id as id, b.ends_at as clock_start, b.operator_id as person, '' as kept_back,
                    concat(o.printed_name, ' (', o.login, '), booking on ', c.name) as said
                from booking_pleas p join bookings b on b.id = p.booking_id left join people o on o.id = b.operator_id
                    join cells c on c.id = b.cell_id"""));
        this.jdbc = jdbc;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from booking_pleas where booking_id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
