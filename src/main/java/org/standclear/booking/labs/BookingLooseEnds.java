package org.standclear.booking.labs;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LooseEnds;
import org.standclear.platform.time.SqlTime;

/** Bookings that hold a slot which is not over, runs that nobody closed out, and searches for plans that go on. */
@Component
@Order(1)
class BookingLooseEnds implements LooseEnds {

    private final JdbcClient jdbc;
    private final Clock clock;

    BookingLooseEnds(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public List<LooseEnd> of(LabId lab) {
        List<LooseEnd> ends = new ArrayList<>();
        int ahead = ahead(lab);
        if (ahead > 0) {
            ends.add(new LooseEnd(
                    LooseEnd.count(ahead, "booking is", "bookings are")
                            + " ahead or not handed back in this lab. Staff cancel, move or close them out on its page Today.",
                    "/today?lab=" + lab,
                    false));
        }
        int searches = searches(lab);
        if (searches > 0) {
            ends.add(new LooseEnd(
                    LooseEnd.count(searches, "search for a plan goes", "searches for a plan go")
                            + " on. An instructor of the lab stops it on the page of its window, or it ends by itself.",
                    "/windows?lab=" + lab,
                    false));
        }
        return ends;
    }

    int ahead(LabId lab) {
        return jdbc.sql("""
                select count(*) from bookings where lab_id = :lab
                  and (ends_at > :now and state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED')
                    or state in ('RUNNING', 'STOPPED', 'FINISHED'))""")
                .param("lab", lab.value())
                .param("now", SqlTime.toSql(clock.instant()))
                .query(Integer.class)
                .single();
    }

    private int searches(LabId lab) {
        return jdbc.sql("""
                select count(*) from booking_searches s join booking_windows w on w.id = s.window_id
                where w.lab_id = :lab and s.state = 'RUNNING'""").param("lab", lab.value()).query(Integer.class).single();
    }
}
