package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.SampleLab;
import org.standclear.cell.CellStates;
import org.standclear.cell.Cells;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.people.Accommodations;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What the lab's tables become for the solver: each rule of a plan reaches it. It is Wed 11 March 2026, 09:00 UTC. */
class WindowProblemIT {

    private static final LocalDate THURSDAY = LocalDate.of(2026, 3, 12);
    private static final Instant MIDNIGHT = Instant.parse("2026-03-12T00:00:00Z");
    private static final Instant NOON = Instant.parse("2026-03-12T12:00:00Z");
    private static final Instant FRIDAY_NOON = Instant.parse("2026-03-13T12:00:00Z");
    private static final Instant END = Instant.parse("2026-03-14T00:00:00Z");

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        Windows windows;

        @Autowired
        TurnRequests requests;

        @Autowired
        WindowProblem problems;

        @Autowired
        CourseRegister courses;

        @Autowired
        Cells cells;

        @Autowired
        CellStates states;

        @Autowired
        BookingDesk desk;

        @Autowired
        Accommodations accommodations;

        @Autowired
        JdbcClient jdbc;

        private SampleLab lab;
        private Person ines;
        private Person noor;
        private Person tal;
        private CellId avocet;
        private UUID window;

        @BeforeEach
        void aWindowOfTwoDays() {
            clock.moveToStart();
            lab = new SampleLab(application);
            ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            noor = lab.student("Noor Candlewick");
            tal = lab.student("Tal Emberley");
            avocet = lab.cell(0);
            window = windows.open("Rush", THURSDAY, THURSDAY.plusDays(1), MIDNIGHT, ines.id());
        }

        @AfterEach
        void endIt() {
            jdbc.sql("""
                    update booking_windows set closed_by = made_by, closed_at = made_at, closed_reason = 'the test is over'
                    where made_by = ?""").param(ines.id().value()).update();
        }

