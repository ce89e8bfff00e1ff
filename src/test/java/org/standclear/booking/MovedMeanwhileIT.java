package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.BulkMoves.Done;
import org.standclear.booking.BulkMoves.Moved;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.LockWaits;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What happens between the look at a bulk move and the act. It is Wed 11 March, 09:00 UTC. */
class MovedMeanwhileIT {

    abstract static class Cases extends BulkMoveCases {

        @Autowired
        CourseRegister register;

        private List<Planned> plan() {
            return bulkMoves.plan(everybody());
        }

        private Done move(List<Planned> seen, Person by) {
            return moveAll(BulkMoves.written(seen), by);
        }

        private Map<BookingId, Moved> moved(Done done) {
            assertThat(done).isInstanceOf(Done.All.class);
            return bulkMoves.find(((Done.All) done).id()).orElseThrow().moved().stream()
                    .collect(java.util.stream.Collectors.toMap(Moved::was, one -> one));
        }

        private static Moved of(Map<BookingId, Moved> moved, Booking booking) {
            return Objects.requireNonNull(moved.get(booking.id()));
        }

        private Booking now(Moved one) {
            return bookings.find(Objects.requireNonNull(one.now())).orElseThrow();
        }

        private static Slot place(List<Planned> plan, Booking booking) {
            return Objects.requireNonNull(plan.stream()
                    .filter(one -> one.booking().id().equals(booking.id()))
                    .findFirst()
                    .orElseThrow()
                    .to());
        }

        /** Somebody who waits is offered the very slot, as a round of the waiting list does every ten seconds. */
        private void offeredToSomebody(Slot slot) {
            Person kofi = student("Kofi Marblewood", slot.cell());
            waitingList.join(new JoinWait(kofi.id(), slot.cell(), slot.start(), slot.end(), null, null, kofi.id()));
            waitingList.round();
            assertThat(waitingList.of(kofi.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.offer()).isNotNull());
        }

        @Test
        void takesAnotherSlotForWhoseWasOfferedToSomebodyMeanwhile() {
            CellId other = lab().cell(15);
            Booking one = lab().booked(avocet, THURSDAY_NOON, student("Noor Candlewick", avocet, other), null);
            Booking two = lab().booked(avocet, "2026-03-12T12:37:00Z", student("Yuki Halfmoon", avocet, other), null);
            Person adaeze = lab().technician("Adaeze Lanternby");
            List<Planned> seen = plan();
            Slot lost = place(seen, one);
            offeredToSomebody(lost);

            Map<BookingId, Moved> moved = moved(move(seen, adaeze));

            assertThat(of(moved, one).elsewhere()).isTrue();
            assertThat(now(of(moved, one)).start()).isAfter(lost.start());
            assertThat(of(moved, two).elsewhere()).as("as it was seen").isFalse();
            assertThat(now(of(moved, two)).start()).isEqualTo(place(seen, two).start());
        }

        /** The move is undone while somebody whom it left without a slot takes an offer of one on the same cell. */
        @Test
        void isUndoneAfterWhoTakesAnOfferAndNotAcross() throws Exception {
            Person adaeze = lab().technician("Adaeze Lanternby");
            lab().booked(avocet, THURSDAY_NOON, student("Noor Candlewick", avocet, lab().cell(15)), null);
            Person kofi = student("Kofi Marblewood", avocet);
            Booking left = lab().booked(avocet, "2026-03-12T13:07:00Z", kofi, null);
            UUID id = ((Done.All) move(plan(), adaeze)).id();
            waitingList.round();
            UUID offer = Objects.requireNonNull(waitingList.of(kofi.id()).get(0).offer())
                    .id();
            JdbcTemplate jdbc = application.getBean(JdbcTemplate.class);
            TransactionTemplate transaction = new TransactionTemplate(transactions);
            LockWaits waits = new LockWaits(jdbc);

            CompletableFuture<Optional<String>> undone = transaction.execute(taking -> {
                jdbc.queryForList("select id from booking_offers where id = ? for update", offer);
                CompletableFuture<Optional<String>> undoing = CompletableFuture.supplyAsync(
                        () -> transaction.execute(status -> bulkMoves.undo(id, adaeze.id())));
                waits.awaitAnybody();
                assertThat(waitingList.accept(offer, kofi.id())).isInstanceOf(BookingDesk.Outcome.Booked.class);
                return undoing;
            });

            assertThat(undone).succeedsWithin(20, TimeUnit.SECONDS);
            assertThat(bookings.of(kofi.id(), clock.instant()))
                    .as("the slot that was taken, and no second one")
                    .singleElement()
                    .satisfies(one -> assertThat(one.id()).isNotEqualTo(left.id()));
        }

