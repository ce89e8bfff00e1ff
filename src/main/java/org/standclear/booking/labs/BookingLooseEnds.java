package org.standclear.booking.labs;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingState;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.lab.LooseEnds;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/**
 * Bookings that hold a slot which is not over, runs that nobody closed out, windows that have no plan yet, and searches for
 * plans that go on.
 */
@Component
@Order(1)
class BookingLooseEnds implements LooseEnds {

    private static final String AHEAD = """
            lab_id = :lab and (ends_at > :now and state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED')
              or state in ('RUNNING', 'STOPPED', 'FINISHED'))""";

    private final JdbcClient jdbc;
    private final Labs labs;
    private final LabTime labTime;
    private final Clock clock;

    BookingLooseEnds(JdbcClient jdbc, Labs labs, LabTime labTime, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.labTime = labTime;
        this.clock = clock;
    }

    @Override
    public List<LooseEnd> of(LabId lab) {
        return LabScope.in(lab, () -> {
            List<LooseEnd> ends = new ArrayList<>();
            int ahead = ahead(lab);
            if (ahead > 0) {
                ends.add(new LooseEnd(
                        LooseEnd.count(ahead, "booking is", "bookings are")
                                + " ahead or not handed back in this lab. Staff cancel, move or close them out on its page Today.",
                        firstAhead(lab, ahead),
                        EnumSet.of(Role.TECHNICIAN, Role.INSTRUCTOR),
                        "/today?lab=" + lab,
                        false));
            }
            ends.addAll(undecided(lab));
            int searches = searches(lab);
            if (searches > 0) {
                ends.add(new LooseEnd(
                        LooseEnd.count(searches, "search for a plan goes", "searches for a plan go")
                                + " on. An instructor of the lab stops it on the page of its window, or it ends by itself.",
                        List.of(),
                        EnumSet.of(Role.INSTRUCTOR),
                        "/windows?lab=" + lab,
                        false));
            }
            return ends;
        });
    }

    int ahead(LabId lab) {
        return jdbc.sql("select count(*) from bookings where " + AHEAD)
                .param("lab", lab.value())
                .param("now", SqlTime.toSql(clock.instant()))
                .query(Integer.class)
                .single();
    }

    /** Cell, time and state of the first ones; whose they are is for the lab's staff. */
    private List<String> firstAhead(LabId lab, int all) {
        List<String> lines =
                new ArrayList<>(jdbc.sql("""
                select (select name from cells where cells.id = bookings.cell_id) as cell, starts_at, ends_at, state
                from bookings where\s""" + AHEAD + " order by starts_at, id fetch first :most rows only")
                        .param("lab", lab.value())
                        .param("now", SqlTime.toSql(clock.instant()))
                        .param("most", LooseEnd.PARTS_SHOWN)
                        .query((row, number) -> row.getString("cell") + ", "
                                + labTime.full(SqlTime.read(row, "starts_at")) + ", "
                                + BookingState.valueOf(row.getString("state")).words())
                        .list());
        if (all > lines.size()) {
            lines.add("and " + (all - lines.size()) + " more");
        }
        return lines;
    }

    /** Windows whose days are not over and that have neither a plan nor been closed. */
    private List<LooseEnd> undecided(LabId lab) {
        LocalDate today =
                clock.instant().atZone(labs.find(lab).orElseThrow().zone()).toLocalDate();
        Set<Role> actors = EnumSet.of(Role.INSTRUCTOR);
        return jdbc.sql("""
                select w.id, w.title, w.first_day, w.last_day,
                    (select count(*) from booking_turn_requests r where r.window_id = w.id) as asked
                from booking_windows w
                where w.lab_id = :lab and w.last_day >= :today and w.accepted_search is null and w.closed_at is null
                order by w.first_day, w.id""")
                .param("lab", lab.value())
                .param("today", today)
                .query((row, number) -> new LooseEnd(
                        "The window \"" + row.getString("title")
                                + "\" has no plan. An instructor closes it on its page.",
                        List.of(
                                labTime.day(row.getObject("first_day", LocalDate.class)) + " to "
                                        + labTime.day(row.getObject("last_day", LocalDate.class)),
                                LooseEnd.count(row.getInt("asked"), "person has asked", "people have asked")),
                        actors,
                        "/windows/" + row.getObject("id", UUID.class),
                        false))
                .list();
    }

    private int searches(LabId lab) {
        return jdbc.sql("""
                select count(*) from booking_searches s join booking_windows w on w.id = s.window_id
                where w.lab_id = :lab and s.state = 'RUNNING'""").param("lab", lab.value()).query(Integer.class).single();
    }
}