        private AssignmentId assignmentDue(Instant due, int runs) {
            CourseId course =
                    done(courses.addCourse("W" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            SectionId section = done(courses.addSection(course, "01", null));
            done(courses.enrol(noor.id(), section, null));
            return done(courses.addAssignment(
                    new NewAssignment(course, "Peg and plate", runs, Map.of(section, due), null)));
        }

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private void asks(Person who, @Nullable AssignmentId assignment, int turns, boolean attends) {
            List<Span> times = List.of(new Span(MIDNIGHT, END));
            assertThat(requests.ask(new TurnRequest(
                            UUID.randomUUID(),
                            window,
                            who.id(),
                            null,
                            assignment,
                            cells.current(avocet).fittedTool(),
                            turns,
                            attends,
                            false,
                            times,
                            List.of())))
                    .isTrue();
        }

        private Problem problem() {
            return problems.of(windows.find(window).orElseThrow());
        }

        private Attendant attendant(Person person) {
            return problem().attendants().stream()
                    .filter(one -> one.person().equals(person.id().toString()))
                    .findFirst()
                    .orElseThrow();
        }

        @Test
        void turnsEndWithTheDueDateOrTheWindow() {
            asks(noor, assignmentDue(FRIDAY_NOON, 3), 2, false);
            asks(tal, null, 1, false);

            assertThat(problem().turns())
                    .filteredOn(turn -> turn.operator().equals(noor.id().toString()))
                    .hasSize(2)
                    .allSatisfy(turn -> assertThat(turn.times().window()).isEqualTo(new Span(MIDNIGHT, FRIDAY_NOON)));
            assertThat(problem().turns())
                    .filteredOn(turn -> turn.operator().equals(tal.id().toString()))
                    .singleElement()
                    .satisfies(turn -> assertThat(turn.times().window()).isEqualTo(new Span(MIDNIGHT, END)));
        }

        @Test
        void nobodyIsOwedMoreThanIsMissingNorMoreThanTheyAskFor() {
            AssignmentId assignment = assignmentDue(END.plus(Duration.ofDays(3)), 3);
            asks(noor, assignment, 5, false);
            assertThat(problem().owed()).containsEntry(noor.id().toString(), 3);

            Booking one = booked("2026-03-16T10:00:00Z", assignment);
            assertThat(problem().owed()).containsEntry(noor.id().toString(), 2);
            desk.cancel(one.id(), noor.id());
            assertThat(problem().owed()).as("cancelled").containsEntry(noor.id().toString(), 3);

            asks(noor, assignment, 1, false);
            assertThat(problem().owed()).containsEntry(noor.id().toString(), 1);
        }

        private Booking booked(String start, @Nullable AssignmentId assignment) {
            BookingDesk.Outcome outcome = desk.book(
                    new MakeBooking(avocet, Instant.parse(start), noor.id(), null, null, assignment, ines.id()));
            return ((BookingDesk.Outcome.Booked) outcome).booking();
        }

        @Test
        void whatStandsTakesPeopleAndSlots() {
            asks(noor, null, 1, false);
            asks(tal, null, 0, true);
            booked("2026-03-12T12:00:00Z", null);
            CellId bittern = lab.cell(15);
            desk.book(new MakeBooking(
                    bittern,
                    Instant.parse("2026-03-12T13:15:00Z"),
                    lab.student("Kofi Marblewood").id(),
                    tal.id(),
                    null,
                    null,
                    ines.id()));
            desk.close(new CloseCell(
                    avocet,
                    NOON.plus(Duration.ofHours(2)),
                    NOON.plus(Duration.ofHours(3)),
                    CellClosure.Kind.EXAM,
                    "RBT 214",
                    ines.id()));

            Problem problem = problem();

            assertThat(problem.busy().get(noor.id().toString())).containsExactly(Span.minutes(NOON, 30));
            assertThat(problem.busy().get(tal.id().toString()))
                    .containsExactly(Span.minutes(Instant.parse("2026-03-12T13:15:00Z"), 30));
            assertThat(problem.slots())
                    .filteredOn(slot -> slot.cell().equals(avocet.toString()))
                    .extracting(FreeSlot::span)
                    .contains(
                            Span.minutes(NOON.minus(Duration.ofMinutes(30)), 30),
                            Span.minutes(NOON.plusSeconds(1800), 30))
                    .doesNotContain(
                            Span.minutes(NOON, 30),
                            Span.minutes(NOON.plus(Duration.ofHours(2)), 30),
                            Span.minutes(NOON.plus(Duration.ofMinutes(150)), 30))
                    .contains(Span.minutes(NOON.plus(Duration.ofHours(3)), 30));
        }

        @Test
        void onlyStaffAttendOnARestrictedCell() {
            asks(tal, null, 0, true);
            assertThat(attendant(tal).cells()).contains(avocet.toString());

            states.restrict(avocet, lab.technician("Adaeze Lanternby").id(), "edges on the tool");

            assertThat(attendant(tal).cells()).doesNotContain(avocet.toString());
            assertThat(attendant(lab.technician("Hemi Coppergate")).cells()).contains(avocet.toString());
        }

        @Test
        void whoseAuthorisationEndsInTheWindowIsNoAttendant() {
            Person until = lab.person("Wren Saltmarsh", Role.STUDENT);
            lab.authorise(until.id(), Duty.ATTENDANT, avocet, END.minusSeconds(3600));
            Person whole = lab.person("Kofi Marblewood", Role.STUDENT);
            lab.authorise(whole.id(), Duty.ATTENDANT, avocet, END);
            asks(noor, null, 1, false);

            assertThat(problem().attendants())
                    .extracting(Attendant::person)
                    .contains(whole.id().toString())
                    .doesNotContain(until.id().toString());
        }

        @Test
        void aHelperIsStaffAndHelpIsNeededByWhomTheLabKeepsItFor() {
            accommodations.set(noor.id(), new Accommodations.Accommodation(45, false, true), ines.id());
            asks(noor, null, 1, false);
            asks(tal, null, 1, true);

            assertThat(problem().turns())
                    .filteredOn(turn -> turn.work().helper())
                    .singleElement()
                    .satisfies(turn -> {
                        assertThat(turn.operator()).isEqualTo(noor.id().toString());
                        assertThat(turn.work().minutes()).isEqualTo(45);
                    });
            assertThat(attendant(tal).helper()).isFalse();
            assertThat(attendant(lab.technician("Adaeze Lanternby")).helper()).isTrue();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
