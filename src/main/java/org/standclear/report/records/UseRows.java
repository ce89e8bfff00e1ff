package org.standclear.report.records;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.TermReport.Action;
import org.standclear.report.TermReport.Authorised;
import org.standclear.report.TermReport.CellUse;
import org.standclear.report.TermReport.Fairness;

/** How cells, authorisations and slots were used in a term. */
@Repository
class UseRows {

    private static final int SOON_DAYS = 30;

    private final JdbcClient jdbc;

    UseRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<CellUse> cells(Days days) {
        // starts and days are gathered once for all cells: asked for each cell, the term's runs were read as often
        return days.ask(jdbc, """
                with started as (
                    select e.cell_id, count(*) as n from run_events e
                    where e.kind = 'STARTED' and e.happened_at >= :from and e.happened_at < :until group by e.cell_id),
                  used as (
                    select distinct r.cell_id, r.lab_date from runs r where r.lab_date between :first and :last)
                select c.name,
                  coalesce((select s.n from started s where s.cell_id = c.id), 0) as starts,
                  (select count(*) from used u where u.cell_id = c.id) as days_in_use,
                  (select count(*) from cell_day_tests d where d.cell_id = c.id and d.passed
                    and d.lab_date between :first and :last) as passed,
                  (select count(*) from cell_day_tests d where d.cell_id = c.id and not d.passed
                    and d.lab_date between :first and :last) as failed,
                  (select count(*) from used u where u.cell_id = c.id and not exists (select 1 from cell_day_tests d
                      where d.cell_id = c.id and d.lab_date = u.lab_date and d.passed)) as untested,
                  (select count(*) from cell_tags t where t.cell_id = c.id and t.kind = 'HOLD'
                    and t.placed_at >= :from and t.placed_at < :until) as holds,
                  (select count(*) from cell_tags t where t.cell_id = c.id and t.kind = 'OUT_OF_SERVICE'
                    and t.placed_at >= :from and t.placed_at < :until) as tags,
                  (select count(*) from cell_versions v where v.cell_id = c.id
                    and v.in_force_since >= :from and v.in_force_since < :until) as versions
                from cells c where c.lab_id = :lab order by c.name""")
                .query((row, number) -> new CellUse(
                        row.getString("name"),
                        row.getInt("starts"),
                        row.getInt("days_in_use"),
                        row.getInt("passed"),
                        row.getInt("failed"),
                        row.getInt("untested"),
                        row.getInt("holds"),
                        row.getInt("tags"),
                        row.getInt("versions")))
                .list();
    }

    List<Authorised> authorisations(Days days) {
        return List.of(authorised(days, "OPERATOR", "operator"), authorised(days, "ATTENDANT", "e-stop attendant"));
    }

    private Authorised authorised(Days days, String duty, String words) {
        String of = "select count(*) from authorisations where lab_id = :lab and duty = '" + duty + "' and ";
        String standing =
                "valid_from < :until and valid_until >= :until and (revoked_at is null or revoked_at >= :until)";
        return new Authorised(
                words,
                days.count(jdbc, of + standing),
                days.count(jdbc, of + "granted_at >= :from and granted_at < :until"),
                days.count(jdbc, of + "revoked_at >= :from and revoked_at < :until"),
                jdbc.sql(of + standing + " and valid_until < :soon")
                        .param("lab", days.lab().value())
                        .param("until", SqlTime.toSql(days.until()))
                        .param("soon", SqlTime.toSql(days.until().plus(java.time.Duration.ofDays(SOON_DAYS))))
                        .query(Integer.class)
                        .single());
    }

    /** Actions that were added in the term, or were still open when it began. */
    List<Action> actions(Days days) {
        return days.ask(jdbc, """
                select i.number, a.words, a.control_level, a.owner, a.due_on, a.done_at, a.effective
                from incident_actions a join incidents i on i.id = a.incident_id
                where i.lab_id = :lab and a.added_at < :until and (a.done_at is null or a.done_at >= :from)
                order by a.due_on, i.number, a.id""")
                .query((row, number) -> new Action(
                        row.getInt("number"),
                        row.getString("words"),
                        row.getString("control_level").toLowerCase(Locale.ROOT).replace('_', ' '),
                        new PersonId(row.getObject("owner", UUID.class)),
                        row.getDate("due_on").toLocalDate(),
                        SqlTime.readNullable(row, "done_at"),
                        row.getObject("effective", Boolean.class)))
                .list();
    }

    Fairness fairness(Days days) {
        List<Integer> each = days.ask(jdbc, """
                select (select count(*) from bookings b join runs r on r.booking_id = b.id
                    where b.operator_id = e.person_id and b.lab_id = :lab and r.started_at >= :from and r.started_at < :until
                    and b.ends_at > :from and b.ends_at < cast(:until as timestamp with time zone) + interval '1' day) as n
                from (select distinct n.person_id from enrolments n join sections s on s.id = n.section_id
                    join courses c on c.id = s.course_id where c.lab_id = :lab) e order by 1""").query(Integer.class).list();
        return new Fairness(
                each,
                bookings(days, ""),
                bookings(days, "MISSED"),
                bookings(days, "LATE_CANCELLED"),
                bookings(days, "MOVED_BY_STAFF"));
    }

    private int bookings(Days days, String state) {
        // a slot ends within a day of its start: by its end an index finds it, whatever the years before and since
        String of = "select count(*) from bookings where lab_id = :lab and starts_at >= :from and starts_at < :until"
                + " and ends_at > :from and ends_at < cast(:until as timestamp with time zone) + interval '1' day";
        return days.count(jdbc, state.isEmpty() ? of : of + " and state = '" + state + "'");
    }
}
