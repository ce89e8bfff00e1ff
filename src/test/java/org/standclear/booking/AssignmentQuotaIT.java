package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** How many bookings one person may have for one assignment. It is Wed 11 March 2026, 09:00 UTC. */
class AssignmentQuotaIT {

    abstract static class Cases extends BookingCases {

        @Autowired
        CourseRegister register;

        @AfterEach
        void numbersAsTheyWere() {
            numbers.change(BookingSettings.DEFAULTS, PersonId.next(), "as it was");
        }

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            assertThat(outcome).isInstanceOf(CourseRegister.Outcome.Done.class);
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private AssignmentId assignment(Person student, String title) {
            var course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            var section = done(register.addSection(course, "01", null));
            done(register.enrol(student.id(), section, null));
            return done(register.addAssignment(
                    new NewAssignment(course, title, 1, Map.of(section, Instant.parse("2026-03-20T12:00:00Z")), null)));
        }

        private Outcome book(Person noor, String start, AssignmentId assignment) {
            return desk.book(
                    new MakeBooking(avocet, Instant.parse(start), noor.id(), null, null, assignment, noor.id()));
        }

        @Test
        void countsWhatWasBookedForTheSameAssignmentAndNothingElse() {
            numbers.change(new BookingSettings(30, 14, 20, 20, 2, 24, 120, 10, 6), PersonId.next(), "for this test");
            Person noor = lab().student("Noor Candlewick");
            AssignmentId pegs = assignment(noor, "Peg and plate");
            AssignmentId stacks = assignment(noor, "Stacking");
            assertThat(book(noor, "2026-03-13T10:07:00Z", pegs)).isInstanceOf(Outcome.Booked.class);
            Outcome second = book(noor, "2026-03-17T10:07:00Z", pegs);
            assertThat(book(noor, "2026-03-17T11:07:00Z", stacks)).isInstanceOf(Outcome.Booked.class);

            Outcome.Refused refused = refused(book(noor, "2026-03-18T10:07:00Z", pegs));
            assertThat(refused.rule()).isEqualTo("quota-assignment");
            assertThat(refused.says())
                    .contains("2 bookings are allowed for \"Peg and plate\".")
                    .contains("You have 2.")
                    .contains("does not start anew; an instructor can raise the number")
                    .contains("start within 24 h are open to all");
            assertThat(book(noor, "2026-03-12T08:37:00Z", pegs)).isInstanceOf(Outcome.Booked.class);
            desk.cancel(((Outcome.Booked) second).booking().id(), noor.id());
            assertThat(book(noor, "2026-03-18T10:07:00Z", pegs)).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void refusesAnAssignmentOfSomebodyElse() {
            Person noor = lab().student("Noor Candlewick");
            AssignmentId others = assignment(lab().student("Mateo Ironbark"), "Peg and plate");
            assertThat(refused(book(noor, "2026-03-13T10:07:00Z", others)).rule())
                    .isEqualTo("assignment");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
