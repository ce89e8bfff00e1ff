package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.Bookings;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.MoveBooking;
import org.standclear.booking.SampleLab;
import org.standclear.message.Messages;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Enrolment;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * A file that names nobody of a section any more, while one of it has a booking for an assignment of the course: what becomes
 * of the booking, who is told, and what taking the roster back mends.
 */
class VanishedSectionIT {

    private static final String NOON = "2026-03-12T12:07:00Z";
    private static final String FRIDAY = "2026-03-13T12:07:00Z";

    abstract static class Cases extends RosterCases {

        @Autowired
        Bookings bookings;

        @Autowired
        Messages messages;

        private @Nullable SampleLab lab;
        private @Nullable Person kofi;
        private @Nullable Person leilani;
        private @Nullable CellId cell;
        private @Nullable AssignmentId assignment;
        private @Nullable Booking booking;

        @BeforeEach
        void aSectionWithABooking() {
            SampleLab made = new SampleLab(application);
            lab = made;
            kofi = made.student("Kofi Marblewood");
            leilani = made.student("Leilani Driftmark");
            for (Person student : List.of(kofi(), Objects.requireNonNull(leilani))) {
                done(register.enrol(student.id(), section(), null));
            }
            cell = made.cell(7);
            assignment = done(register.addAssignment(new NewAssignment(
                    course(), "Peg and plate", 3, Map.of(section(), Instant.parse("2026-03-20T16:00:00Z")), null)));
            booking = ((Outcome.Booked) desk.book(forTheAssignment(NOON))).booking();
        }

        private Person kofi() {
            return Objects.requireNonNull(kofi);
        }

        private SectionId section() {
            return Objects.requireNonNull(second);
        }

        private CourseId course() {
            return Objects.requireNonNull(courseId);
        }

        private MakeBooking forTheAssignment(String start) {
            return new MakeBooking(
                    Objects.requireNonNull(cell),
                    Instant.parse(start),
                    kofi().id(),
                    null,
                    course(),
                    assignment,
                    kofi().id());
        }

        private Booking standing() {
            return bookings.find(Objects.requireNonNull(booking).id()).orElseThrow();
        }

        private List<String> toldTo(Person person) {
            return messages.of(person.id(), 10).stream()
                    .map(Messages.Kept::subject)
                    .toList();
        }

        private String withoutTheSection() {
            return location(sendFile("login,name,course,section\n" + line("noor", "Noor Candlewick", "01")));
        }

        @Test
        void theBookingStandsAndWhoHasItIsToldOnce() {
            Booking before = standing();
            String preview = withoutTheSection();
            assertThat(page(get(preview), ines()).text())
                    .contains(course + "-02: the file names nobody of this section")
                    .contains("1 booking ahead, which stays");
            assertThat(toldTo(kofi())).isEmpty();

            location(apply(preview, "takeOut", "true"));

            assertThat(courses.enrolmentsOf(kofi().id())).isEmpty();
            assertThat(standing()).isEqualTo(before);
            assertThat(toldTo(kofi())).containsExactly("You are not in " + course + "-02 any more");
            assertThat(messages.of(kofi().id(), 1).get(0).lines())
                    .contains("Your booking stays:")
                    .anyMatch(line -> line.contains("12:07-12:37"));
            assertThat(toldTo(Objects.requireNonNull(leilani)))
                    .as("has nothing ahead")
                    .isEmpty();
            Document applied = page(get(preview), ines());
            assertThat(applied.select("#changed ~ ul li").eachText())
                    .contains(
                            "1 new enrolment.",
                            "2 taken out of their sections; 1 booking that they have ahead now stays.");
            assertThat(apply(preview, "takeOut", "true").getStatus()).as("once").isEqualTo(422);
            assertThat(toldTo(kofi())).hasSize(1);
        }

        @Test
        void theBookingCanStillBeSeenMovedAndGivenUpButNoOtherIsMadeForTheAssignment() {
            location(apply(withoutTheSection(), "takeOut", "true"));

            assertThat(page(get("/bookings/" + standing().id()), kofi()).text()).contains("Peg and plate");
            assertThat(desk.book(forTheAssignment(FRIDAY)))
                    .isInstanceOfSatisfying(
                            Outcome.Refused.class,
                            refused -> assertThat(refused.rule()).isEqualTo("assignment"));
            Person adaeze = Objects.requireNonNull(lab).technician("Adaeze Lanternby");
            Outcome moved = desk.moveTo(new MoveBooking(
                    standing().id(),
                    Objects.requireNonNull(cell),
                    Instant.parse(FRIDAY),
                    true,
                    adaeze.id(),
                    "the cell went down"));
            assertThat(moved)
                    .isInstanceOfSatisfying(
                            Outcome.Booked.class,
                            booked -> assertThat(booked.booking().assignment()).isEqualTo(assignment));
            assertThat(desk.cancel(((Outcome.Booked) moved).booking().id(), kofi().id()))
                    .isInstanceOf(Bookings.Transition.Moved.class);
        }

        @Test
        void takingTheRosterBackPutsThemInAgainAndLeavesTheBooking() {
            Booking before = standing();
            String preview = withoutTheSection();
            location(apply(preview, "takeOut", "true"));

            location(act(preview + "/undo"));

            assertThat(courses.enrolmentsOf(kofi().id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactly("02");
            assertThat(standing()).isEqualTo(before);
            assertThat(toldTo(kofi()))
                    .containsExactlyInAnyOrder(
                            "You are not in " + course + "-02 any more", "You are in " + course + "-02 again");
            assertThat(desk.book(forTheAssignment(FRIDAY))).isInstanceOf(Outcome.Booked.class);
            assertThat(page(get(preview), ines()).select("#changed")).isEmpty();
        }

        @Test
        void nobodyIsTakenOutOrToldUnlessAsked() {
            String preview = withoutTheSection();

            location(apply(preview));

            assertThat(courses.enrolmentsOf(kofi().id())).hasSize(1);
            assertThat(toldTo(kofi())).isEmpty();
            assertThat(page(get(preview), ines()).select("#changed ~ ul li").eachText())
                    .containsExactly(
                            "1 new account, which can sign in once an administrator has given a temporary password.",
                            "1 new enrolment.");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
