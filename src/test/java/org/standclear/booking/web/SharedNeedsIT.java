package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Booking;
import org.standclear.booking.SampleLab;
import org.standclear.booking.Turns;
import org.standclear.cell.CellFeatures;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Plans keep to what runs and people need, and nobody learns of another's. It is Wed 11 March 2026, 09:00 UTC. */
class SharedNeedsIT {

    abstract static class Cases extends WindowCases {

        @Autowired
        CourseRegister register;

        @Autowired
        SlotLengths lengths;

        @Autowired
        CellFeatures features;

        @Autowired
        Turns turns;

        private CourseId course(Person... students) {
            CourseId course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            SectionId section = done(register.addSection(course, "01", null));
            for (Person student : students) {
                done(register.enrol(student.id(), section, null));
            }
            done(register.addAssignment(new NewAssignment(
                    course, "Peg and plate", 1, Map.of(section, Instant.parse("2026-03-20T12:00:00Z")), null)));
            return course;
        }

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private String assignmentOf(Person student) {
            return application
                    .getBean(Courses.class)
                    .assignmentsOf(student.id())
                    .get(0)
                    .id()
                    .toString();
        }

        @Test
        void turnsOfFortyFiveMinutesAreSetWithTheirEffectSharedOutAndBooked() {
            CourseId course = course(noor, mateo);
            String path = "/courses/" + course + "/slot-length";
            assertThat(page(get(path), ines).text()).contains("last 30 min", "Nobody has changed it");
            assertThat(page(get(path + "?minutes=20&reason=why"), ines).text())
                    .contains("a course can only have longer ones");
            Document look = page(get(path + "?minutes=45&reason=long set-up"), ines);
            assertThat(look.text())
                    .contains("lasts 45 min instead of 30, for 2 students")
                    .contains("15 min after each of these turns stay unused")
                    .contains("No booking for this course stands ahead");
            assertThat(lengths.ofCourse(course)).as("only looked at").isEmpty();
            assertThat(send(form(path).param("minutes", "45").param("reason", " "), ines)
                            .getStatus())
                    .isEqualTo(422);
            location(send(form(path).param("minutes", "45").param("reason", "long set-up"), ines));
            assertThat(lengths.ofCourse(course)).hasValue(45);
            assertThat(page(get(path), ines).text()).contains("Slots of", "last 45 min", "long set-up");
            assertThat(send(get(path), noor).getStatus()).isEqualTo(403);

            UUID window = window();
            location(send(
                    request(window, 2, FRIDAY_EIGHT, FRIDAY_TEN)
                            .param("partner", mateo.login())
                            .param("assignment", assignmentOf(noor)),
                    noor));
            location(send(request(window, 1, FRIDAY_EIGHT, FRIDAY_TEN).param("partner", noor.login()), mateo));
            UUID search = search(window);
            location(send(form("/searches/" + search + "/accept"), ines));

            List<Booking> longer = ahead(noor).stream()
                    .filter(booking -> booking.operator().equals(noor.id()))
                    .toList();
            assertThat(longer).as("four hours hold them all").hasSize(2);
            assertThat(longer)
                    .allSatisfy(booking -> assertThat(Duration.between(booking.start(), booking.end()))
                            .isEqualTo(Duration.ofMinutes(45)));
            assertThat(ahead(mateo).stream()
                            .filter(booking -> booking.operator().equals(mateo.id())))
                    .hasSize(1)
                    .allSatisfy(booking -> assertThat(Duration.between(booking.start(), booking.end()))
                            .isEqualTo(Duration.ofMinutes(30)));
        }

        @Test
        void aLowerBenchIsKeptToAndStaysBetweenThePersonAndStaff() {
            SampleLab made = Objects.requireNonNull(lab);
            CellId bittern = made.cell(15);
            for (Person student : List.of(noor, mateo)) {
                for (Duty duty : Duty.values()) {
                    made.authorise(student.id(), duty, bittern, MovableClock.START.plus(Duration.ofDays(90)));
                }
            }
            accommodations.set(noor.id(), new Accommodation(0, true, false), ines.id());
            features.add(bittern, CellFeatures.LOWER_BENCH, ines.id());
            try {
                UUID window = window();
                location(send(request(window, 2, FRIDAY_EIGHT, FRIDAY_TEN).param("partner", mateo.login()), noor));
                location(send(request(window, 2, FRIDAY_EIGHT, FRIDAY_TEN).param("partner", noor.login()), mateo));
                UUID search = search(window);
                location(send(form("/searches/" + search + "/accept"), ines));
                List<Booking> own = ahead(noor).stream()
                        .filter(booking -> booking.operator().equals(noor.id()))
                        .toList();
                assertThat(own)
                        .hasSize(2)
                        .allSatisfy(booking -> assertThat(booking.cell()).isEqualTo(bittern));

                String day = "/book?day=2026-03-13";
                String here = "section[aria-labelledby=cell-" + avocet + "]";
                assertThat(page(get(day), noor).select(here).text())
                        .contains("There is no lower bench here, which the lab keeps for you");
                assertThat(page(get(day), noor).select(here + " .slots a.slot[href^=/book/slot]"))
                        .isEmpty();
                for (String path : List.of(
                        day,
                        "/windows/" + window,
                        "/bookings/" + own.get(0).id(),
                        "/book/waits",
                        "/me",
                        "/me/messages",
                        "/me/partners",
                        "/book/slot?cell=" + avocet + "&start=2026-03-13T12:00:00Z")) {
                    assertThat(page(get(path), mateo).text())
                            .as(path)
                            .doesNotContainIgnoringCase("lower bench")
                            .doesNotContainIgnoringCase("accommodation");
                }
                assertThat(page(get("/bookings/" + own.get(0).id()), noor).text())
                        .contains("lower bench");
            } finally {
                features.of(bittern).forEach(one -> features.remove(one.id(), ines.id()));
            }
        }

        @Test
        void aMakeUpComesFirstAndIsUsedByThePlan() {
            for (int other = 0; other < 3; other++) {
                Person student = student("Student " + other);
                location(send(request(windowOnce(), 2, FRIDAY_EIGHT).param("partner", noor.login()), student));
            }
            turns.giveMakeUp(mateo.id(), "the power was away", ines.id());
            location(send(request(windowOnce(), 1, FRIDAY_EIGHT).param("partner", noor.login()), mateo));
            UUID search = search(windowOnce());
            location(send(form("/searches/" + search + "/accept"), ines));

            Booking made = ahead(mateo).stream()
                    .filter(booking -> booking.operator().equals(mateo.id()))
                    .findFirst()
                    .orElseThrow();
            assertThat(turns.makeUpsOf(mateo.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.usedBy()).isEqualTo(made.id()));
            location(send(form("/windows/" + windowOnce() + "/undo"), ines));
            assertThat(turns.makeUpsOf(mateo.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.stands()).isTrue());
        }

        private @Nullable UUID only;

        private UUID windowOnce() {
            if (only == null) {
                only = window();
            }
            return only;
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
