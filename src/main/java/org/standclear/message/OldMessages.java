package org.standclear.message;

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

/** Messages of long ago. */
@Component
class OldMessages implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    OldMessages(JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.rows = new DueRows(jdbc, """
                select m.id as id, m.created_at as clock_start, m.person_id as person,
                    case when m.mail_state = 'WAITING' then 'its e-mail has not left yet' else '' end as kept_back,
                    concat(p.printed_name, ' (', p.login, ')') as said
                from messages m left join people p on p.id = m.person_id""");
    }

    @Override
    public RecordKind kind() {
        return RecordKind.MESSAGES;
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
        return jdbc.sql("delete from messages where id = :id").param("id", id).update() == 1;
    }
}
