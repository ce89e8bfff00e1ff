package org.standclear.people.courses;

import java.sql.Types;
import java.time.Clock;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.Course;
import org.standclear.people.CourseRegister;
import org.standclear.people.Courses;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;

/** Courses in the database. */
@Service
class JdbcCourseRegister implements CourseRegister {

    private static final int LONGEST_CODE = 20;
    private static final int LONGEST_TITLE = 120;
    private static final int LONGEST_REASON = 400;

    private final JdbcClient jdbc;
    private final Courses courses;
    private final CourseRecord record;
    private final Labs labs;
    private final Clock clock;

    JdbcCourseRegister(JdbcClient jdbc, Courses courses, CourseRecord record, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.courses = courses;
        this.record = record;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Outcome<CourseId> addCourse(String code, String title, @Nullable PersonId by) {
        if (PlainText.check(code, LONGEST_CODE) instanceof PlainText.Refused refused) {
            return new Outcome.Refused<>("code", refused.says());
        }
        if (PlainText.check(title, LONGEST_TITLE) instanceof PlainText.Refused refused) {
            return new Outcome.Refused<>("title", refused.says());
        }
        String kept = text(code, LONGEST_CODE);
        if (courses.all().stream().anyMatch(course -> course.code().equals(kept))) {
            return new Outcome.Refused<>("code", "There is a course " + kept + " already.");
        }
        Course course = new Course(CourseId.next(), kept, text(title, LONGEST_TITLE), 50, null);
        jdbc.sql("""
                insert into courses (id, lab_id, code, title, override_percent, tool_speed_mm_s, version)
                values (:id, :lab, :code, :title, :override, null, 1)""")
                .param("id", course.id().value())
                .param("lab", labs.theLab().id().value())
                .param("code", course.code())
                .param("title", course.title())
                .param("override", course.overridePercent())
                .update();
        record.courseAdded(course, by);
        return new Outcome.Done<>(course.id());
    }

    @Override
    @Transactional
    public Outcome<SectionId> addSection(CourseId course, String code, @Nullable PersonId by) {
        if (PlainText.check(code, LONGEST_CODE) instanceof PlainText.Refused refused) {
            return new Outcome.Refused<>("code", refused.says());
        }
        String kept = text(code, LONGEST_CODE);
        int taken = jdbc.sql("select count(*) from sections where course_id = :course and code = :code")
                .param("course", course.value())
                .param("code", kept)
                .query(Integer.class)
                .single();
        if (taken > 0) {
            return new Outcome.Refused<>("code", "The course has a section " + kept + " already.");
        }
        SectionId id = SectionId.next();
        jdbc.sql("insert into sections (id, course_id, code) values (:id, :course, :code)")
                .param("id", id.value())
                .param("course", course.value())
                .param("code", kept)
                .update();
        record.sectionAdded(the(course), kept, by);
        return new Outcome.Done<>(id);
    }

    @Override
    @Transactional
    public Outcome<SectionId> enrol(PersonId person, SectionId section, @Nullable PersonId by) {
        int already = jdbc.sql("select count(*) from enrolments where person_id = :person and section_id = :section")
                .param("person", person.value())
                .param("section", section.value())
                .query(Integer.class)
                .single();
        if (already == 0) {
            jdbc.sql("insert into enrolments (person_id, section_id, enrolled_at) values (:person, :section, :at)")
                    .param("person", person.value())
                    .param("section", section.value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            letIn(person);
            record.enrolled(person, section, by);
        }
        return new Outcome.Done<>(section);
    }

    /** Who takes a course is a student of its lab, unless they work there already. */
    private void letIn(PersonId person) {
        jdbc.sql("""
                insert into person_roles (person_id, lab_id, role)
                select p.id, cast(:lab as uuid), 'STUDENT' from people p
                where p.id = :person and not exists (
                    select 1 from person_roles r where r.person_id = p.id and r.lab_id = :lab)""")
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .update();
    }

    @Override
    @Transactional
    public Outcome<AssignmentId> addAssignment(NewAssignment asked) {
        if (PlainText.check(asked.title(), LONGEST_TITLE) instanceof PlainText.Refused refused) {
            return new Outcome.Refused<>("title", refused.says());
        }
        if (asked.minimumRuns() < 1 || asked.minimumRuns() > 100) {
            return new Outcome.Refused<>("minimumRuns", "Ask for 1 to 100 runs, not " + asked.minimumRuns() + ".");
        }
        AssignmentId id = AssignmentId.next();
        String title = text(asked.title(), LONGEST_TITLE);
        jdbc.sql("insert into assignments (id, course_id, title, minimum_runs) values (:id, :course, :title, :runs)")
                .param("id", id.value())
                .param("course", asked.course().value())
                .param("title", title)
                .param("runs", asked.minimumRuns())
                .update();
        asked.due().forEach((section, due) -> insertDue(id, section, due));
        record.assignmentAdded(the(asked.course()), title, asked);
        return new Outcome.Done<>(id);
    }

    private void insertDue(AssignmentId assignment, SectionId section, java.time.Instant due) {
        jdbc.sql("insert into assignment_due_dates (assignment_id, section_id, due_at) values (:id, :section, :due)")
                .param("id", assignment.value())
                .param("section", section.value())
                .param("due", SqlTime.toSql(due))
                .update();
    }

    @Override
    @Transactional
    public Outcome<CourseId> changeLimits(NewLimits asked) {
        Map<String, String> wrong = CourseLimits.refuse(asked, LONGEST_REASON);
        if (!wrong.isEmpty()) {
            var first = wrong.entrySet().iterator().next();
            return new Outcome.Refused<>(first.getKey(), first.getValue());
        }
        int version = jdbc.sql("select version from courses where id = :id for update")
                .param("id", asked.course().value())
                .query(Integer.class)
                .single();
        Course before = the(asked.course());
        if (version != asked.seenVersion()) {
            return new Outcome.Stale<>(before, version);
        }
        update(asked);
        insertChange(asked, version + 1);
        record.limitsChanged(before, the(asked.course()), text(asked.reason(), LONGEST_REASON), asked.by());
        return new Outcome.Done<>(asked.course());
    }

    private void update(NewLimits asked) {
        jdbc.sql("""
                update courses set override_percent = :override, tool_speed_mm_s = :speed, version = version + 1
                where id = :id""")
                .param("override", asked.overridePercent())
                .param("speed", asked.toolSpeedMmS(), Types.DOUBLE)
                .param("id", asked.course().value())
                .update();
    }

    private void insertChange(NewLimits asked, int version) {
        jdbc.sql("""
                insert into course_limit_changes (course_id, version, override_percent, tool_speed_mm_s, reason,
                    changed_by, changed_at)
                values (:id, :version, :override, :speed, :reason, :by, :at)""")
                .param("id", asked.course().value())
                .param("version", version)
                .param("override", asked.overridePercent())
                .param("speed", asked.toolSpeedMmS(), Types.DOUBLE)
                .param("reason", text(asked.reason(), LONGEST_REASON))
                .param("by", asked.by().value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
    }

    private Course the(CourseId id) {
        return courses.find(id).orElseThrow(() -> new IllegalArgumentException("no course " + id));
    }

    private static String text(String raw, int max) {
        return ((PlainText.Fine) PlainText.check(raw, max)).text();
    }
}
