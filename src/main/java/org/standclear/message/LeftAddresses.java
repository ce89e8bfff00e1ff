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

/** E-mail addresses of people whose accounts are closed. */
@Component
class LeftAddresses implements Disposable {

    private final JdbcClient jdbc;
    private final DueRows rows;

    LeftAddresses(JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.rows = new DueRows(jdbc, """
                select s.person_id as id, p.closed_at as clock_start, s.person_id as person, '' as kept_back,
                    concat(p.printed_name, ' (', p.login, ')') as said
                from message_settings s join people p on p.id = s.person_id where not p.active""");
    }

    @Override
    public RecordKind kind() {
        return RecordKind.ADDRESSES;
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
        return jdbc.sql("delete from message_settings where person_id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }
}
