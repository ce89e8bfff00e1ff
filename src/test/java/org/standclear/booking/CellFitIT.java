package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.BulkMoves.Which;
import org.standclear.cell.CellFeatures;
import org.standclear.cell.Cells;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.AssignmentNeeds;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Cells that have not what a run needs are refused with why. It is Wed 11 March, 09:00 UTC. */
class CellFitIT {

    abstract static class Cases extends BookingCases {

        @Autowired
        CourseRegister register;

        @Autowired
        AssignmentNeeds needs;

        @Autowired
        CellFeatures features;

        @Autowired
        Accommodations accommodations;

        @Autowired
        SlotCalendar calendar;

        @Autowired
        Cells cells;

        @Autowired
        BulkMoves bulkMoves;

        private final List<UUID> added = new ArrayList<>();

        private void has(CellId cell, String words) {
            assertThat(features.add(cell, words, PersonId.next())).isEmpty();
            features.of(cell).forEach(one -> added.add(one.id()));
        }

        /** Others book in the same database, and a lower bench anywhere concerns everybody who needs one. */
        @AfterEach
        void nothingBeyondTheUsual() {
            added.forEach(id -> features.remove(id, PersonId.next()));
        }

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private AssignmentId assignment(Person student) {
            CourseId course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            SectionId section = done(register.addSection(course, "01", null));
            done(register.enrol(student.id(), section, null));
            return done(register.addAssignment(new NewAssignment(
                    course, "Peg and plate", 1, Map.of(section, Instant.parse("2026-03-20T12:00:00Z")), null)));
        }

        private Outcome book(CellId cell, String start, Person noor, @Nullable AssignmentId assignment) {
            return desk.book(new MakeBooking(cell, Instant.parse(start), noor.id(), null, null, assignment, noor.id()));
        }

        @Test
        void refusesACellThatCarriesAnotherToolOrLacksAFeature() {
            Person noor = lab().student("Noor Candlewick");
            AssignmentId pegs = assignment(noor);
            String fitted = cells.current(avocet).fittedTool();
            needs.set(pegs, new Needs("X-99", Set.of()), PersonId.next());
            Outcome.Refused tool = refused(book(avocet, THURSDAY_NOON, noor, pegs));
            assertThat(tool.rule()).isEqualTo("assignment-fit");
            assertThat(tool.says())
                    .contains("\"Peg and plate\" needs the tool X-99")
                    .contains("carries " + fitted)
                    .contains("No cell that runs has it now");

            needs.set(pegs, new Needs(fitted, Set.of("camera above the plate")), PersonId.next());
            assertThat(refused(book(avocet, THURSDAY_NOON, noor, pegs)).says())
                    .contains("has no camera above the plate");
            CellId bittern = lab().cell(15);
            has(bittern, "  Camera above   the plate ");
            assertThat(refused(book(avocet, THURSDAY_NOON, noor, pegs)).says())
                    .contains("These have it: "
                            + cells.find(bittern).orElseThrow().name());
            assertThat(book(bittern, "2026-03-12T12:15:00Z", noor, pegs)).isInstanceOf(Outcome.Booked.class);
            assertThat(book(avocet, "2026-03-12T13:07:00Z", noor, null))
                    .as("practice needs nothing")
                    .isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void keepsWhoWorksSittingToLowerBenchesOnceThereIsOne() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            accommodations.set(noor.id(), new Accommodation(0, true, false), PersonId.next());
            assertThat(book(avocet, THURSDAY_NOON, noor, null))
                    .as("staff set one up anywhere")
                    .isInstanceOf(Outcome.Booked.class);
            CellId bittern = lab().cell(15);
            has(bittern, CellFeatures.LOWER_BENCH);

            Outcome.Refused refused = refused(book(avocet, "2026-03-12T13:07:00Z", noor, null));
            assertThat(refused.rule()).isEqualTo("bench-fit");
            assertThat(refused.says()).contains("has no lower bench, which the lab keeps for you");
            assertThat(refused.nextFree())
                    .isNotEmpty()
                    .allSatisfy(slot -> assertThat(slot.cell()).isEqualTo(bittern));
            assertThat(calendar.nextFree(noor.id(), clock.instant(), 9))
                    .allSatisfy(slot -> assertThat(slot.cell()).isEqualTo(bittern));
            assertThat(book(bittern, "2026-03-12T13:15:00Z", noor, null)).isInstanceOf(Outcome.Booked.class);
            assertThat(book(avocet, "2026-03-12T13:07:00Z", yuki, null)).isInstanceOf(Outcome.Booked.class);
            assertThat(bulkMoves.plan(new Which(avocet, Instant.parse("2026-03-12T12:30:00Z"), false)))
                    .singleElement()
                    .satisfies(planned -> assertThat(
                                    Objects.requireNonNull(planned.to()).cell())
                            .isEqualTo(bittern));
        }

        @Test
        void keepsFeaturesInWordsOnceEach() {
            has(avocet, "lower bench");
            assertThat(features.add(avocet, "Lower  Bench", PersonId.next())).isPresent();
            assertThat(features.add(avocet, " ", PersonId.next())).isPresent();
            assertThat(features.add(avocet, "x".repeat(61), PersonId.next())).isPresent();
            UUID id = features.of(avocet).get(0).id();
            assertThat(features.remove(id, PersonId.next())).isTrue();
            assertThat(features.remove(id, PersonId.next())).isFalse();
            assertThat(features.add(avocet, "lower bench", PersonId.next())).isEmpty();
            added.add(features.of(avocet).get(0).id());
            assertThat(features.ofAll().get(avocet)).containsExactly("lower bench");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
