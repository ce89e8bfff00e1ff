package org.standclear.people.courses;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.Assignment;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.Enrolment;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Courses from the database. */
@Repository
class JdbcCourses implements Courses {

    private static final String ASSIGNMENTS = """
            select a.id, a.course_id, d.section_id, a.title, a.minimum_runs, d.due_at
            from enrolments e
            join assignment_due_dates d on d.section_id = e.section_id
            join assignments a on a.id = d.assignment_id join courses c on c.id = a.course_id
            where e.person_id = :person and c.lab_id = :lab
            """;

    private final JdbcClient jdbc;
    private final Labs labs;

    JdbcCourses(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    @Override
    public Optional<Course> find(CourseId id) {
        return jdbc.sql("select * from courses where id = :id")
                .param("id", id.value())
                .query(JdbcCourses::course)
                .optional();
    }

    @Override
    public List<Course> all() {
        return jdbc.sql("select * from courses where lab_id = :lab order by code, id")
                .param("lab", labs.theLab().id().value())
                .query(JdbcCourses::course)
                .list();
    }

    @Override
    public List<Enrolment> enrolmentsOf(PersonId person) {
        return jdbc.sql("""
                select e.person_id, s.course_id, s.id as section_id, c.code as course_code, s.code as section_code
                from enrolments e join sections s on s.id = e.section_id join courses c on c.id = s.course_id
                where e.person_id = :person and c.lab_id = :lab order by c.code, s.code""")
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .query(JdbcCourses::enrolment)
                .list();
    }

    @Override
    public List<Course> takenBy(PersonId person) {
        return jdbc.sql("""
                select * from courses
                where lab_id = :lab and id in (select s.course_id from enrolments e join sections s on s.id = e.section_id
                    where e.person_id = :person)
                order by code, id""")
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .query(JdbcCourses::course)
                .list();
    }

    @Override
    public List<Assignment> assignmentsOf(PersonId person) {
        return jdbc.sql(ASSIGNMENTS + " order by d.due_at, a.id")
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .query(JdbcCourses::assignment)
                .list();
    }

    @Override
    public Optional<Assignment> assignmentOf(PersonId person, AssignmentId assignment) {
        return jdbc
                .sql(ASSIGNMENTS + " and a.id = :assignment order by d.due_at")
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .param("assignment", assignment.value())
                .query(JdbcCourses::assignment)
                .list()
                .stream()
                .findFirst();
    }

    static Course course(ResultSet row, int number) throws SQLException {
        double speed = row.getDouble("tool_speed_mm_s");
        boolean none = row.wasNull();
        return new Course(
                new CourseId(row.getObject("id", UUID.class)),
                row.getString("code"),
                row.getString("title"),
                row.getDouble("override_percent"),
                none ? null : Double.valueOf(speed));
    }

    private static Enrolment enrolment(ResultSet row, int number) throws SQLException {
        return new Enrolment(
                new PersonId(row.getObject("person_id", UUID.class)),
                new CourseId(row.getObject("course_id", UUID.class)),
                new SectionId(row.getObject("section_id", UUID.class)),
                row.getString("course_code"),
                row.getString("section_code"));
    }

    private static Assignment assignment(ResultSet row, int number) throws SQLException {
        return new Assignment(
                new AssignmentId(row.getObject("id", UUID.class)),
                new CourseId(row.getObject("course_id", UUID.class)),
                new SectionId(row.getObject("section_id", UUID.class)),
                row.getString("title"),
                row.getInt("minimum_runs"),
                SqlTime.read(row, "due_at"));
    }
}
