package org.standclear.people.courses;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.Course;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Courses for the pages that keep them, with sections, counts and the history of limits. */
@Repository
public class CourseList {

    private final JdbcClient jdbc;
    private final Labs labs;

    CourseList(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** All courses with their counts, by code. */
    public List<CountedCourse> all() {
        return jdbc.sql("""
                select c.*, (select count(*) from sections s where s.course_id = c.id) as section_count,
                    (select count(distinct e.person_id) from enrolments e join sections s on s.id = e.section_id
                     where s.course_id = c.id) as student_count
                from courses c where c.lab_id = :lab order by c.code, c.id""")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new CountedCourse(
                        JdbcCourses.course(row, number), row.getInt("section_count"), row.getInt("student_count")))
                .list();
    }

    /** The course of that id with its version. */
    public Optional<VersionedCourse> find(CourseId id) {
        return jdbc.sql("select * from courses where id = :id")
                .param("id", id.value())
                .query((row, number) -> new VersionedCourse(JdbcCourses.course(row, number), row.getInt("version")))
                .optional();
    }

    /** The sections of a course, by code. */
    public List<Section> sections(CourseId course) {
        return jdbc.sql("""
                select s.id, s.code, (select count(*) from enrolments e where e.section_id = s.id) as student_count
                from sections s where s.course_id = :course order by s.code""")
                .param("course", course.value())
                .query((row, number) -> new Section(
                        new SectionId(row.getObject("id", UUID.class)),
                        row.getString("code"),
                        row.getInt("student_count")))
                .list();
    }

    /** What the sections of a course have to hand in, earliest due date first. */
    public List<Due> dues(CourseId course) {
        return jdbc.sql("""
                select a.id, a.title, a.minimum_runs, s.code, d.due_at
                from assignments a join assignment_due_dates d on d.assignment_id = a.id
                join sections s on s.id = d.section_id
                where a.course_id = :course order by d.due_at, s.code, a.title""")
                .param("course", course.value())
                .query((row, number) -> new Due(
                        new AssignmentId(row.getObject("id", UUID.class)),
                        row.getString("title"),
                        row.getInt("minimum_runs"),
                        row.getString("code"),
                        SqlTime.read(row, "due_at")))
                .list();
    }

    /** How the limits of a course changed, latest first. */
    public List<LimitChange> changes(CourseId course) {
        return jdbc.sql("""
                select override_percent, tool_speed_mm_s, reason, changed_by, changed_at
                from course_limit_changes where course_id = :course order by version desc""")
                .param("course", course.value())
                .query((row, number) -> {
                    double speed = row.getDouble("tool_speed_mm_s");
                    boolean none = row.wasNull();
                    return new LimitChange(
                            row.getDouble("override_percent"),
                            none ? null : Double.valueOf(speed),
                            row.getString("reason"),
                            new PersonId(row.getObject("changed_by", UUID.class)),
                            SqlTime.read(row, "changed_at"));
                })
                .list();
    }

    /** A course with how many sections and students it has. */
    public record CountedCourse(Course course, int sections, int students) {}

    /** A course with the version that a form has to bring back. */
    public record VersionedCourse(Course course, int version) {}

    /** A section with how many students it has. */
    public record Section(SectionId id, String code, int students) {}

    /** What one section has to hand in. */
    public record Due(AssignmentId assignment, String title, int minimumRuns, String section, Instant due) {}

    /** Limits as somebody set them. */
    public record LimitChange(
            double overridePercent, @Nullable Double toolSpeedMmS, String reason, PersonId by, Instant at) {}
}
