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
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Which upcoming bookings a cell's version, its phrasebook or the check's rules left behind; kept nowhere. */
@Repository
class RecheckRows {

    /**
     * Bookings that have a program, have not run, and were last checked on other grounds than those of now, or may have
     * been: whether new limits or another phrasebook make a difference to a program is another question. What came after
     * the check is told by counts and numbers, not by times.
     */
    private static final String PENDING = """
            from bookings b
            join cells c on c.id = b.cell_id
            join signoff_preparations p on p.booking_id = b.id and p.revision_id = b.revision_id
            join check_answers a on a.id = p.answer_id
            where b.lab_id = :lab and b.state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED') and b.started_at is null and b.ends_at > :now
              and not exists (select 1 from signoff_preparations later where later.booking_id = b.id
                and later.revision_id = b.revision_id
                and later.kept_no > p.kept_no)
              and (p.cell_version <> c.current_version or a.rule_set <> :rules
                or p.limit_changes <> """ + EventRows.LIMIT_CHANGES + """

                or exists (select 1 from phrasebook_versions k where k.cell_id = b.cell_id and k.number > p.last_book))
            """;

    private final JdbcClient jdbc;
    private final Labs labs;

    RecheckRows(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** What is left behind, and by which version. */
    record Pending(BookingId booking, int cellVersion) {}

    /**
     * What was left behind or may have been.
     *
     * @param certain whether the cell's version or the check's rules are others now
     */
    record Candidate(
            Pending pending, AnswerId answer, @Nullable CourseId course, PersonId operator, boolean certain) {}

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

    /** The next starts first. */
    List<Candidate> candidates(Instant now) {
        return jdbc.sql("""
                select b.id, b.course_id, b.operator_id, c.current_version, p.cell_version, p.answer_id, a.rule_set
                """ + PENDING + " order by b.starts_at, b.id")
                .param("lab", labs.theLab().id().value())
                .param("now", SqlTime.toSql(now))
                .param("rules", RuleSet.CURRENT)
                .query(RecheckRows::candidate)
                .list();
    }

    private static Candidate candidate(ResultSet row, int number) throws SQLException {
        UUID course = row.getObject("course_id", UUID.class);
        int version = row.getInt("current_version");
        return new Candidate(
                new Pending(new BookingId(row.getObject("id", UUID.class)), version),
                new AnswerId(row.getObject("answer_id", UUID.class)),
                course == null ? null : new CourseId(course),
                new PersonId(row.getObject("operator_id", UUID.class)),
                row.getInt("cell_version") != version
                        || !row.getString("rule_set").equals(RuleSet.CURRENT));
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
                  and (p.cell_version <> c.current_version or a.rule_set <> :rules
                    or n.answer_id <> p.answer_id and exists (select 1 from phrasebook_versions k
                      where k.cell_id = b.cell_id and k.number > p.last_book and k.number <= n.last_book))
                order by b.starts_at, b.id, p.kept_no desc, n.kept_no desc""")
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
