package org.standclear.message;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** E-mail addresses of people whose accounts are closed. */
@Component
class LeftAddresses extends DisposableRows {

    private final JdbcClient jdbc;

    LeftAddresses(JdbcClient jdbc) {
        super(RecordKind.ADDRESSES, new DueRows(jdbc, """
                select s.person_id as id, p.closed_at as clock_start, s.person_id as person, '' as kept_back,
                    concat(p.printed_name, ' (', p.login, ')') as said
                from message_settings s join people p on p.id = s.person_id where not p.active"""));
        this.jdbc = jdbc;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from message_settings where person_id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
