package org.standclear.simulation;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What must have held when a release was issued, and again when it was used. No two acts of a term share an instant, so
 * what stood at an instant can be told from the rows.
 */
final class ReleaseRules {

    /** Releases at the instants at which everything is asked: when issued, and when used. */
    private static final String MOMENTS = "(" + moments("issued_at") + " union all " + moments("used_at") + ") m";

    private static final Map<String, String> AT_EVERY_MOMENT = new LinkedHashMap<>();

    static {
        AT_EVERY_MOMENT.put("released on a cell that is not in service", """
            exists (select 1 from cell_tags t where t.cell_id = m.cell_id and t.kind <> 'RESTRICTION'
                and t.placed_at <= m.moment and (t.lifted_at is null or t.lifted_at > m.moment))""");
        AT_EVERY_MOMENT.put("released on a cell that was not tested that day", """
            not exists (select 1 from cell_day_tests d where d.cell_id = m.cell_id and d.passed
                and d.lab_date = cast(m.moment at time zone 'UTC' as date) and d.tested_at <= m.moment
                and not exists (select 1 from cell_day_tests later where later.cell_id = d.cell_id
                    and later.lab_date = d.lab_date and later.tested_at > d.tested_at and later.tested_at <= m.moment))""");
        AT_EVERY_MOMENT.put("released on a cell that was not closed out", """
            exists (select 1 from runs o where o.cell_id = m.cell_id and o.booking_id <> m.booking_id
                and o.started_at <= m.moment and (o.closed_out_at is null or o.closed_out_at > m.moment))""");
        AT_EVERY_MOMENT.put("released on a cell whose stop was not reset", """
            exists (select 1 from cell_stops s where s.cell_id = m.cell_id and s.happened_at <= m.moment
                and (s.reset_at is null or s.reset_at > m.moment))""");
        AT_EVERY_MOMENT.put("released on another version of the cell", """
            m.cell_version <> (select max(v.number) from cell_versions v where v.cell_id = m.cell_id
                and v.in_force_since <= m.moment)""");
        AT_EVERY_MOMENT.put("operator not authorised", authorised("OPERATOR", "operator_id"));
        AT_EVERY_MOMENT.put("e-stop attendant not authorised", authorised("ATTENDANT", "attendant_id"));
        AT_EVERY_MOMENT.put("releaser not on duty", """
            not exists (select 1 from duty_periods d where d.person_id = m.releaser_id and d.lab_id = m.lab_id
                and d.from_at <= m.moment
                and d.until_at > m.moment and (d.removed_at is null or d.removed_at > m.moment))""");
        AT_EVERY_MOMENT.put("released on a restricted cell with a student at the e-stop", """
            exists (select 1 from cell_tags t where t.cell_id = m.cell_id and t.kind = 'RESTRICTION'
                and t.placed_at <= m.moment and (t.lifted_at is null or t.lifted_at > m.moment))
            and not exists (select 1 from person_roles r where r.person_id = m.attendant_id and r.lab_id = m.lab_id
                and r.role in ('TECHNICIAN', 'INSTRUCTOR'))""");
        AT_EVERY_MOMENT.put("the program on the booking is another one", """
            not exists (select 1 from signoff_preparations p where p.booking_id = m.booking_id
                and p.revision_id = m.revision_id and p.cell_version = m.cell_version and p.checked_at <= m.moment
                and (p.within_limits or exists (select 1 from signoff_waivers w where w.booking_id = m.booking_id
                    and w.answer_id = p.answer_id and w.given_at <= m.moment and w.expires_at > m.moment
                    and (w.lines_read is not null or concat(' ', w.checks, ' ') not like '% coverage %')
                    and (w.used_at is null or w.used_at > m.moment or w.release_id = m.id))))""");
        // by its class of that moment: it is set anew, down and up again, and a hold is put on by a class that holds
        AT_EVERY_MOMENT.put("released while an incident keeps the cell", """
            exists (select 1 from incidents i join incident_steps h on h.incident_id = i.id and h.kind = 'CELL_HELD'
                where i.cell_id = m.cell_id and h.taken_at <= m.moment
                and coalesce((select f.class from incident_forms f where f.incident_id = i.id
                        and f.filled_at between h.taken_at and m.moment order by f.number desc fetch first 1 row only),
                    'CONTACT') in ('CONTACT', 'PROPERTY_DAMAGE', 'FIRST_AID', 'MEDICAL_TREATMENT', 'REPORTABLE')
                and (not exists (select 1 from incident_restarts a where a.incident_id = i.id
                        and a.approved_at between h.taken_at and m.moment)
                    or not exists (select 1 from cell_tags t where t.cell_id = i.cell_id and t.kind = 'HOLD'
                        and t.placed_at >= h.taken_at and t.lifted_at <= m.moment)))""");
        AT_EVERY_MOMENT.put("released with an overdue inspection or review", """
            exists (select 1 from cell_duty_intervals i where i.cell_id = m.cell_id and i.number = (
                    select max(n.number) from cell_duty_intervals n where n.cell_id = i.cell_id and n.duty = i.duty
                    and n.changed_at <= m.moment)
                and cast(m.moment at time zone 'UTC' as date) > coalesce(
                    (select max(d.done_on) + i.interval_days from cell_duties_done d
                        where d.cell_id = i.cell_id and d.duty = i.duty and d.recorded_at <= m.moment),
                    i.first_due_on,
                    cast(i.changed_at at time zone 'UTC' as date)))""");
        AT_EVERY_MOMENT.put("released while a tool is changed", """
            exists (select 1 from cell_tool_changes c where c.cell_id = m.cell_id and c.begun_at <= m.moment
                and (c.ended_at is null or c.ended_at > m.moment))""");
        AT_EVERY_MOMENT.put("the releaser released their own program", """
            exists (select 1 from program_revisions p where p.id = m.revision_id and p.author = m.releaser_id)""");
    }

