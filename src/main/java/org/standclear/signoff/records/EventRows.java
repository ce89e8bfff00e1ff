package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.check.StoredAnswer;
import org.standclear.core.check.RuleSet;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Disagreement;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffList;

/** What was checked for a booking, what lapsed and what disagreed; only ever added. */
@Repository
class EventRows {

    private final JdbcClient jdbc;

    EventRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What the latest check of a booking was about, and by which rules it answered. */
    record Preparation(RevisionId revision, int cellVersion, AnswerId answer, boolean within, String ruleSet) {

        /** Whether it still says something about this program on this version of the cell. */
        boolean isAbout(RevisionId other, int version) {
            return revision.equals(other) && cellVersion == version && ruleSet.equals(RuleSet.CURRENT);
        }
    }

    /** The check kept last, whatever the clock said. */
    Optional<Preparation> lastCheck(BookingId booking) {
        return jdbc
                .sql("""
                        select p.*, a.rule_set from signoff_preparations p join check_answers a on a.id = p.answer_id
                        where p.booking_id = :booking order by p.kept_no desc""")
                .param("booking", booking.value())
                .query((row, number) -> new Preparation(
                        new RevisionId(row.getObject("revision_id", UUID.class)),
                        row.getInt("cell_version"),
                        new AnswerId(row.getObject("answer_id", UUID.class)),
                        row.getBoolean("within_limits"),
                        row.getString("rule_set")))
                .list()
                .stream()
                .findFirst();
    }

    /**
     * How many changes of the limits of a booking {@code b}'s courses are committed. A count and no greatest number: of two
     * changes at once the one with the lesser number may be committed last.
     */
    static final String LIMIT_CHANGES = """
            (select count(*) from course_limit_changes l where l.course_id = b.course_id
                or b.course_id is null and exists (
                    select 1 from enrolments e join sections s on s.id = e.section_id
                    where e.person_id = b.operator_id and s.course_id = l.course_id))""";

    /** The changes of limits, and the last phrasebook of a cell, that a check can have seen. */
    record Grounds(long limitChanges, int book) {}

    /** Read before a check is asked: what is committed while it computes comes after it, and is checked anew. */
    Grounds groundsOf(BookingId booking) {
        return jdbc.sql("select " + LIMIT_CHANGES + """
                 as limit_changes,
                    (select coalesce(max(k.number), 0) from phrasebook_versions k where k.cell_id = b.cell_id) as book
                from bookings b where b.id = :booking""")
                .param("booking", booking.value())
                .query((row, number) -> new Grounds(row.getLong("limit_changes"), row.getInt("book")))
                .single();
    }

    void addCheck(BookingId booking, StoredAnswer answer, Grounds grounds, Instant at) {
        jdbc.sql("""
                insert into signoff_preparations (id, booking_id, revision_id, cell_id, cell_version, answer_id,
                    within_limits, checked_at, limit_changes, last_book)
                values (:id, :booking, :revision, :cell, :version, :answer, :within, :at, :limitChanges, :book)""")
                .param("limitChanges", grounds.limitChanges())
                .param("book", grounds.book())
                .param("id", Id.newValue())
                .param("booking", booking.value())
                .param("revision", answer.revision().value())
                .param("cell", answer.cell().value())
                .param("version", answer.cellVersion())
                .param("answer", answer.id().value())
                .param("within", answer.verdict() == StoredAnswer.Verdict.WITHIN)
                .param("at", SqlTime.toSql(at))
                .update();
    }

    /** First to last. */
    List<Lapse> lapses(BookingId booking) {
        return lapsesAfter(booking, 0);
    }

    /** Those kept after the numbered one, first to last, whatever the clock said. */
    List<Lapse> lapsesAfter(BookingId booking, long keptNo) {
        return jdbc.sql("""
                select * from signoff_lapses where booking_id = :booking and kept_no > :after order by kept_no""")
                .param("booking", booking.value())
                .param("after", keptNo)
                .query(EventRows::lapse)
                .list();
    }

    /** What lapsed last, if nobody has signed a list since that was opened after it. */
    Optional<Lapse> news(BookingId booking) {
        return jdbc.sql("""
                select l.* from signoff_lapses l where l.booking_id = :booking and l.kept_no > (
                    select coalesce(max(s.last_lapse), 0) from signoff_sheets s
                    where s.booking_id = :booking and exists (
                        select 1 from signoff_signatures g where g.sheet_id = s.id))
                order by l.kept_no desc fetch first 1 row only""")
                .param("booking", booking.value())
                .query(EventRows::lapse)
                .optional();
    }

    void addLapse(Lapse lapse) {
        ReleaseId release = lapse.release();
        jdbc.sql("""
                insert into signoff_lapses (id, booking_id, release_id, what, code, because, lapsed_at)
                values (:id, :booking, :release, :what, :code, :because, :at)""")
                .param("id", Id.newValue())
                .param("booking", lapse.booking().value())
                .param("release", release == null ? null : release.value())
                .param("what", lapse.what())
                .param("code", lapse.code())
                .param("because", lapse.because())
                .param("at", SqlTime.toSql(lapse.at()))
                .update();
    }

    /** First to last. */
    List<Disagreement> disagreements(BookingId booking) {
        return jdbc.sql("""
                select d.*, s.list from signoff_disagreements d join signoff_sheets s on s.id = d.sheet_id
                where d.booking_id = :booking order by d.answered_at, d.id""")
                .param("booking", booking.value())
                .query(EventRows::disagreement)
                .list();
    }

    void addDisagreement(UUID sheet, Disagreement one) {
        jdbc.sql("""
                insert into signoff_disagreements (id, booking_id, sheet_id, part, item, expected, answer, says, answered_at)
                values (:id, :booking, :sheet, :part, :item, :expected, :answer, :says, :at)""")
                .param("id", Id.newValue())
                .param("booking", one.booking().value())
                .param("sheet", sheet)
                .param("part", one.part().code())
                .param("item", one.item())
                .param("expected", one.expected())
                .param("answer", one.read())
                .param("says", one.says())
                .param("at", SqlTime.toSql(one.at()))
                .update();
    }

    private static Lapse lapse(ResultSet row, int number) throws SQLException {
        UUID release = row.getObject("release_id", UUID.class);
        return new Lapse(
                new BookingId(row.getObject("booking_id", UUID.class)),
                releaseId(release),
                row.getString("what"),
                row.getString("code"),
                row.getString("because"),
                SqlTime.read(row, "lapsed_at"));
    }

    private static @Nullable ReleaseId releaseId(@Nullable UUID value) {
        return value == null ? null : new ReleaseId(value);
    }

    private static Disagreement disagreement(ResultSet row, int number) throws SQLException {
        return new Disagreement(
                new BookingId(row.getObject("booking_id", UUID.class)),
                SignoffList.of(row.getString("list")),
                Part.of(row.getString("part")),
                row.getInt("item"),
                row.getString("expected"),
                row.getString("answer"),
                row.getString("says"),
                SqlTime.read(row, "answered_at"));
    }
}
