package org.standclear.message;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** Messages of long ago. */
@Component
class OldMessages extends DisposableRows {

    private final JdbcClient jdbc;

    OldMessages(JdbcClient jdbc) {
        super(RecordKind.MESSAGES, new DueRows(jdbc, new DueFrom("m.id", "m.created_at", """
                m.person_id as person,
                case when m.mail_state = 'WAITING' then 'its e-mail has not left yet' else '' end as kept_back,
                concat(p.printed_name, ' (', p.login, ')') as said""", """
                messages m left join people p on p.id = m.person_id where m.created_at is not null""")));
        this.jdbc = jdbc;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from messages where id = :id").param("id", id).update() == 1;
    }
}