        @Test
        void movesNobodyWhenSomebodyWouldLoseATurnThatThePlanHad() {
            CellId other = lab().cell(15);
            Person noor = student("Noor Candlewick", avocet);
            lab().authorise(noor.id(), Duty.OPERATOR, other, Instant.parse("2026-03-12T12:45:00Z"));
            Booking one = lab().booked(avocet, THURSDAY_NOON, noor, null);
            Booking two = lab().booked(avocet, "2026-03-12T12:37:00Z", student("Yuki Halfmoon", avocet, other), null);
            List<Planned> seen = plan();
            offeredToSomebody(place(seen, one));

            Done done = move(seen, lab().technician("Adaeze Lanternby"));

            assertThat(done).isInstanceOf(Done.Refused.class);
            assertThat(((Done.Refused) done).says()).contains("no other is left for Noor Candlewick");
            assertThat(bookings.find(one.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
            assertThat(bookings.find(two.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
            assertThat(of(moved(move(plan(), lab().technician("Adaeze Lanternby"))), one)
                            .now())
                    .as("the new plan says so: a make-up")
                    .isNull();
        }

        @Test
        void movesWhoChangedSomethingMeanwhileAndLeavesWhoCancelled() {
            CellId other = lab().cell(15);
            Person mateo = student("Mateo Ironbark", avocet, other);
            Person noor = student("Noor Candlewick", avocet, other);
            Booking one = lab().booked(avocet, THURSDAY_NOON, noor, null);
            Person yuki = student("Yuki Halfmoon", avocet, other);
            Booking two = lab().booked(avocet, "2026-03-12T12:37:00Z", yuki, null);
            List<Planned> seen = plan();
            bookings.nameAttendant(one.id(), mateo.id(), noor.id());
            desk.cancel(two.id(), yuki.id());
            Person late = student("Leilani Driftmark", avocet, other);
            Booking three = lab().booked(avocet, "2026-03-12T13:07:00Z", late, null);

            Map<BookingId, Moved> moved = moved(move(seen, lab().technician("Adaeze Lanternby")));

            assertThat(moved).containsOnlyKeys(one.id(), three.id());
            assertThat(now(of(moved, one)).attendant()).isEqualTo(mateo.id());
            assertThat(of(moved, one).elsewhere()).isFalse();
            assertThat(of(moved, three).elsewhere()).as("nobody had seen it").isTrue();
        }

        @Test
        void keepsASlotThatComesLaterInLineThanWhenThePlanWasMade() {
            CellId other = lab().cell(15);
            Person yuki = student("Yuki Halfmoon", avocet, other);
            Booking one = lab().booked(avocet, THURSDAY_NOON, yuki, null);
            Person adaeze = lab().technician("Adaeze Lanternby");
            plan();
            String later = one.id() + " " + other + " 2026-03-25T09:15:00Z;";

            Done done = new TransactionTemplate(transactions)
                    .execute(status -> bulkMoves.moveAll(everybody(), later, adaeze.id(), "cable chafed"));

            Moved moved = of(moved(Objects.requireNonNull(done)), one);
            assertThat(moved.elsewhere()).isFalse();
            assertThat(now(moved).start()).isEqualTo(Instant.parse("2026-03-25T09:15:00Z"));
        }

        @Test
        void movesWhoLeftTheCourseSinceAndPlansNothingThatTheDeskRefuses() {
            CellId other = lab().cell(15);
            Person noor = student("Noor Candlewick", avocet, other);
            var course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            var section = done(register.addSection(course, "01", null));
            done(register.enrol(noor.id(), section, null));
            AssignmentId pegs = done(register.addAssignment(new NewAssignment(
                    course, "Peg and plate", 1, Map.of(section, Instant.parse("2026-03-20T12:00:00Z")), null)));
            Booking one = ((BookingDesk.Outcome.Booked) desk.book(new MakeBooking(
                            avocet, Instant.parse(THURSDAY_NOON), noor.id(), null, null, pegs, noor.id())))
                    .booking();
            jdbc.sql("delete from enrolments where person_id = ?")
                    .param(noor.id().value())
                    .update();
            Person yuki = student("Yuki Halfmoon", avocet);
            lab().authorise(yuki.id(), Duty.OPERATOR, other, Instant.parse("2026-03-12T12:50:00Z"));
            Booking two = lab().booked(avocet, "2026-03-12T12:37:00Z", yuki, null);
            List<Planned> seen = plan();
            assertThat(seen)
                    .filteredOn(planned -> planned.booking().id().equals(two.id()))
                    .singleElement()
                    .satisfies(planned -> assertThat(planned.to())
                            .as("she may operate there until 12:50 only, and slots end 12:45 and 13:15")
                            .isNull());

            Map<BookingId, Moved> moved = moved(move(seen, lab().technician("Adaeze Lanternby")));

            assertThat(now(of(moved, one)).assignment()).isEqualTo(pegs);
            assertThat(now(of(moved, one)).course()).isEqualTo(course);
        }

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            assertThat(outcome).isInstanceOf(CourseRegister.Outcome.Done.class);
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
