package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.NoShows.Counted;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Which bookings count as no-shows, in a lab of its own. It is Wed 11 March, 09:00 UTC; the lab opens at 11:00 UTC. */
class NoShowsIT {

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        NoShows noShows;

        @Autowired
        BookingDesk desk;

        @Autowired
        Bookings bookings;

        @Autowired
        Turns turns;

        private SecondLab lab;

        @BeforeEach
        void aLabOfItsOwn() {
            clock.moveToStart();
            lab = new SecondLab(application, "America/Halifax");
        }

        private static Instant at(String time) {
            return Instant.parse("2026-03-11T" + time + ":00Z");
        }

        private Booking booked(String time) {
            return booked(lab.in(() -> lab.sample().student("Kofi " + time)), at(time));
        }

        private Booking booked(Person who, Instant start) {
            return lab.in(() -> lab.sample().booked(lab.cell(), start.toString(), who, null));
        }

        private void comes(Booking booking) {
            clock.moveTo(booking.start().minus(Duration.ofMinutes(5)));
            assertThat(lab.<Bookings.Transition>in(() -> bookings.checkIn(booking.id(), booking.operator())))
                    .isInstanceOf(Bookings.Transition.Moved.class);
        }

        private Counted counted(int atMost) {
            return lab.in(() -> noShows.latest(atMost));
        }

        private Counted countedAt(String time) {
            clock.moveTo(at(time));
            return counted(400);
        }

        @Test
        void countsWhoCameAndWhoDidNotOnceTheSlotIsOver() {
            Booking came = booked("12:00");
            booked("12:30");
            booked(lab.in(() -> lab.sample().student("Leilani Driftmark")), Instant.parse("2026-03-12T12:00:00Z"));
            comes(came);

            assertThat(countedAt("12:29")).isEqualTo(new Counted(0, 0));
            assertThat(countedAt("12:30")).isEqualTo(new Counted(0, 1));
            // missed for the rules since 12:36; the slot counts when it is over
            assertThat(countedAt("12:59")).isEqualTo(new Counted(0, 1));
            assertThat(countedAt("13:00")).isEqualTo(new Counted(1, 2));
            assertThat(counted(400).share()).isEqualTo(0.5);
        }

        @Test
        void countsAMissedBookingTheSameBeforeAndAfterItIsWrittenDown() {
            booked("12:30");
            Counted before = countedAt("13:00");

            assertThat(lab.<Integer>in(desk::releaseMissed)).isEqualTo(1);

            assertThat(before).isEqualTo(new Counted(1, 1));
            assertThat(counted(400)).isEqualTo(before);
        }

        @Test
        void leavesOutWhatWasExcusedUntilItCountsAgain() {
            comes(booked("12:00"));
            Booking lost = booked("12:30");
            clock.moveTo(at("13:00"));
            lab.<Integer>in(desk::releaseMissed);
            Supplier<Boolean> excuse = () ->
                    turns.excuse(lost.id(), false, lab.person(Role.TECHNICIAN).id());

            assertThat(lab.in(excuse)).isTrue();
            assertThat(counted(400)).isEqualTo(new Counted(0, 1));

            Supplier<Boolean> again = () ->
                    turns.countAgain(lost.id(), lab.person(Role.TECHNICIAN).id());
            assertThat(lab.in(again)).isTrue();
            assertThat(counted(400)).isEqualTo(new Counted(1, 2));
        }

        @Test
        void leavesOutWhatWasGivenUpOrMovedByStaff() {
            comes(booked("12:00"));
            Booking early = booked("16:00");
            Booking late = booked("13:30");
            Booking moved = booked("14:00");
            clock.moveTo(at("12:10"));
            lab.in(() -> desk.cancel(early.id(), early.operator()));
            lab.in(() -> desk.cancel(late.id(), late.operator()));
            lab.in(() -> desk.moveTo(new MoveBooking(
                    moved.id(),
                    lab.cell(),
                    Instant.parse("2026-03-12T14:00:00Z"),
                    true,
                    lab.person(Role.TECHNICIAN).id(),
                    "the cell went down")));

            assertThat(lab.in(() -> bookings.find(late.id()).orElseThrow().state()))
                    .isEqualTo(BookingState.LATE_CANCELLED);
            assertThat(lab.in(() -> bookings.find(moved.id()).orElseThrow().state()))
                    .isEqualTo(BookingState.MOVED_BY_STAFF);
            assertThat(countedAt("18:00")).isEqualTo(new Counted(0, 1));
        }

        @Test
        void looksAtTheLatestOfThisLabOnly() {
            comes(booked("12:00"));
            booked("12:30");
            SecondLab another = new SecondLab(application, "Pacific/Chatham");
            clock.moveTo(at("13:00"));

            assertThat(counted(1)).isEqualTo(new Counted(1, 1));
            assertThat(another.<Counted>in(() -> noShows.latest(400))).isEqualTo(new Counted(0, 0));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
