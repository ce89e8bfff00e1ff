package org.standclear.program;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Texts of programs of long ago; a note stands in their place, and their SHA-256 stays. */
@Component
class OldTexts extends DisposableRows {

    private static final String NOTE = "# The text was taken out at the end of its time. Its SHA-256 is still known.\n";

    private final JdbcClient jdbc;
    private final Clock clock;

    OldTexts(JdbcClient jdbc, Clock clock) {
        super(RecordKind.PROGRAMS, new DueRows(jdbc, """
                select c.id as id, max(r.uploaded_at) as clock_start, p.author as person, '' as kept_back,
                    concat(max(r.title), ', ', max(o.printed_name), ' (', max(o.login), ')') as said
                from program_contents c join program_revisions r on r.content_id = c.id
                    join programs p on p.id = r.program_id left join people o on o.id = p.author
                where c.taken_out_at is null group by c.id, p.author"""));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql(
                                "update program_contents set bytes = :note, taken_out_at = :at where id = :id and taken_out_at is null")
                        .param("note", NOTE.getBytes(StandardCharsets.UTF_8))
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
