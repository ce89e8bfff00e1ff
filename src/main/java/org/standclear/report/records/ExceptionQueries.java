package org.standclear.report.records;

import java.util.List;

/** The rules by which exceptions are chosen, each with the query that finds what it may be about. */
final class ExceptionQueries {

    /** How the measure of a row is taken, and when it is shown. */
    enum Measure {
        /** The number itself, shown from the threshold on. */
        NUMBER,
        /** Minutes between two instants, or until now, shown from the threshold on. */
        MINUTES,
        /** Days of the lab from the date in {@code at} until today, shown from the threshold on. */
        DAYS,
        /** Hours between two instants, or until now, shown from the threshold on. */
        HOURS,
        /** Seconds between two instants, shown below the threshold. */
        SECONDS_BELOW,
        /** One in so many, drawn by the hash of the id. */
        ONE_IN
    }

    /**
     * A rule.
     *
     * @param says with a place for the cell, the time and the measure
     * @param sql columns {@code id}, {@code target}, {@code link}, {@code cell}, {@code at}, {@code until_at}, {@code n}
     */
    record Query(
            String code,
            String title,
            String reason,
            int threshold,
            String unit,
            Measure measure,
            String says,
            String sql) {}

    private static final String SIGNED = """
            select r.id, r.booking_id as target, 'bookings' as link, c.name as cell, min(g.signed_at) as at,
                max(g.signed_at) as until_at, 0 as n
            from signoff_releases r join signoff_sheets s on s.id = r.sheet_id join signoff_signatures g on g.sheet_id = s.id
            join cells c on c.id = r.cell_id and c.lab_id = :lab
            where r.issued_at >= :from and r.issued_at < :until and %s group by r.id, r.booking_id, c.name""";

    /** Lists one after another on a cell with the same answers; the fingerprint differs from program to program. */
    private static final String ALIKE = """
            with told as (
                select s.id, s.booking_id, s.cell_id, s.closed_at,
                    string_agg(concat(g.part, ' ', a.item, ' ', a.field, ' ', a.answer), '; '
                        order by g.part, a.item, a.field) as answers
                from cells l join signoff_sheets s on s.cell_id = l.id join signoff_signatures g on g.sheet_id = s.id
                join signoff_answers a on a.signature_id = g.id
                where l.lab_id = :lab and s.list = 'bench' and s.outcome = 'DONE' and not s.brief and a.field <> 'fingerprint'
                    and s.closed_at >= :from and s.closed_at < :until
                group by s.id, s.booking_id, s.cell_id, s.closed_at),
            rows_of as (
                select t.*, row_number() over (partition by t.cell_id order by t.closed_at, t.id)
                    - row_number() over (partition by t.cell_id, t.answers order by t.closed_at, t.id) as in_row
                from told t),
            counted as (
                select r.*, count(*) over (partition by r.cell_id, r.answers, r.in_row) as n,
                    row_number() over (partition by r.cell_id, r.answers, r.in_row order by r.closed_at, r.id) as place
                from rows_of r)
            select k.id as id, k.booking_id as target, 'bookings' as link, c.name as cell, k.closed_at as at,
                cast(null as timestamp with time zone) as until_at, k.n as n
            from counted k join cells c on c.id = k.cell_id where k.place = 1""";

