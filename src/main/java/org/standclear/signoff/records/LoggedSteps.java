package org.standclear.signoff.records;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.BenchLog;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/**
 * Reads set-up times from the bench lists of bookings that led to a run: the first of them that the attendant signed. What
 * is first in a booking is told by its round, since a clock can be set back between two lists.
 */
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
    public List<Double> setUps(int atMost) {
        return jdbc.sql("""
                select b.starts_at, ready.signed_at
                from (select x.* from signoff_releases x
                    where x.used_at is not null and x.cell_id in (select c.id from cells c where c.lab_id = :lab)
                    order by x.issued_at desc fetch first :looked rows only) r
                join bookings b on b.id = r.booking_id
                join signoff_sheets released on released.id = r.sheet_id
                join signoff_sheets bench on bench.booking_id = r.booking_id and bench.list = 'bench'
                join signoff_signatures ready on ready.sheet_id = bench.id and ready.part = 'attendant'
                where not exists (select 1 from signoff_releases earlier
                    join signoff_sheets before on before.id = earlier.sheet_id
                    where earlier.booking_id = r.booking_id and earlier.used_at is not null
                        and before.round_number < released.round_number)
                and not exists (select 1 from signoff_sheets before
                    join signoff_signatures signed on signed.sheet_id = before.id and signed.part = 'attendant'
                    where before.booking_id = r.booking_id and before.list = 'bench'
                        and before.round_number < bench.round_number)
                order by r.issued_at desc, r.id fetch first :most rows only""")
                .param("most", atMost)
                .param("looked", atMost * LOOKED_AT_EACH)
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> minutes(SqlTime.read(row, "starts_at"), SqlTime.read(row, "signed_at")))
                .list();
    }

    private static double minutes(Instant from, Instant until) {
        return Math.max(0, Duration.between(from, until).toMillis() / MINUTE);
    }
}
