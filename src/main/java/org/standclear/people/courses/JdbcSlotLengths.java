package org.standclear.people.courses;

import java.sql.Types;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Takes the longest of what courses and accommodations ask for. */
@Service
@Transactional
class JdbcSlotLengths implements SlotLengths {

    private static final String ACCOMMODATION =
            "select coalesce(max(slot_minutes), 0) from accommodations where person_id = :person and ended_at is null";

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Labs labs;

    JdbcSlotLengths(JdbcClient jdbc, Trail trail, Labs labs) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.labs = labs;
    }

    @Override
    @Transactional(readOnly = true)
    public int minutesFor(PersonId operator, @Nullable CourseId course) {
        int own = accommodation(operator);
        return course == null ? own : Math.max(own, ofCourse(course).orElse(0));
    }

    @Override
    @Transactional(readOnly = true)
    public int longestFor(PersonId operator) {
        int courses = jdbc.sql("""
                select coalesce(max(c.slot_minutes), 0) from enrolments e
                join sections s on s.id = e.section_id join courses c on c.id = s.course_id
                where e.person_id = :person""")
                .param("person", operator.value())
                .query(Integer.class)
                .single();
        return Math.max(accommodation(operator), courses);
    }

    private int accommodation(PersonId operator) {
        return jdbc.sql(ACCOMMODATION)
                .param("person", operator.value())
                .query(Integer.class)
                .single();
    }

    @Override
    @Transactional(readOnly = true)
    public OptionalInt ofCourse(CourseId course) {
        return jdbc
                .sql("select slot_minutes from courses where id = :id and slot_minutes is not null")
                .param("id", course.value())
                .query(Integer.class)
                .list()
                .stream()
                .mapToInt(Integer::intValue)
                .findFirst();
    }

    @Override
    public void setForCourse(CourseId course, @Nullable Integer minutes, PersonId by) {
        jdbc.sql("update courses set slot_minutes = :minutes where id = :id")
                .param("minutes", minutes, Types.INTEGER)
                .param("id", course.value())
                .update();
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "people.course-slot-length-changed",
                        course,
                        by,
                        "Changed the slot length of a course")
                .with("minutes", minutes == null ? "as the lab" : minutes));
    }
}
