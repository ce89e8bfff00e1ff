package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** What another length of a course's slots would do, counted before anybody sets it. */
@Service
@Transactional(readOnly = true)
public class LengthEffects {

    private static final int DAYS = 7;

    private final BookingNumbers numbers;
    private final OpeningHours openingHours;
    private final Cells cells;
    private final SlotLengths lengths;
    private final LabTime labTime;
    private final JdbcClient jdbc;

    LengthEffects(
            BookingNumbers numbers,
            OpeningHours openingHours,
            Cells cells,
            SlotLengths lengths,
            LabTime labTime,
            JdbcClient jdbc) {
        this.numbers = numbers;
        this.openingHours = openingHours;
        this.cells = cells;
        this.lengths = lengths;
        this.labTime = labTime;
        this.jdbc = jdbc;
    }

    /**
     * The effect.
     *
     * @param minutesNow how long a slot of the course's is now
     * @param minutesThen and with the new length
     * @param students who take the course now
     * @param bookingsAhead bookings for the course that stand; they keep their times
     * @param turnsNow how many turns of the course fit into the next seven days on cells that run, if nobody else came
     * @param turnsThen and with the new length
     */
    public record Effect(
            int minutesNow, int minutesThen, int students, int bookingsAhead, int turnsNow, int turnsThen) {}

    /** With that length, or with the lab's own when it is null. */
    public Effect of(CourseId course, @Nullable Integer minutes) {
        int usual = numbers.inForce().slotMinutes();
        int now = Math.max(usual, lengths.ofCourse(course).orElse(usual));
        int then = minutes == null ? usual : Math.max(usual, minutes);
        return new Effect(now, then, students(course), ahead(course), turns(now), turns(then));
    }

    private int students(CourseId course) {
        return jdbc.sql("""
                select count(distinct e.person_id) from enrolments e join sections s on s.id = e.section_id
                where s.course_id = :course""")
                .param("course", course.value())
                .query(Integer.class)
                .single();
    }

    private int ahead(CourseId course) {
        return jdbc.sql("""
                select count(*) from bookings where course_id = :course and starts_at > :now
                    and state in ('BOOKED', 'CHECKED', 'READY')""")
                .param("course", course.value())
                .param("now", SqlTime.toSql(labTime.now()))
                .query(Integer.class)
                .single();
    }

    /** One after the other from each cell's first start, each at the next start of the grid that is free again. */
    private int turns(int minutes) {
        SlotGrid grid = new SlotGrid(labTime.zone(), numbers.inForce().slotLength());
        LocalDate first = labTime.today().plusDays(1);
        int turns = 0;
        for (OpeningHours.DayHours hours : openingHours.from(first, first.plusDays(DAYS - 1))) {
            for (Cell cell : cells.all()) {
                if (cell.state().mayRun()) {
                    turns += packed(grid.slots(
                            cell.id(),
                            hours.day(),
                            hours.periods(),
                            cell.startOffsetMinutes(),
                            Duration.ofMinutes(minutes)));
                }
            }
        }
        return turns;
    }

    private static int packed(List<Slot> slots) {
        int packed = 0;
        Instant free = Instant.MIN;
        for (Slot slot : slots) {
            if (!slot.start().isBefore(free)) {
                packed++;
                free = slot.end();
            }
        }
        return packed;
    }
}
