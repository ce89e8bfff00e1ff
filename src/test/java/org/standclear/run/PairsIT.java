package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Booking;
import org.standclear.booking.Pairs;
import org.standclear.booking.Pairs.Ahead;
import org.standclear.booking.Pairs.Together;
import org.standclear.people.CourseRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.lab.Labs;
import org.standclear.signoff.Handovers;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who worked with whom: runs that happened, by who stood there; bookings yet to come apart from them. */
class PairsIT {

    abstract static class Cases extends RunLogCases {

        @Autowired
        Pairs pairs;

        @Autowired
        Handovers handovers;

        @Autowired
        CourseRegister courses;

        @Autowired
        Labs labs;

        private void takesOver(Person next) {
            handovers.ask(scene().booking, next.id(), scene().noor.id());
            scene().takesOver(next);
        }

        @Test
        void countsARunOnceForEachWhoStoodAtTheStopAndABookingNotAtAll() {
            Booking ahead = scene().lab.booked(scene().cell, "2026-03-12T12:07:00Z", scene().mateo, scene().noor);
            assertThat(pairs.ofPerson(scene().noor.id())).as("booked, not run").isEmpty();
            assertThat(pairs.aheadOf(scene().noor.id()))
                    .as("the slot that has begun is not to come any more")
                    .containsExactly(new Ahead(
                            scene().mateo.id(), scene().noor.id(), labs.theLab().id(), 1, ahead.start()));

            Run run = started();
            clock.moveBy(Duration.ofMinutes(12));
            Person tal = scene().lab.student("Tal Emberley");
            takesOver(tal);
            Together first = new Together(scene().noor.id(), scene().mateo.id(), 1, run.startedAt());
            Together second = new Together(scene().noor.id(), tal.id(), 1, run.startedAt());
            assertThat(pairs.ofPerson(scene().noor.id())).containsExactlyInAnyOrder(first, second);
            assertThat(pairs.ofPerson(scene().mateo.id())).containsExactly(first);
            assertThat(pairs.ofPerson(tal.id())).containsExactly(second);
            assertThat(pairs.aheadOf(tal.id())).isEmpty();
        }

        @Test
        void countsForACourseWhatItsBookingsCameTo() {
            CourseId course = ((CourseRegister.Outcome.Done<CourseId>)
                            courses.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null))
                    .id();
            Booking ahead = scene().lab.booked(scene().cell, "2026-03-12T12:07:00Z", scene().noor, scene().mateo);
            for (UUID id : List.of(scene().booking.value(), ahead.id().value())) {
                jdbc.sql("update bookings set course_id = ? where id = ?")
                        .params(course.value(), id)
                        .update();
            }
            assertThat(pairs.ofCourse(course)).isEmpty();
            Run run = started();
            assertThat(pairs.ofCourse(course))
                    .containsExactly(
                            new Together(scene().noor.id(), scene().mateo.id(), 1, run.startedAt()));
            assertThat(pairs.aheadOf(course))
                    .containsExactly(new Ahead(
                            scene().noor.id(), scene().mateo.id(), labs.theLab().id(), 1, ahead.start()));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
