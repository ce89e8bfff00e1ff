package org.standclear.simulation;

import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What must hold at every moment, whatever came before. A report stops no arm: its run goes on, its release lapsed. */
final class StandingRules {

    /** Name, and a query that finds nothing while the rule holds. */
    private static final Map<String, String> RULES = Map.of(
            "one person at two cells",
            """
            select p.person, count(distinct p.booking) as bookings from (
                select operator_id as person, id as booking from bookings where state in ('RUNNING', 'STOPPED')
                union all
                select attendant_id, id from bookings where state in ('RUNNING', 'STOPPED') and attendant_id is not null
            ) p group by p.person having count(distinct p.booking) > 1""",
            "who attended a run released it later",
            """
            select r.id from signoff_releases r join signoff_releases e on e.booking_id = r.booking_id
            where e.used_at < r.issued_at and (e.operator_id = r.releaser_id or e.attendant_id = r.releaser_id
                or exists (select 1 from signoff_handovers h where h.release_id = e.id and h.from_person = r.releaser_id))
            """,
            "two runs on one cell",
            """
            select cell_id from bookings where state in ('RUNNING', 'STOPPED', 'FINISHED')
            group by cell_id having count(*) > 1""",
            "booking and run disagree",
            """
            select b.id, b.state, r.state as run_state from bookings b left join runs r on r.booking_id = b.id
            where b.state in ('RUNNING', 'STOPPED', 'FINISHED', 'CLOSED_OUT') and (r.id is null or r.state <> b.state)
            """,
            "running without a release in use",
            """
            select b.id from bookings b where b.state = 'RUNNING' and not exists (
                select 1 from signoff_releases r where r.booking_id = b.id and r.used_at is not null
                and (r.live = 1 and r.lapsed_at is null and r.operator_id = b.operator_id
                    and r.attendant_id = b.attendant_id
                    or r.lapse_rule = 'incident' and r.lapsed_at > r.used_at and not exists (
                        select 1 from signoff_releases n where n.booking_id = b.id and n.used_at > r.used_at)))
            """,
            "released without a release",
            """
            select b.id from bookings b where b.state = 'RELEASED' and (
                select count(*) from signoff_releases r where r.booking_id = b.id and r.used_at is null
                and r.lapsed_at is null) <> 1""",
            "claims overlap",
            """
            select one.id from booking_claims one join booking_claims other on other.subject = one.subject
            where other.id > one.id and other.starts_at < one.ends_at and one.starts_at < other.ends_at
            """,
            "a cell's state is not what its tags make of it",
            """
            select c.id, c.state from cells c where c.state <> coalesce((
                select case max(case t.kind when 'LOCKOUT' then 5 when 'OUT_OF_SERVICE' then 4 when 'HOLD' then 3
                        when 'TEST' then 2 else 1 end)
                    when 5 then 'LOCKED_OUT' when 4 then 'OUT_OF_SERVICE' when 3 then 'HELD' when 2 then 'UNDER_TEST'
                    when 1 then 'RESTRICTED' end
                from cell_tags t where t.cell_id = c.id and t.lifted_at is null), 'IN_SERVICE')
            """,
            "stops of a run are not those of its log",
            """
            select r.id from runs r where r.stops < (select count(*) from run_events e where e.run_id = r.id
                and e.kind in ('E_STOP_PRESS', 'PROTECTIVE_STOP'))""",
            "a waiver of lines that nobody said to have read",
            """
            select w.id, w.lines_read from signoff_waivers w where concat(' ', w.checks, ' ') like '% coverage %'
                and (w.lines_read is null or w.lines_read
                    <> 'I have read each unread line; none of them sets power, speed or override')""");

    private final Look look;

    StandingRules(Look look) {
        this.look = look;
    }

    List<String> faults(Instant now) throws SQLException {
        List<String> faults = new ArrayList<>();
        for (Map.Entry<String, String> rule : RULES.entrySet()) {
            faults.addAll(look.faults(rule.getKey(), rule.getValue()));
        }
        faults.addAll(look.faults("one person at two cells, one of them released", """
                select r.operator_id, r.attendant_id from signoff_releases r join bookings b on b.id = r.booking_id
                join bookings o on o.id <> b.id and o.state in ('RUNNING', 'STOPPED')
                where b.state = 'RELEASED' and r.used_at is null and r.lapsed_at is null and r.start_by > ?
                  and r.issued_at > (select max(s.used_at) from signoff_releases s where s.booking_id = o.id)
                  and (o.operator_id in (r.operator_id, r.attendant_id) or o.attendant_id in (r.operator_id, r.attendant_id))
                """, now));
        return faults;
    }
}
