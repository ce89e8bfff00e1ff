package org.standclear.booking.labs;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.labs.LabRegister.Outcome;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.lab.LooseEnds.LooseEnd;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/**
 * Puts a lab into another time zone, while nothing is agreed for its future: slots that people hold would change their names
 * and fall beside the grid. The caller has checked that an administrator asks.
 */
@Service
@Transactional
public class ZoneChange {

    private static final int LONGEST_REASON = 400;
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    private final JdbcClient jdbc;
    private final Labs labs;
    private final BookingLooseEnds bookings;
    private final Trail trail;
    private final Clock clock;

    ZoneChange(JdbcClient jdbc, Labs labs, BookingLooseEnds bookings, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.bookings = bookings;
        this.trail = trail;
        this.clock = clock;
    }

    /** What stands against any change now, and what to do about it; empty when the zone may change. */
    @Transactional(readOnly = true)
    public List<String> standing(Lab lab) {
        List<String> standing = new ArrayList<>();
        int ahead = bookings.ahead(lab.id());
        if (ahead > 0) {
            standing.add(LooseEnd.count(ahead, "booking is", "bookings are")
                    + " ahead or not handed back. Wait until they are over, or cancel or move them first.");
        }
        int waits = count(
                "select count(*) from booking_waits where lab_id = :lab and ended_at is null and until_at > :now", lab);
        if (waits > 0) {
            standing.add(LooseEnd.count(waits, "person waits", "people wait")
                    + " for slots ahead. Wait until these are over, or ask them to leave the waiting list.");
        }
        lastWindowDay(lab)
                .ifPresent(day -> standing.add("Slots are shared out in windows until " + day
                        + ". Change the zone when the last one is over, or close windows that have no plan."));
        return standing;
    }

    private Optional<LocalDate> lastWindowDay(Lab lab) {
        LocalDate today = clock.instant().atZone(lab.zone()).toLocalDate();
        return jdbc.sql(
                        "select last_day from booking_windows where lab_id = :lab and closed_at is null order by last_day desc"
                                + " fetch first 1 rows only")
                .param("lab", lab.id().value())
                .query(LocalDate.class)
                .optional()
                .filter(day -> !day.isBefore(today));
    }

    /** What a change to that zone would do to the lab, a sentence each. */
    @Transactional(readOnly = true)
    public List<String> effects(Lab lab, ZoneId to) {
        Instant now = clock.instant();
        List<String> effects = new ArrayList<>();
        effects.add("It is " + at(now, lab.zone()) + " by the lab’s clock; it would be " + at(now, to) + ".");
        effects.add(
                "Opening hours, days with hours of their own and the cells’ slots keep their clock times, so they come"
                        + " at other instants: the lab opens by the new clock.");
        note(effects, lab, to, "staff block", "staff blocks", """
                select min(starts_at) as first_at, count(*) as n from booking_closures
                where lab_id = :lab and removed_at is null and ends_at > :now""");
        note(effects, lab, to, "period on duty", "periods on duty", """
                select min(from_at) as first_at, count(*) as n from duty_periods
                where lab_id = :lab and removed_at is null and until_at > :now""");
        note(effects, lab, to, "due date", "due dates", """
                select min(d.due_at) as first_at, count(*) as n from assignment_due_dates d
                join assignments a on a.id = d.assignment_id join courses c on c.id = a.course_id
                where c.lab_id = :lab and d.due_at > :now""");
        effects.add(
                "What is past keeps its instants and is shown by the new clock, in pages, reports and calendar feeds."
                        + " The record’s entries and their hashes stay as they are.");
        return effects;
    }

    private void note(List<String> effects, Lab lab, ZoneId to, String one, String more, String sql) {
        jdbc.sql(sql)
                .param("lab", lab.id().value())
                .param("now", SqlTime.toSql(clock.instant()))
                .query(row -> {
                    int number = row.getInt("n");
                    if (number > 0) {
                        Instant first = SqlTime.read(row, "first_at");
                        effects.add(LooseEnd.count(number, one + " ahead keeps its", more + " ahead keep their")
                                + " instant and another clock time: " + at(first, lab.zone()) + " becomes "
                                + at(first, to) + ". Look at them afterwards.");
                    }
                });
    }

    /**
     * Changes it, with why.
     *
     * @param seen the zone that the page showed as the lab's
     */
    public Outcome change(LabId id, ZoneId seen, ZoneId to, String reason, PersonId by) {
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            return new Outcome.Refused("reason", refused.says());
        }
        // asked under the lock: of two who change the lab at once, the second sees what the first wrote
        Lab lab = labs.lock(id).orElseThrow();
        if (!lab.zone().equals(seen)) {
            return new Outcome.Refused("", "The lab’s zone is " + lab.zone() + " by now. Look again.");
        }
        if (lab.zone().equals(to)) {
            return new Outcome.Refused("to", "The lab is in " + to + " already.");
        }
        List<String> standing = standing(lab);
        if (!standing.isEmpty()) {
            return new Outcome.Refused("", standing.get(0));
        }
        labs.change(lab.in(to));
        trail.append(TrailEntry.of(
                        id,
                        "people.lab-zone-changed",
                        id,
                        by,
                        "Put the lab " + lab.name() + " from " + lab.zone() + " into " + to + ": "
                                + ((PlainText.Fine) PlainText.check(reason, LONGEST_REASON)).text())
                .with("before", lab.zone())
                .with("after", to));
        return new Outcome.Done(id);
    }

    private static String at(Instant instant, ZoneId zone) {
        return MOMENT.format(instant.atZone(zone));
    }

    private int count(String sql, Lab lab) {
        return jdbc.sql(sql)
                .param("lab", lab.id().value())
                .param("now", SqlTime.toSql(clock.instant()))
                .query(Integer.class)
                .single();
    }
}
