package org.standclear.signoff.records;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.BenchLog;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Reads step times from sheets and releases: each booking's first release that led to a run. */
@Repository
class LoggedSteps implements BenchLog {

    private static final double MINUTE = 60_000;

    /** Releases looked at for one whose times count: without an end, fewer than wanted would mean reading the whole log. */
    private static final int LOOKED_AT_EACH = 3;

    private final JdbcClient jdbc;
    private final Labs labs;

    LoggedSteps(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    @Override
    public List<Steps> latest(int atMost) {
        return jdbc.sql("""
                select b.starts_at, session.closed_at, bench.opened_at, r.issued_at
                from (select x.* from signoff_releases x
                    where x.used_at is not null and x.cell_id in (select c.id from cells c where c.lab_id = :lab)
                    order by x.issued_at desc fetch first :looked rows only) r
                join bookings b on b.id = r.booking_id
                join signoff_sheets bench on bench.id = r.sheet_id
                join signoff_sheets session on session.booking_id = r.booking_id and session.list = 'session'
                    and session.round_number = 1 and session.closed_at >= b.starts_at
                where not exists (select 1 from signoff_releases earlier
                    where earlier.booking_id = r.booking_id and earlier.issued_at < r.issued_at)
                order by r.issued_at desc fetch first :most rows only""")
                .param("most", atMost)
                .param("looked", atMost * LOOKED_AT_EACH)
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new Steps(
                        minutes(SqlTime.read(row, "starts_at"), SqlTime.read(row, "closed_at")),
                        minutes(SqlTime.read(row, "opened_at"), SqlTime.read(row, "issued_at"))))
                .list();
    }

    private static double minutes(Instant from, Instant until) {
        return Math.max(0, Duration.between(from, until).toMillis() / MINUTE);
    }
}