    /** Who stands at the e-stop at that moment: who signed the bench list, or took over last. */
    private static String moments(String at) {
        return """
                select r.id, r.booking_id, r.cell_id, l.lab_id, r.cell_version, r.revision_id, r.operator_id, r.releaser_id,
                    r.%1$s as moment, coalesce((select h.to_person from signoff_handovers h where h.release_id = r.id
                        and h.signed_at <= r.%1$s order by h.signed_at desc fetch first 1 row only),
                        s.attendant_id) as attendant_id
                from signoff_releases r join signoff_sheets s on s.id = r.sheet_id join cells l on l.id = r.cell_id
                where r.%1$s is not null""".formatted(at);
    }

    private static String authorised(String duty, String person) {
        return """
                not exists (select 1 from authorisations a where a.person_id = m.%s and a.duty = '%s'
                    and a.lab_id = m.lab_id and (a.cell_id is null or a.cell_id = m.cell_id) and a.valid_from <= m.moment
                    and a.valid_until > m.moment and (a.revoked_at is null or a.revoked_at > m.moment))""".formatted(person, duty);
    }

    private static final String INCOMPLETE = """
            select r.id from signoff_releases r where r.issued_at > ? and not exists (
                select 1 from signoff_sheets s where s.id = r.sheet_id and s.list = 'bench' and s.outcome = 'DONE'
                  and s.booking_id = r.booking_id and s.cell_id = r.cell_id and s.revision_id = r.revision_id
                  and s.cell_version = r.cell_version and s.operator_id = r.operator_id and s.closed_at <= r.issued_at
                  and (s.attendant_id = r.attendant_id
                    or exists (select 1 from signoff_handovers h where h.release_id = r.id and h.to_person = r.attendant_id))
                  and (select count(*) from signoff_signatures g where g.sheet_id = s.id and g.agreed
                    and g.signed_at between s.opened_at and r.issued_at
                    and (g.part = 'operator' and g.signer = r.operator_id
                      or g.part = 'attendant' and g.signer = s.attendant_id
                      or g.part = 'releaser' and g.signer = r.releaser_id)) = 3)""";

