package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.check.StoredAnswer.Verdict;
import org.standclear.core.check.RuleSet;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;

/** Which upcoming bookings a cell's version or the check's rules have left behind; read from the data, kept nowhere. */
@Repository
class RecheckRows {

    /** Bookings that have a program, have not run, and were last checked on other grounds than those of now. */
    private static final String PENDING = """
            from bookings b
            join cells c on c.id = b.cell_id
            join signoff_preparations p on p.booking_id = b.id and p.revision_id = b.revision_id
            join check_answers a on a.id = p.answer_id
            where b.state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED') and b.started_at is null and b.ends_at > :now
              and not exists (select 1 from signoff_preparations later where later.booking_id = b.id
                and later.revision_id = b.revision_id
                and (later.checked_at > p.checked_at or later.checked_at = p.checked_at and later.id > p.id))
              and (p.cell_version <> c.current_version or a.rule_set <> :rules
                or exists (select 1 from course_limit_changes l
                    where l.changed_at > p.checked_at and (l.course_id = b.course_id or b.course_id is null
                      and exists (select 1 from enrolments e join sections s on s.id = e.section_id
                        where e.person_id = b.operator_id and s.course_id = l.course_id))))
            """;

    private final JdbcClient jdbc;

    RecheckRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What is left behind, and by which version. */
    record Pending(BookingId booking, int cellVersion) {}

    /**
     * A booking that was checked on other grounds before.
     *
     * @param after null while the re-check waits
     */
    record Rechecked(
            BookingId booking,
            Instant start,
            Instant end,
            PersonId operator,
            RevisionId revision,
            int versionBefore,
            String rulesBefore,
            Verdict before,
            @Nullable AnswerId answer,
            @Nullable Verdict after) {}

    List<Pending> pending(Instant now) {
        return jdbc.sql("select b.id, c.current_version " + PENDING + " order by b.starts_at, b.id")
                .param("now", SqlTime.toSql(now))
                .param("rules", RuleSet.CURRENT)
                .query((row, number) ->
                        new Pending(new BookingId(row.getObject("id", UUID.class)), row.getInt("current_version")))
                .list();
    }

    /** Upcoming bookings on the cell whose check before the one of now stood on other grounds, or still does. */
    List<Rechecked> of(CellId cell, Instant now) {
        return jdbc.sql("""
                select b.id, b.starts_at, b.ends_at, b.operator_id, b.revision_id, p.cell_version, a.rule_set, a.verdict,
                    n.answer_id as new_answer, na.verdict as new_verdict
                from bookings b
                join cells c on c.id = b.cell_id
                join signoff_preparations p on p.booking_id = b.id and p.revision_id = b.revision_id
                join check_answers a on a.id = p.answer_id
                left join signoff_preparations n on n.booking_id = b.id and n.revision_id = b.revision_id
                    and n.cell_version = c.current_version
                    and exists (select 1 from check_answers r where r.id = n.answer_id and r.rule_set = :rules)
                left join check_answers na on na.id = n.answer_id
                where b.cell_id = :cell and b.ends_at > :now
                  and b.state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED', 'RUNNING', 'STOPPED')
                  and (p.cell_version <> c.current_version or a.rule_set <> :rules)
                order by b.starts_at, b.id, p.checked_at desc, p.id desc, n.checked_at desc, n.id desc""")
                .param("cell", cell.value())
                .param("now", SqlTime.toSql(now))
                .param("rules", RuleSet.CURRENT)
                .query(RecheckRows::rechecked)
                .list();
    }

    private static Rechecked rechecked(ResultSet row, int number) throws SQLException {
        UUID answer = row.getObject("new_answer", UUID.class);
        String verdict = row.getString("new_verdict");
        return new Rechecked(
                new BookingId(row.getObject("id", UUID.class)),
                SqlTime.read(row, "starts_at"),
                SqlTime.read(row, "ends_at"),
                new PersonId(row.getObject("operator_id", UUID.class)),
                new RevisionId(row.getObject("revision_id", UUID.class)),
                row.getInt("cell_version"),
                row.getString("rule_set"),
                Verdict.valueOf(row.getString("verdict")),
                answer == null ? null : new AnswerId(answer),
                verdict == null ? null : Verdict.valueOf(verdict));
    }
}
