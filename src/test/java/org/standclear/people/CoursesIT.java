package org.standclear.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Courses, what is due in them, and their limits, on both engines. */
class CoursesIT {

    abstract static class Cases {

        @Autowired
        PeopleRegister people;

        @Autowired
        CourseRegister register;

        @Autowired
        Courses courses;

        private final String code = UUID.randomUUID().toString().substring(0, 12);
        private Person kofi;
        private CourseId course;
        private SectionId first;
        private SectionId second;

        @BeforeEach
        void add() {
            kofi = ((PeopleRegister.Outcome.Done) people.add(new NewPerson(
                            "c" + UUID.randomUUID(),
                            "Kofi Marblewood",
                            Set.of(Role.STUDENT),
                            new Password.Hashed("x"),
                            null)))
                    .person();
            course = done(register.addCourse(code, "Robot Programming I", null));
            first = done(register.addSection(course, "01", null));
            second = done(register.addSection(course, "02", kofi.id()));
        }

        private static <T> T done(Outcome<T> outcome) {
            return ((Outcome.Done<T>) outcome).id();
        }

        private static <T> String field(Outcome<T> outcome) {
            return ((Outcome.Refused<T>) outcome).field();
        }

        @Test
        void beginWithTheHouseLimits() {
            assertThat(courses.find(course)).contains(new Course(course, code, "Robot Programming I", 50, null));
            assertThat(courses.all()).extracting(Course::code).contains(code);
        }

        @Test
        void giveEachSectionItsOwnDueDate() {
            Instant thursday = MovableClock.START.plus(Duration.ofDays(1));
            Instant friday = thursday.plus(Duration.ofDays(1));
            register.enrol(kofi.id(), second, null);
            register.enrol(kofi.id(), second, null);
            var assignment = done(register.addAssignment(
                    new NewAssignment(course, "Peg and plate", 3, Map.of(first, thursday, second, friday), null)));

            assertThat(courses.enrolmentsOf(kofi.id()))
                    .containsExactly(new Enrolment(kofi.id(), course, second, code, "02"));
            Assignment expected = new Assignment(assignment, course, second, "Peg and plate", 3, friday);
            assertThat(courses.assignmentsOf(kofi.id())).containsExactly(expected);
            assertThat(courses.assignmentOf(kofi.id(), assignment)).contains(expected);
        }

        @Test
        void refuseWhatIsThereAlready() {
            assertThat(field(register.addCourse(" " + code + " ", "Again", null)))
                    .isEqualTo("code");
            assertThat(field(register.addSection(course, "01", null))).isEqualTo("code");
            assertThat(field(register.addCourse("x".repeat(21), "Long", null))).isEqualTo("code");
            assertThat(field(register.addCourse(code + "b", "", null))).isEqualTo("title");
            assertThat(field(register.addAssignment(new NewAssignment(course, "None", 0, Map.of(), null))))
                    .isEqualTo("minimumRuns");
        }

        private Outcome<CourseId> limits(double override, @Nullable Double speed, int seen) {
            return register.changeLimits(new NewLimits(course, override, speed, "rush week", seen, kofi.id()));
        }

        @Test
        void changeLimitsOnceForEachVersionSeen() {
            done(limits(40, 200.0, 1));

            assertThat(courses.find(course).orElseThrow().overridePercent()).isEqualTo(40);
            assertThat(courses.find(course).orElseThrow().toolSpeedMmS()).isEqualTo(200.0);
            assertThat(limits(30, null, 1)).isInstanceOf(Outcome.Stale.class);
            done(limits(30, null, 2));
            assertThat(courses.find(course).orElseThrow().toolSpeedMmS()).isNull();
        }

        @Test
        void takeLimitsAtButNotBeyondTheirEnds() {
            for (double wrong : new double[] {0, -1, Math.nextUp(100.0), Double.NaN, Double.POSITIVE_INFINITY}) {
                assertThat(field(limits(wrong, null, 1))).as("%s", wrong).isEqualTo("overridePercent");
            }
            for (double wrong : new double[] {0, -5, Math.nextUp(10_000.0), Double.NaN, Double.NEGATIVE_INFINITY}) {
                assertThat(field(limits(50, wrong, 1))).as("%s", wrong).isEqualTo("toolSpeedMmS");
            }
            done(limits(100, 10_000.0, 1));
            done(limits(Double.MIN_NORMAL, 0.1, 2));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