    private static final String NO_SESSION = """
            select r.id from signoff_releases r join signoff_sheets b on b.id = r.sheet_id
            where r.issued_at > ? and not exists (
                select 1 from signoff_sheets s where s.booking_id = r.booking_id and s.list = 'session'
                  and s.outcome = 'DONE' and s.operator_id = b.operator_id and s.attendant_id = b.attendant_id
                  and (select count(distinct g.signer) from signoff_signatures g where g.sheet_id = s.id
                    and g.signer in (b.operator_id, b.attendant_id) and g.signed_at <= r.issued_at) = 2)""";

    private static final String SUSPENDED = """
            select r.id from signoff_releases r join signoff_handovers h on h.release_id = r.id
            where r.used_at > ? and h.left_at <= r.used_at and (h.signed_at is null or h.signed_at > r.used_at)""";

    private static final String TAKEN_OVER = """
            select h.id from signoff_handovers h join signoff_releases r on r.id = h.release_id
            where h.signed_at > ? and (h.to_person in (r.operator_id, r.releaser_id) or not exists (
                select 1 from signoff_sheets s join signoff_signatures g on g.sheet_id = s.id
                where s.id = h.sheet_id and s.list = 'handover' and s.outcome = 'DONE' and g.part = 'attendant'
                  and g.signer = h.to_person and g.signed_at <= h.signed_at)
              or not exists (select 1 from authorisations a where a.person_id = h.to_person and a.duty = 'ATTENDANT'
                and a.lab_id = (select l.lab_id from cells l where l.id = r.cell_id)
                and (a.cell_id is null or a.cell_id = r.cell_id) and a.valid_from <= h.signed_at
                and a.valid_until > h.signed_at and (a.revoked_at is null or a.revoked_at > h.signed_at)))""";

    private static final String USED_BADLY = """
            select e.id from run_events e left join signoff_releases r on r.id = e.release_id
            where e.kind = 'STARTED' and e.happened_at > ? and (r.id is null or r.booking_id <> e.booking_id
              or r.cell_id <> e.cell_id or r.used_at is null or r.used_at <> e.happened_at or r.used_at < r.issued_at
              or r.used_at > r.start_by or r.lapsed_at < r.used_at)""";

    private static final String USED_TWICE = """
            select release_id from run_events where kind = 'STARTED' group by release_id having count(*) > 1""";

    private static final String NOT_THREE = """
            select id from signoff_releases where issued_at > ? and (operator_id = attendant_id
              or operator_id = releaser_id or attendant_id = releaser_id)""";

    private static final String STARTED_WITHOUT = """
            select r.id from runs r where r.started_at > ? and not exists (
                select 1 from run_events e where e.run_id = r.id and e.kind = 'STARTED' and e.release_id is not null)""";

    private final Look look;
    private final Connection connection;

    ReleaseRules(Look look) {
        this.look = look;
        connection = look.connection();
    }

    List<String> faults(Instant since, Instant now) throws SQLException {
        List<String> faults = new ArrayList<>();
        faults.addAll(look.faults("started without a release that held", USED_BADLY, since));
        faults.addAll(look.faults("a release was used twice", USED_TWICE));
        faults.addAll(look.faults("started while suspended", SUSPENDED, since));
        faults.addAll(look.faults("took the e-stop over without a signature", TAKEN_OVER, since));
        faults.addAll(look.faults("a run without a start", STARTED_WITHOUT, since));
        String moments = "select m.id, m.moment from " + MOMENTS + " where m.moment > ? and m.moment <= ?";
        if (!look.changed("signoff_releases")
                || Rows.of(connection, moments, since, now).isEmpty()) {
            return faults;
        }
        for (Map.Entry<String, String> rule : AT_EVERY_MOMENT.entrySet()) {
            faults.addAll(Rows.faults(connection, rule.getKey(), moments + " and " + rule.getValue(), since, now));
        }
        faults.addAll(look.faults("released without three signatures", INCOMPLETE, since));
        faults.addAll(look.faults("released without a session list", NO_SESSION, since));
        faults.addAll(look.faults("operator, attendant and releaser are not three", NOT_THREE, since));
        return faults;
    }
}
