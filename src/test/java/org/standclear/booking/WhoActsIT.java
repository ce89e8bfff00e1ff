package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Joined;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.platform.web.NotFoundException;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * The services themselves refuse what is another lab's or another person's, without any page before them: staff of one lab
 * with the ids of another, and a student with those of another student.
 */
class WhoActsIT {

    private static final Instant LATER = Instant.parse("2026-03-12T15:00:00Z");

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        BookingDesk desk;

        @Autowired
        Confirmations confirmations;

        @Autowired
        WaitingList waitingList;

        @Autowired
        Turns turns;

        @Autowired
        BulkMoves bulkMoves;

        @Autowired
        JdbcClient jdbc;

        private SecondLab here;
        private SecondLab there;
        private PersonId adaeze;
        private Person noor;
        private Booking booking;

        @BeforeEach
        void twoLabs() {
            clock.moveToStart();
            here = new SecondLab(application, "America/Halifax");
            there = new SecondLab(application, "Europe/Berlin");
            adaeze = here.person(Role.TECHNICIAN).id();
            noor = there.person(Role.STUDENT);
            booking = there.in(() -> there.sample().booked(there.cell(), "2026-03-12T14:00:00Z", noor, null));
        }

        /** Acts in the own lab. */
        private void isNotThere(ThrowingCallable act) {
            assertThatThrownBy(() -> LabScope.run(here.id(), () -> run(act))).isInstanceOf(NotFoundException.class);
        }

        /** Acts in the other lab, where the booking is. */
        private void isNotTheirs(ThrowingCallable act) {
            assertThatThrownBy(() -> LabScope.run(there.id(), () -> run(act))).isInstanceOf(NotFoundException.class);
        }

        private static void run(ThrowingCallable act) {
            try {
                act.call();
            } catch (RuntimeException | Error thrown) {
                throw thrown;
            } catch (Throwable thrown) {
                throw new AssertionError(thrown);
            }
        }

        private MoveBooking move(SecondLab to, PersonId by) {
            return new MoveBooking(booking.id(), to.cell(), LATER, true, by, "why not");
        }

        private String state() {
            return jdbc.sql("select state from bookings where id = :id")
                    .param("id", booking.id().value())
                    .query(String.class)
                    .single();
        }

        private Offer offered() {
            return there.in(() -> {
                var on = (Joined.On) waitingList.join(new JoinWait(
                        noor.id(),
                        there.cell(),
                        Instant.parse("2026-03-12T16:00:00Z"),
                        Instant.parse("2026-03-12T16:30:00Z"),
                        null,
                        null,
                        noor.id()));
                waitingList.round();
                return Objects.requireNonNull(waitingList.of(noor.id()).stream()
                        .filter(one -> one.id().equals(on.waiting().id()))
                        .findFirst()
                        .orElseThrow()
                        .offer());
            });
        }

        @Test
        void staffOfOneLabFindNoBookingOfAnother() {
            isNotThere(() -> desk.moveTo(move(here, adaeze)));
            isNotThere(() -> desk.moveTo(move(there, adaeze)));
            isNotThere(() -> desk.moveByStaff(booking.id(), adaeze, "why not"));
            isNotThere(() -> desk.cancel(booking.id(), adaeze));
            isNotThere(() -> confirmations.confirm(booking.id(), adaeze));
            isNotThere(() -> turns.excuse(booking.id(), true, adaeze));
            isNotThere(() -> turns.countAgain(booking.id(), adaeze));
            // not even the operator, whose booking is another lab's and follows its rules
            isNotThere(() -> desk.cancel(booking.id(), noor.id()));
            // nor with the other lab's staff in its own scope
            isNotTheirs(() -> desk.moveTo(move(there, adaeze)));
            assertThat(state()).isEqualTo("BOOKED");
        }

        @Test
        void nothingIsMovedOrBookedOntoACellOfAnotherLab() {
            PersonId hemi = there.person(Role.TECHNICIAN).id();
            isNotTheirs(() -> desk.moveTo(move(here, hemi)));
            isNotThere(() -> desk.book(new MakeBooking(there.cell(), LATER, noor.id(), null, null, null, noor.id())));
            isNotThere(() -> desk.close(
                    new CloseCell(there.cell(), LATER, LATER.plusSeconds(1800), CellClosure.Kind.CLASS, "", adaeze)));
            isNotThere(() -> bulkMoves.moveAll(
                    new BulkMoves.Which(there.cell(), LATER, false), BulkMoves.written(List.of()), adaeze, "x"));
            assertThat(state()).isEqualTo("BOOKED");
        }

        @Test
        void waitsOffersClosuresAndMakeUpsOfAnotherLabAreNotThere() {
            Offer offer = offered();
            PersonId hemi = there.person(Role.TECHNICIAN).id();
            UUID closure = there.in(() -> ((BookingDesk.Closing.Closed) desk.close(new CloseCell(
                            there.cell(),
                            Instant.parse("2026-03-13T12:00:00Z"),
                            Instant.parse("2026-03-13T13:00:00Z"),
                            CellClosure.Kind.CLASS,
                            "a class",
                            hemi)))
                    .closure()
                    .id());
            UUID makeUp = there.in(() -> {
                turns.giveMakeUp(noor.id(), "the power was away", hemi);
                return turns.makeUpsOf(noor.id()).get(0).id();
            });

            isNotThere(() -> waitingList.accept(offer.id(), adaeze));
            isNotThere(() -> waitingList.decline(offer.id(), noor.id()));
            isNotThere(() -> waitingList.leave(offer.waitId(), adaeze));
            isNotThere(() -> turns.giveMakeUp(noor.id(), "a present", adaeze));
            isNotThere(() -> turns.countAnew(noor.id(), adaeze));
            assertThat(here.in(() -> desk.reopen(closure, adaeze))).isFalse();
            assertThat(here.in(() -> turns.withdraw(makeUp, "why not", adaeze))).isPresent();
            assertThat(there.in(() -> turns.makeUpsOf(noor.id()))).allMatch(Turns.MakeUp::stands);
            assertThat(there.in(() -> desk.closure(closure))).isPresent();
            assertThat(there.in(() -> waitingList.accept(offer.id(), noor.id())))
                    .isInstanceOf(BookingDesk.Outcome.Booked.class);
        }

        @Test
        void aStudentActsForNobodyElseAndMovesNothing() {
            PersonId yuki =
                    there.in(() -> there.sample().student("Yuki Halfmoon").id());
            Offer offer = offered();

            isNotTheirs(() -> desk.cancel(booking.id(), yuki));
            isNotTheirs(() -> confirmations.confirm(booking.id(), yuki));
            isNotTheirs(() -> desk.moveByStaff(booking.id(), noor.id(), "I would rather"));
            isNotTheirs(() -> desk.moveTo(move(there, noor.id())));
            isNotTheirs(() -> waitingList.accept(offer.id(), yuki));
            isNotTheirs(() -> waitingList.decline(offer.id(), yuki));
            isNotTheirs(() -> waitingList.leave(offer.waitId(), yuki));
            isNotTheirs(() ->
                    waitingList.join(new JoinWait(noor.id(), null, LATER, LATER.plusSeconds(1800), null, null, yuki)));
            isNotTheirs(() -> turns.giveMakeUp(noor.id(), "for me", noor.id()));
            isNotTheirs(() -> turns.countAnew(noor.id(), noor.id()));
            assertThat(state()).isEqualTo("BOOKED");
            assertThat(there.in(() -> desk.cancel(booking.id(), noor.id())))
                    .isInstanceOf(Bookings.Transition.Moved.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
