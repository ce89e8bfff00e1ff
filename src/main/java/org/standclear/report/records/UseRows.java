package org.standclear.report.records;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.TermReport.Action;
import org.standclear.report.TermReport.Authorised;
import org.standclear.report.TermReport.CellUse;
import org.standclear.report.TermReport.Fairness;
import org.standclear.report.records.ExposureRows.Start;

/** How cells, authorisations and slots were used in a term. */
@Repository
class UseRows {

    private static final int SOON_DAYS = 30;

    private final JdbcClient jdbc;

    UseRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Starts and days are gathered once for all cells: asked for each cell, the term's runs were read as often. */
    List<CellUse> cells(Days days, List<Start> started) {
        Map<UUID, Integer> starts = new HashMap<>();
        started.forEach(start -> starts.merge(start.cell(), 1, Integer::sum));
        Map<UUID, InUse> used = daysInUse(days);
        return days.ask(jdbc, """
                select c.id, c.name,
                  (select count(*) from cell_day_tests d where d.cell_id = c.id and d.passed
                    and d.lab_date between :first and :last) as passed,
                  (select count(*) from cell_day_tests d where d.cell_id = c.id and not d.passed
                    and d.lab_date between :first and :last) as failed,
                  (select count(*) from cell_tags t where t.cell_id = c.id and t.kind = 'HOLD'
                    and t.placed_at >= :from and t.placed_at < :until) as holds,
                  (select count(*) from cell_tags t where t.cell_id = c.id and t.kind = 'OUT_OF_SERVICE'
                    and t.placed_at >= :from and t.placed_at < :until) as tags,
                  (select count(*) from cell_versions v where v.cell_id = c.id
                    and v.in_force_since >= :from and v.in_force_since < :until) as versions
                from cells c where c.lab_id = :lab order by c.name""")
                .query((row, number) -> {
                    UUID cell = row.getObject("id", UUID.class);
                    InUse inUse = used.getOrDefault(cell, new InUse(0, 0));
                    return new CellUse(
                            row.getString("name"),
                            starts.getOrDefault(cell, 0),
                            inUse.days(),
                            row.getInt("passed"),
                            row.getInt("failed"),
                            inUse.untested(),
                            row.getInt("holds"),
                            row.getInt("tags"),
                            row.getInt("versions"));
                })
                .list();
    }

    /** Days on which a cell was used, and those of them without a passed test. */
    private record InUse(int days, int untested) {}

    /** The day is the lab's date at the start, whatever its zone was; the times only keep other years from being read. */
    private Map<UUID, InUse> daysInUse(Days days) {
        Map<UUID, InUse> used = new HashMap<>();
        days.ask(jdbc, """
                select u.cell_id, count(*) as days, coalesce(sum(case when exists (select 1 from cell_day_tests d
                    where d.cell_id = u.cell_id and d.lab_date = u.lab_date and d.passed) then 0 else 1 end), 0) as untested
                from (select distinct r.cell_id, r.lab_date from cells c join runs r on r.cell_id = c.id
                    where c.lab_id = :lab and r.lab_date between :first and :last
                    and r.started_at > cast(:from as timestamp with time zone) - interval '2' day
                    and r.started_at < cast(:until as timestamp with time zone) + interval '2' day) u
                group by u.cell_id""").query(row -> {
            used.put(row.getObject("cell_id", UUID.class), new InUse(row.getInt("days"), row.getInt("untested")));
        });
        return used;
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
        Map<String, Integer> bookings = bookings(days);
        return new Fairness(
                each,
                bookings.values().stream().mapToInt(Integer::intValue).sum(),
                bookings.getOrDefault("MISSED", 0),
                bookings.getOrDefault("LATE_CANCELLED", 0),
                bookings.getOrDefault("MOVED_BY_STAFF", 0));
    }

    /** By state. A slot ends within a day of its start: by its end an index finds it, whatever the years before and since. */
    private Map<String, Integer> bookings(Days days) {
        Map<String, Integer> bookings = new HashMap<>();
        days.ask(jdbc, """
                select state, count(*) as n from bookings
                where lab_id = :lab and starts_at >= :from and starts_at < :until
                and ends_at > :from and ends_at < cast(:until as timestamp with time zone) + interval '1' day
                group by state""").query(row -> {
            bookings.put(row.getString("state"), row.getInt("n"));
        });
        return bookings;
    }
}
