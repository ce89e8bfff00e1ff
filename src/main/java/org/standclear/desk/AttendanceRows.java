package org.standclear.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.BookingState;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.time.SqlTime;

/** Who was there for a course: the check-in, and the release that staff signed, which is the record of it. */
@Repository
public class AttendanceRows {

    private final JdbcClient jdbc;

    AttendanceRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * One turn of a student, in one section of theirs.
     *
     * @param releasedBy the releaser's printed name; null while nothing was released and started
     * @param closedOutAt null until the run was closed out, and then it counts
     */
    public record Turn(
            BookingId booking,
            String section,
            String login,
            String name,
            @Nullable String assignment,
            int minimumRuns,
            String cell,
            Instant start,
            BookingState state,
            @Nullable Instant checkedInAt,
            @Nullable Instant releasedAt,
            @Nullable String releasedBy,
            @Nullable Instant startedAt,
            @Nullable Instant closedOutAt) {

        /** A released run that was closed out counts towards the assignment. */
        public boolean counts() {
            return closedOutAt != null && releasedAt != null;
        }

        private Turn alsoOf(Turn other) {
            return new Turn(
                    booking,
                    section + ", " + other.section,
                    login,
                    name,
                    assignment,
                    minimumRuns,
                    cell,
                    start,
                    state,
                    checkedInAt,
                    releasedAt,
                    releasedBy,
                    startedAt,
                    closedOutAt);
        }
    }

    /** Somebody who takes the course, with or without turns. */
    public record Student(String section, String login, String name) {}

    /** What a section has to hand in, with how many runs. */
    public record Asked(String section, String assignment, int minimumRuns) {}

    /** Everybody who is enrolled, by section and name. */
    public List<Student> students(CourseId course) {
        return jdbc.sql("""
                select s.code, p.login, p.printed_name from enrolments e
                join sections s on s.id = e.section_id join people p on p.id = e.person_id
                where s.course_id = :course order by s.code, p.sort_name, p.id""")
                .param("course", course.value())
                .query((row, number) ->
                        new Student(row.getString("code"), row.getString("login"), row.getString("printed_name")))
                .list();
    }

    /** What the sections have to hand in, the earliest due date first. */
    public List<Asked> asked(CourseId course) {
        return jdbc.sql("""
                select s.code, a.title, a.minimum_runs from assignment_due_dates d
                join assignments a on a.id = d.assignment_id join sections s on s.id = d.section_id
                where a.course_id = :course order by d.due_at, a.title""")
                .param("course", course.value())
                .query((row, number) ->
                        new Asked(row.getString("code"), row.getString("title"), row.getInt("minimum_runs")))
                .list();
    }

    /** Each turn once, with all sections of its student: for who adds the lines up. */
    public static List<Turn> once(List<Turn> turns) {
        Map<BookingId, Turn> each = new LinkedHashMap<>();
        turns.forEach(turn -> each.merge(turn.booking(), turn, Turn::alsoOf));
        return List.copyOf(each.values());
    }

    /** All turns of the course that have begun by the instant, by section and name; in each section of their student. */
    public List<Turn> of(CourseId course, Instant until) {
        return jdbc.sql("""
                select b.id, coalesce(s.code, '') as section, p.login, p.printed_name, a.title, a.minimum_runs, c.name as cell,
                    b.starts_at, b.state, b.checked_in_at, r.issued_at, q.printed_name as releaser, u.started_at,
                    u.closed_out_at
                from bookings b
                join people p on p.id = b.operator_id
                join cells c on c.id = b.cell_id
                left join assignments a on a.id = b.assignment_id
                left join sections s on s.course_id = b.course_id and exists (
                    select 1 from enrolments e where e.section_id = s.id and e.person_id = b.operator_id)
                left join runs u on u.booking_id = b.id
                left join signoff_releases r on r.booking_id = b.id and r.used_at = (
                    select min(x.used_at) from signoff_releases x where x.booking_id = b.id)
                left join people q on q.id = r.releaser_id
                where b.course_id = :course and b.starts_at <= :until
                  and b.state not in ('CANCELLED', 'MOVED_BY_STAFF')
                order by 2, p.sort_name, b.starts_at, b.id""")
                .param("course", course.value())
                .param("until", SqlTime.toSql(until))
                .query(AttendanceRows::turn)
                .list();
    }

    private static Turn turn(ResultSet row, int number) throws SQLException {
        return new Turn(
                new BookingId(row.getObject("id", UUID.class)),
                row.getString("section"),
                row.getString("login"),
                row.getString("printed_name"),
                row.getString("title"),
                row.getInt("minimum_runs"),
                row.getString("cell"),
                SqlTime.read(row, "starts_at"),
                BookingState.valueOf(row.getString("state")),
                SqlTime.readNullable(row, "checked_in_at"),
                SqlTime.readNullable(row, "issued_at"),
                row.getString("releaser"),
                SqlTime.readNullable(row, "started_at"),
                SqlTime.readNullable(row, "closed_out_at"));
    }
}
