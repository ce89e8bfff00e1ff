package org.standclear.simulation;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Who holds what, who waits for what, what was promised to whom, and that nobody has more than their share. */
final class CalendarRules {

    private static final String GIVEN_UP = "('CANCELLED', 'LATE_CANCELLED', 'MISSED', 'MOVED_BY_STAFF')";

    private static final String CLAIM = """
            not exists (select 1 from booking_claims c where c.booking_id = b.id and c.kind = '%s'
                and c.subject = b.%s and c.starts_at = b.starts_at and c.ends_at = b.ends_at)""";

    /**
     * Name, and a query that finds nothing while the rule holds. Who asks for an instant is not asked about what was over by
     * then: that was looked at in its time, and is again when the term is over.
     */
    private static final Map<String, String> ALWAYS = new LinkedHashMap<>();

    static {
        ALWAYS.put("a booking does not hold what is its", """
                select b.id, b.state from bookings b where b.ends_at > ? and b.state not in %s and (%s or %s
                or b.changed_at < b.ends_at and b.attendant_id is not null and not exists (
                    select 1 from booking_claims c where c.booking_id = b.id and c.kind = 'ATTENDANT'
                    and c.subject = b.attendant_id and c.starts_at >= b.starts_at and c.ends_at = b.ends_at)
                or exists (select 1 from booking_claims c where c.booking_id = b.id and (
                    c.kind = 'ATTENDANT' and (b.attendant_id is null or c.subject <> b.attendant_id)
                    or c.kind = 'OPERATOR' and c.subject <> b.operator_id or c.kind = 'CELL' and c.subject <> b.cell_id)))
                """.formatted(
                        GIVEN_UP, CLAIM.formatted("CELL", "cell_id"), CLAIM.formatted("OPERATOR", "operator_id")));
        ALWAYS.put("what is over still holds something", """
                select c.id, c.kind from booking_claims c left join bookings b on b.id = c.booking_id
                left join booking_closures k on k.id = c.closure_id left join booking_offers o on o.id = c.offer_id
                where c.ends_at > ?
                and (b.state in %s or k.removed_at is not null or o.state <> 'OPEN')""".formatted(GIVEN_UP));
        ALWAYS.put("a cell kept for staff is not held", """
                select k.id from booking_closures k where k.ends_at > ? and k.removed_at is null and not exists (
                    select 1 from booking_claims c where c.closure_id = k.id and c.subject = k.cell_id
                    and c.starts_at = k.starts_at and c.ends_at = k.ends_at)""");
        ALWAYS.put("a thing of two labs", """
                select b.id from bookings b join cells c on c.id = b.cell_id where b.ends_at > ? and b.lab_id <> c.lab_id union all
                select w.id from booking_waits w join cells c on c.id = w.cell_id where w.lab_id <> c.lab_id union all
                select i.id from incidents i join cells c on c.id = i.cell_id where i.lab_id <> c.lab_id union all
                select k.id from booking_closures k join cells c on c.id = k.cell_id where k.lab_id <> c.lab_id""");
        ALWAYS.put("two offers for one wait", """
                select wait_id from booking_offers where state = 'OPEN' group by wait_id having count(*) > 1""");
        ALWAYS.put("an offer to somebody who does not wait", """
                select o.id from booking_offers o join booking_waits w on w.id = o.wait_id
                where o.person_id <> w.person_id or o.state = 'OPEN' and w.ended_at is not null
                  or o.ends_at > w.until_at or o.starts_at < w.from_at or o.cell_id <> w.cell_id""");
        ALWAYS.put("an offer was taken and nothing is booked", """
                select o.id from booking_offers o where o.ends_at > ? and o.state = 'TAKEN' and not exists (select 1 from bookings b
                    where b.operator_id = o.person_id and b.cell_id = o.cell_id and b.starts_at = o.starts_at
                    and b.ends_at = o.ends_at and b.made_at = o.decided_at)""");
        ALWAYS.put("a wait ended with a booking that nobody offered", """
                select w.id from booking_waits w where w.ended_how = 'BOOKED' and not exists (
                    select 1 from booking_offers o where o.wait_id = w.id and o.state = 'TAKEN')""");
        ALWAYS.put("an offer that nobody was told of", """
                select o.id from booking_offers o where o.ends_at > ? and not exists (select 1 from messages m
                    where m.once_key = 'offer:' || cast(o.id as varchar) and m.person_id = o.person_id)""");
        ALWAYS.put("moved without a word", """
                select b.id from bookings b where b.ends_at > ? and b.state = 'MOVED_BY_STAFF' and not exists (select 1 from messages m
                    where m.person_id = b.operator_id and m.created_at = b.changed_at)""");
        ALWAYS.put("somebody moved in bulk has lost a turn", """
                select m.bulk_id, m.number from booking_bulk_moved m join booking_bulk_moves k on k.id = m.bulk_id
                join bookings w on w.id = m.was_booking left join bookings n on n.id = m.now_booking
                where w.ends_at > ? and (w.state <> 'MOVED_BY_STAFF' or n.operator_id <> w.operator_id
                or n.starts_at < w.starts_at or n.cell_id = w.cell_id or n.id is null
                and (k.undone_at is null or k.undone_at >= w.starts_at or m.stays) and not exists (
                    select 1 from booking_make_ups u where u.lost_booking = w.id and u.person_id = w.operator_id))""");
        ALWAYS.put("a wait of another move ended with the one undone", """
                select w.id from booking_waits w join booking_bulk_moves k on k.undone_at = w.ended_at
                where w.ended_how = 'LEFT' and w.goes_first and w.joined_at <> k.moved_at""");
        ALWAYS.put("a make-up that is somebody else's", """
                select u.id from booking_make_ups u left join bookings b on b.id = u.used_by
                left join bookings l on l.id = u.lost_booking where b.operator_id <> u.person_id
                or l.operator_id <> u.person_id or b.outside_quota = false
                or u.withdrawn_at is not null and b.state not in ('CANCELLED', 'MOVED_BY_STAFF')""");
        ALWAYS.put("two make-ups for one booking", """
                select used_by from booking_make_ups where used_by is not null group by used_by having count(*) > 1""");
        ALWAYS.put("a make-up for nothing", """
                select u.id from booking_make_ups u left join bookings b on b.id = u.used_by
                where u.lost_booking is not null and u.withdrawn_at is null
                and (u.used_by is null or b.state in ('CANCELLED', 'MOVED_BY_STAFF'))
                and not exists (select 1 from booking_excuses e where e.booking_id = u.lost_booking)
                and not exists (select 1 from run_credits c where c.spent_for = u.lost_booking)
                and not exists (select 1 from booking_bulk_moved m join booking_bulk_moves k on k.id = m.bulk_id
                    join bookings w on w.id = m.was_booking where w.id = u.lost_booking and m.now_booking is null
                    and (k.undone_at is null or k.undone_at >= w.starts_at or m.stays))""");
        ALWAYS.put("credited with more than the slot", """
                select b.id from bookings b join run_credits c on c.booking_id = b.id where c.person_id <> b.operator_id
                group by b.id union all
                select b.id from bookings b join run_credits c on c.booking_id = b.id group by b.id, b.starts_at, b.ends_at
                having sum(c.minutes) * 60 > extract(epoch from b.ends_at) - extract(epoch from b.starts_at)""");
        ALWAYS.put("minutes went into a make-up that is not there", """
                select c.id from run_credits c where c.spent_for is not null and not exists (
                    select 1 from booking_make_ups u where u.lost_booking = c.spent_for and u.person_id = c.person_id)""");
    }

