package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.people.Duty;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * The booking rules against somebody who tries harder: many requests at once, the same one again, beside a slot, or with an
 * account or an authorisation that has ended. It is Wed 11 March, 09:00 UTC.
 */
class TriedHarderIT {

    private static final int AT_ONCE = 6;
    private static final String THURSDAY_ONE = "2026-03-12T13:07:00Z";

    abstract static class Cases extends BookingCases {

        @Autowired
        WaitingList waitingList;

        @Autowired
        Turns turns;

        @Autowired
        PeopleRegister people;

        private static long booked(List<Outcome> outcomes) {
            return outcomes.stream().filter(Outcome.Booked.class::isInstance).count();
        }

        @Test
        void manyBookingsOfOnePersonAtOnceStayWithinTheQuota() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            List<Callable<Outcome>> acts = new ArrayList<>();
            for (int hour = 9; hour < 9 + AT_ONCE; hour++) {
                String start = "2026-03-13T%02d:07:00Z".formatted(hour);
                acts.add(() -> lab().book(avocet, start, noor));
            }

            assertThat(booked(AtOnce.all(acts))).isLessThanOrEqualTo(2);

            assertThat(bookings.of(noor.id(), clock.instant())).hasSizeLessThanOrEqualTo(2);
        }

        @Test
        void onePersonIsInOnePlaceThoughTwoCellsAreAskedAtOnce() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            CellId other = lab().cell(15);

            List<Outcome> outcomes = AtOnce.all(List.of(
                    () -> lab().book(avocet, THURSDAY_NOON, noor),
                    () -> lab().book(other, "2026-03-12T12:15:00Z", noor)));

            assertThat(booked(outcomes)).isEqualTo(1);
        }

        @Test
        void anExcuseBringsOneMakeUpHoweverManyStaffGiveItAtOnce() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Booking lost = lab().booked(avocet, THURSDAY_NOON, noor, null);
            clock.moveTo(lost.end());
            desk.releaseMissed();
            PersonId adaeze = lab().technician("Adaeze Lanternby").id();

            List<Boolean> done = AtOnce.times(() -> turns.excuse(lost.id(), true, adaeze));

            assertThat(done.stream().filter(Boolean::booleanValue)).hasSize(1);
            assertThat(turns.makeUpsOf(noor.id())).hasSize(1);
        }

        @Test
        void aBookingIsGivenUpOnceHoweverManyTimesAtOnce() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            PersonId adaeze = lab().technician("Adaeze Lanternby").id();
            List<Callable<Boolean>> acts = new ArrayList<>();
            for (int times = 0; times < 3; times++) {
                acts.add(() -> desk.cancel(booking.id(), noor.id()) instanceof Bookings.Transition.Moved);
                acts.add(() -> desk.moveTo(new MoveBooking(
                                booking.id(), avocet, Instant.parse(THURSDAY_ONE), true, adaeze, "the cell went down"))
                        instanceof Outcome.Booked);
            }

            assertThat(AtOnce.all(acts).stream().filter(Boolean::booleanValue)).hasSize(1);

            assertThat(claims(booking)).isZero();
            assertThat(bookings.of(noor.id(), clock.instant())).hasSizeLessThanOrEqualTo(1);
        }

        @Test
        void anAttendantIsNamedForOneOfTwoCellsThoughBothAskAtOnce() throws Exception {
            Person mateo = lab().student("Mateo Ironbark");
            Booking one = lab().booked(avocet, THURSDAY_NOON, lab().student("Noor Candlewick"), null);
            Booking other =
                    lab().booked(lab().cell(15), "2026-03-12T12:15:00Z", lab().student("Kofi Marblewood"), null);

            List<Boolean> named = AtOnce.all(List.of(
                    () -> bookings.nameAttendant(one.id(), mateo.id(), one.operator())
                            instanceof Bookings.Transition.Moved,
                    () -> bookings.nameAttendant(other.id(), mateo.id(), other.operator())
                            instanceof Bookings.Transition.Moved));

            assertThat(named.stream().filter(Boolean::booleanValue)).hasSize(1);
        }

        @Test
        void theOperatorIsNoAttendantByAnyWay() {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);

            assertThat(bookings.nameAttendant(booking.id(), noor.id(), noor.id()))
                    .isInstanceOfSatisfying(
                            Bookings.Transition.Refused.class,
                            refused -> assertThat(refused.says()).contains("never attends their own run"));
            assertThat(refused(lab().book(avocet, THURSDAY_ONE, noor, noor)).rule())
                    .isEqualTo("attendant");
        }

        @Test
        void anAttendantsAuthorisationLastsToTheEndOfTheSlot() {
            Person noor = lab().student("Noor Candlewick");
            Person until = lab().person("Mateo Ironbark", Role.STUDENT);
            lab().authorise(until.id(), Duty.ATTENDANT, null, Instant.parse("2026-03-12T12:20:00Z"));
            Person toTheEnd = lab().person("Leilani Driftmark", Role.STUDENT);
            lab().authorise(toTheEnd.id(), Duty.ATTENDANT, null, Instant.parse("2026-03-12T12:37:00Z"));

            assertThat(refused(lab().book(avocet, THURSDAY_NOON, noor, until)).says())
                    .contains("not authorised as e-stop attendant");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, toTheEnd);
            assertThat(bookings.nameAttendant(booking.id(), until.id(), noor.id()))
                    .isInstanceOf(Bookings.Transition.Refused.class);
        }

        @Test
        void nobodyBooksOrWaitsForAnAccountThatIsClosed() {
            Person noor = lab().student("Noor Candlewick");
            Person adaeze = lab().technician("Adaeze Lanternby");
            waitingList.join(new JoinWait(
                    noor.id(),
                    avocet,
                    Instant.parse(THURSDAY_NOON),
                    Instant.parse(THURSDAY_ONE),
                    null,
                    null,
                    noor.id()));
            people.deactivate(noor.id(), "left the college", PersonId.next());

            waitingList.round();
            Outcome outcome = desk.book(
                    new MakeBooking(avocet, Instant.parse(THURSDAY_ONE), noor.id(), null, null, null, adaeze.id()));

            assertThat(waitingList.of(noor.id()))
                    .singleElement()
                    .extracting(Waiting::offer)
                    .isNull();
            assertThat(refused(outcome).rule()).isEqualTo("operator-authorisation");
        }

        @Test
        void aSlotIsNoneASecondBesideItsStartOrInThePast() {
            Person noor = lab().student("Noor Candlewick");
            for (String beside :
                    List.of("2026-03-12T12:07:01Z", "2026-03-12T12:06:59.999999Z", "2026-03-12T12:07:00.000001Z")) {
                assertThat(rule(noor, beside)).isEqualTo("no-such-slot");
            }
            clock.moveTo(Instant.parse("2026-03-12T12:07:00.000001Z"));
            assertThat(rule(noor, THURSDAY_NOON)).isEqualTo("past");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
