package org.standclear.signoff.records;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/**
 * Why something lapsed: it repeats reasons of tags, and names. With the words of a lapse go those of its release, its handover
 * and the list that it made void; what lapsed, by which rule and when stays.
 */
@Component
class OldLapseWords extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldLapseWords(JdbcClient jdbc, BookingConcerns concerns, Clock clock) {
        super(RecordKind.LAPSES, new DueRows(jdbc, """
                select l.id as id, l.lapsed_at as clock_start, b.operator_id as person,
                    case when b.state in ('RUNNING', 'STOPPED', 'FINISHED') then 'its run is not closed out' else '' end
                        as kept_back,
                    concat('lapse (', l.what, ') on ', c.name) as said
                from signoff_lapses l join bookings b on b.id = l.booking_id join cells c on c.id = b.cell_id
                where l.words_out_at is null""", id -> concerns.ofRow("signoff_lapses", id)));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public boolean dispose(UUID id) {
        OffsetDateTime now = SqlTime.toSql(clock.instant());
        // the list that was made void says the same; it is found by these words while they stand
        jdbc.sql("""
                update signoff_sheets set because = :gone, words_out_at = :at where words_out_at is null
                    and (booking_id, because) in (select l.booking_id, l.because from signoff_lapses l where l.id = :id)""").param("gone", GONE).param("at", now).param("id", id).update();
        jdbc.sql("""
                update signoff_handovers set because = :gone
                where release_id in (select l.release_id from signoff_lapses l where l.id = :id)""").param("gone", GONE).param("id", id).update();
        jdbc.sql("""
                update signoff_releases set words_out_at = :at,
                    because = case when because is null then null else :gone end,
                    suspended_because = case when suspended_because is null then null else :gone end
                where words_out_at is null and live is null
                    and id in (select l.release_id from signoff_lapses l where l.id = :id)""").param("gone", GONE).param("at", now).param("id", id).update();
        return jdbc.sql("""
                update signoff_lapses set because = :gone, words_out_at = :at where id = :id and words_out_at is null""")
                        .param("gone", GONE)
                        .param("at", now)
                        .param("id", id)
                        .update()
                == 1;
    }
}
