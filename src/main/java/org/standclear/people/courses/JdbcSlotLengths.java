package org.standclear.people.courses;

import java.sql.Types;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Takes the longest of what courses and accommodations ask for. */
@Service
@Transactional
class JdbcSlotLengths implements SlotLengths {

    private static final String ACCOMMODATION =
            "select coalesce(max(slot_minutes), 0) from accommodations where person_id = :person and ended_at is null";

    private static final int LEAST = 10;
    private static final int MOST = 240;
    private static final int LONGEST_REASON = 400;

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcSlotLengths(JdbcClient jdbc, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
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
                where e.person_id = :person and c.lab_id = :lab""")
                .param("lab", labs.theLab().id().value())
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
    public Optional<String> setForCourse(CourseId course, @Nullable Integer minutes, String reason, PersonId by) {
        if (minutes != null && (minutes < LEAST || minutes > MOST)) {
            return Optional.of("A slot lasts " + LEAST + " to " + MOST + " minutes.");
        }
        PlainText.Checked checked = PlainText.check(reason, LONGEST_REASON);
        if (checked instanceof PlainText.Refused refused) {
            return Optional.of("The reason: " + refused.says());
        }
        String kept = ((PlainText.Fine) checked).text();
        jdbc.sql("update courses set slot_minutes = :minutes where id = :id")
                .param("minutes", minutes, Types.INTEGER)
                .param("id", course.value())
                .update();
        jdbc.sql("""
                insert into course_slot_lengths (id, course_id, slot_minutes, reason, changed_by, changed_at)
                values (:id, :course, :minutes, :reason, :by, :at)""")
                .param("id", Id.newValue())
                .param("course", course.value())
                .param("minutes", minutes, Types.INTEGER)
                .param("reason", kept)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "people.course-slot-length-changed",
                        course,
                        by,
                        "Changed the slot length of a course: " + kept)
                .with("minutes", minutes == null ? "as the lab" : minutes));
        return Optional.empty();
    }

    @Override
    @Transactional(readOnly = true)
    public List<LengthChange> changesOf(CourseId course) {
        return jdbc.sql("select * from course_slot_lengths where course_id = :course order by changed_at desc, id desc")
                .param("course", course.value())
                .query((row, number) -> new LengthChange(
                        row.getObject("slot_minutes", Integer.class),
                        row.getString("reason"),
                        new PersonId(row.getObject("changed_by", UUID.class)),
                        SqlTime.read(row, "changed_at")))
                .list();
    }
}