    /** In the order of their weight. */
    static final List<Query> ALL = List.of(
            new Query(
                    "action-overdue",
                    "Corrective action overdue",
                    "An agreed action after an incident waits.",
                    1,
                    "days",
                    Measure.DAYS,
                    "%s, due %s: a corrective action is %d days past its date.",
                    """
                    select a.id, i.id as target, 'incidents' as link, c.name as cell, a.due_on as at,
                        cast(null as timestamp with time zone) as until_at, 0 as n
                    from incident_actions a join incidents i on i.id = a.incident_id join cells c on c.id = i.cell_id and c.lab_id = :lab
                    where a.done_at is null and a.due_on < :last and a.added_at < :until"""),
            new Query(
                    "form-overdue",
                    "Incident form overdue",
                    "Memory fades within hours.",
                    1,
                    "hours",
                    Measure.HOURS,
                    "%s, incident of %s: its form is %d hours past its time.",
                    """
                    select i.id, i.id as target, 'incidents' as link, c.name as cell, i.form_due_at as at, i.form_done_at as until_at, 0 as n
                    from incidents i join cells c on c.id = i.cell_id and c.lab_id = :lab
                    where i.form_due_at >= :from and i.form_due_at < :until"""),
            new Query(
                    "not-closed-out",
                    "Run without close-out",
                    "The close-out is the step everyone skips.",
                    30,
                    "minutes",
                    Measure.MINUTES,
                    "%s, run ended %s: handed back %d min later, or not yet.",
                    """
                    select r.id, r.id as target, 'runs' as link, c.name as cell, r.ended_at as at, r.closed_out_at as until_at, 0 as n
                    from runs r join cells c on c.id = r.cell_id and c.lab_id = :lab where r.ended_at >= :from and r.ended_at < :until"""),
            new Query(
                    "waived",
                    "Waiver given",
                    "A failed check was set aside for one run.",
                    1,
                    "waivers",
                    Measure.NUMBER,
                    "%s, %s: a failed check was waived; %d waiver on this booking.",
                    """
                    select w.booking_id as id, w.booking_id as target, 'bookings' as link, c.name as cell, max(w.given_at) as at,
                        cast(null as timestamp with time zone) as until_at, count(*) as n
                    from signoff_waivers w join cells c on c.lab_id = :lab and c.id = (select b.cell_id from bookings b where b.id = w.booking_id)
                    where w.given_at >= :from and w.given_at < :until group by w.booking_id, c.name"""),
            new Query(
                    "found-overridden",
                    "Found value overridden",
                    "The bench agreed with what is declared, the file or the record says otherwise.",
                    1,
                    "overrides",
                    Measure.NUMBER,
                    "%s, %s: what was found was set aside and it ran by what was declared or written; %d times.",
                    """
                    select w.booking_id as id, w.booking_id as target, 'bookings' as link, c.name as cell, max(w.used_at) as at,
                        cast(null as timestamp with time zone) as until_at, count(*) as n
                    from signoff_waivers w join cells c on c.lab_id = :lab and c.id = (select b.cell_id from bookings b where b.id = w.booking_id)
                    where w.used_at >= :from and w.used_at < :until
                    and concat(' ', w.checks, ' ') like '% declared-matches-found %' group by w.booking_id, c.name
                    union all
                    select p.id, p.cell_id as target, 'cells' as link, c.name as cell, p.written_at as at,
                        cast(null as timestamp with time zone) as until_at, 1 as n
                    from signoff_paper_cards p join cells c on c.id = p.cell_id and c.lab_id = :lab
                    where p.written_at >= :from and p.written_at < :until and (p.power <> 'reduced'
                        or lower(trim(p.tool_code)) <> (select lower(trim(v.fitted_tool)) from cell_versions v
                            where v.cell_id = p.cell_id and v.in_force_since <= p.written_at
                            order by v.in_force_since desc, v.number desc fetch first 1 row only))"""),
            new Query(
                    "held-long",
                    "Held longer than usual",
                    "Does somebody see to it that it comes back?",
                    48,
                    "hours",
                    Measure.HOURS,
                    "%s, held or tagged since %s: %d hours.",
                    """
                    select t.id, c.id as target, 'cells' as link, c.name as cell, t.placed_at as at, t.lifted_at as until_at, 0 as n
                    from cell_tags t join cells c on c.id = t.cell_id and c.lab_id = :lab where t.kind <> 'RESTRICTION'
                    and t.placed_at < :until and (t.lifted_at is null or t.lifted_at >= :from)"""),
            new Query(
                    "lapsed-often",
                    "Lapsed often",
                    "What keeps lapsing is not understood, or the rule does not fit.",
                    3,
                    "lapses",
                    Measure.NUMBER,
                    "%s, %s: %d lapses on one booking.",
                    """
                    select l.booking_id as id, l.booking_id as target, 'bookings' as link, c.name as cell, max(l.lapsed_at) as at,
                        cast(null as timestamp with time zone) as until_at, count(*) as n
                    from signoff_lapses l join cells c on c.lab_id = :lab and c.id = (select b.cell_id from bookings b where b.id = l.booking_id)
                    where l.lapsed_at >= :from and l.lapsed_at < :until group by l.booking_id, c.name"""),
            new Query(
                    "stopped-often",
                    "Stopped more than once",
                    "A second stop in a slot deserves a look.",
                    2,
                    "stops",
                    Measure.NUMBER,
                    "%s, run of %s: %d stops.",
                    """
                    select r.id, r.id as target, 'runs' as link, c.name as cell, r.started_at as at,
                        cast(null as timestamp with time zone) as until_at, r.stops as n
                    from runs r join cells c on c.id = r.cell_id and c.lab_id = :lab where r.started_at >= :from and r.started_at < :until"""),
            new Query(
                    "read-again",
                    "Answers read again",
                    "Display, declaration and record did not say the same.",
                    2,
                    "answers",
                    Measure.NUMBER,
                    "%s, %s: %d answers disagreed on one booking.",
                    """
                    select d.booking_id as id, d.booking_id as target, 'bookings' as link, c.name as cell, max(d.answered_at) as at,
                        cast(null as timestamp with time zone) as until_at, count(*) as n
                    from signoff_disagreements d join cells c on c.lab_id = :lab and c.id = (select b.cell_id from bookings b where b.id = d.booking_id)
                    where d.answered_at >= :from and d.answered_at < :until group by d.booking_id, c.name"""),
            new Query(
                    "signed-quickly",
                    "Unusually quick",
                    "From the first signature to the last; what the operator read before it is not in it.",
                    30,
                    "seconds",
                    Measure.SECONDS_BELOW,
                    "%s, %s: %d s from the first signature on the full bench list to the last.",
                    SIGNED.formatted("not s.brief")),
            new Query(
                    "released-at-once",
                    "Releaser at once",
                    "The display is read a second time, blind.",
                    5,
                    "seconds",
                    Measure.SECONDS_BELOW,
                    "%s, %s: the releaser signed %d s after the e-stop attendant.",
                    SIGNED.formatted("g.part in ('attendant', 'releaser')")),
            new Query(
                    "signed-alike",
                    "Answered alike",
                    "Lists in a row with the same answers may have been copied and not read; or nothing changed.",
                    5,
                    "lists",
                    Measure.NUMBER,
                    "%s, from %s on: %d full bench lists in a row were answered word for word alike.",
                    ALIKE),
            new Query(
                    "spot-audit",
                    "Spot audit",
                    "One in twenty, drawn by lot: look at it whole, ask how it went.",
                    20,
                    "in one",
                    Measure.ONE_IN,
                    "%s, %s: drawn by lot. Who held the e-stop, what was read, what would they do otherwise? (one in %d)",
                    """
                    select r.id, r.booking_id as target, 'bookings' as link, c.name as cell, r.issued_at as at,
                        cast(null as timestamp with time zone) as until_at, 0 as n
                    from signoff_releases r join cells c on c.id = r.cell_id and c.lab_id = :lab
                    where r.used_at is not null and r.issued_at >= :from and r.issued_at < :until"""));

    private ExceptionQueries() {}
}
