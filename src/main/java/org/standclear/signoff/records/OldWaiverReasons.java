package org.standclear.signoff.records;

import java.time.Clock;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Why waivers were given and taken back; which checks they set aside, by whom, when and for which run, stays. */
@Component
class OldWaiverReasons extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldWaiverReasons(JdbcClient jdbc, BookingConcerns concerns, Clock clock) {
        super(
                RecordKind.WAIVERS,
                new DueRows(
                        jdbc,
                        new DueFrom("w.id", "w.expires_at", """
                w.given_by as person, '' as kept_back, concat('waiver for a run on ', (select c.name from bookings b
                    join cells c on c.id = b.cell_id where b.id = w.booking_id)) as said""", """
                signoff_waivers w where w.words_out_at is null"""),
                        waiver -> concerns(jdbc, concerns, waiver)));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private static Set<Concern> concerns(JdbcClient jdbc, BookingConcerns bookings, UUID waiver) {
        Set<Concern> concerns = bookings.ofRow("signoff_waivers", waiver);
        jdbc.sql("select taken_by from signoff_waivers_taken_back where waiver_id = :id")
                .param("id", waiver)
                .query(UUID.class)
                .list()
                .forEach(person -> concerns.add(Concern.person(person)));
        return concerns;
    }

    @Override
    public boolean dispose(UUID id) {
        var now = SqlTime.toSql(clock.instant());
        jdbc.sql("""
                update signoff_waivers_taken_back set reason = :gone, words_out_at = :at
                where waiver_id = :id and words_out_at is null""").param("gone", GONE).param("at", now).param("id", id).update();
        return jdbc.sql("""
                update signoff_waivers set reason = :gone, words_out_at = :at where id = :id and words_out_at is null""")
                        .param("gone", GONE)
                        .param("at", now)
                        .param("id", id)
                        .update()
                == 1;
    }
}