    /** Until somebody is told that it is over, an offer keeps the slot and the person. */
    private static final String OFFER_HOLDS_NOTHING = """
            select o.id from booking_offers o where o.state = 'OPEN' and o.until_at > ? and (
                select count(*) from booking_claims c where c.offer_id = o.id and c.starts_at = o.starts_at
                and c.ends_at = o.ends_at and (c.kind = 'CELL' and c.subject = o.cell_id
                    or c.kind = 'OPERATOR' and c.subject = o.person_id)) <> 2""";

    /** Two ahead (05, section 1); who did not come in the six minutes of grace holds nothing any more. */
    private static final String TOO_MANY_AHEAD = """
            select b.id from bookings b where b.made_at > ? and b.made_by = b.operator_id and not b.outside_quota and (
                select count(*) from bookings o where o.operator_id = b.operator_id and not o.outside_quota
                and o.ends_at > b.made_at and o.made_at <= b.made_at
                and o.state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED', 'RUNNING', 'STOPPED', 'FINISHED')
                and not (o.checked_in_at is null and o.starts_at + interval '6' minute <= b.made_at)) > 2""";

    private final Look look;

    CalendarRules(Look look) {
        this.look = look;
    }

    List<String> faults(Instant since, Instant now) throws SQLException {
        List<String> faults = new ArrayList<>();
        Instant over = since.equals(Instant.EPOCH)
                ? since
                : now.minus(Duration.ofDays(1)).truncatedTo(ChronoUnit.DAYS);
        for (Map.Entry<String, String> rule : ALWAYS.entrySet()) {
            faults.addAll(
                    rule.getValue().contains("?")
                            ? look.faults(rule.getKey(), rule.getValue(), over)
                            : look.faults(rule.getKey(), rule.getValue()));
        }
        faults.addAll(look.faults("an offer holds nothing", OFFER_HOLDS_NOTHING, now));
        faults.addAll(look.faults("more bookings ahead than allowed", TOO_MANY_AHEAD, since));
        return faults;
    }
}
