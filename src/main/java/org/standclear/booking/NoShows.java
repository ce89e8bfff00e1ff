package org.standclear.booking;

import java.time.Clock;
import java.time.Instant;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/**
 * How many of the lab's latest bookings nobody came to. Counted are slots that are over and whose booking stood at the start:
 * not what was given up before or moved by staff, and not what staff excused.
 */
@Service
public class NoShows {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Clock clock;

    NoShows(JdbcClient jdbc, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.clock = clock;
    }

    /**
     * What was counted.
     *
     * @param missed to which nobody came
     * @param bookings in all, the missed ones among them
     */
    public record Counted(int missed, int bookings) {

        public Counted {
            if (missed < 0 || missed > bookings) {
                throw new IllegalArgumentException("missed are some of the bookings");
            }
        }

        /** The share that was missed, 0 to 1. */
        public double share() {
            return bookings == 0 ? 0 : (double) missed / bookings;
        }
    }

    /**
     * The latest by the end of their slots, at most that many. Who never checked in did not come, written down or not. H2
     * reads an index backwards when all that is sorted by is backwards, the lab too.
     */
    @Transactional(readOnly = true)
    public Counted latest(int atMost) {
        Instant now = clock.instant();
        return jdbc.sql("""
                select count(*) as bookings, coalesce(sum(case when x.checked_in_at is null then 1 else 0 end), 0) as missed
                from (select b.checked_in_at from bookings b
                    where b.lab_id = :lab and b.ends_at <= :now
                        and b.state not in ('CANCELLED', 'LATE_CANCELLED', 'MOVED_BY_STAFF')
                        and not exists (select 1 from booking_excuses e where e.booking_id = b.id)
                    order by b.lab_id desc, b.ends_at desc fetch first :most rows only) x""")
                .param("lab", labs.theLab().id().value())
                .param("now", SqlTime.toSql(now))
                .param("most", atMost)
                .query((row, number) -> new Counted(row.getInt("missed"), row.getInt("bookings")))
                .single();
    }
}
