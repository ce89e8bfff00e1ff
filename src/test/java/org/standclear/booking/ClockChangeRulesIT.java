package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * The booking rules on the days on which clocks change, in two labs whose zones change them on different days. Change dates
 * from the tz database (2025a, as the Java runtime here ships it): America/Halifax on 8 March and 1 November 2026 at 2:00,
 * Europe/Berlin on 29 March at 2:00 and 25 October 2026 at 3:00.
 */
class ClockChangeRulesIT {

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        BookingDesk desk;

        @Autowired
        Bookings bookings;

        @Autowired
        OpeningHours hours;

        private SecondLab berlin;
        private SecondLab halifax;

        @BeforeEach
        void twoLabs() {
            clock.moveToStart();
            berlin = new SecondLab(application, "Europe/Berlin");
            halifax = new SecondLab(application, "America/Halifax");
        }

        @AfterEach
        void backToTheStart() {
            clock.moveToStart();
        }

        private void at(String instant) {
            clock.moveTo(Instant.parse(instant));
        }

        private void opens(SecondLab lab, String day, String from, String until) {
            lab.in(() -> {
                hours.except(
                        new OpeningHours.DayHours(
                                LocalDate.parse(day),
                                List.of(new OpenPeriod(LocalTime.parse(from), LocalTime.parse(until))),
                                "a night of measuring"),
                        PersonId.next());
                return true;
            });
        }

        /** The tests' authorisations end before autumn. */
        private Person student(SecondLab lab, String name) {
            return lab.in(() -> {
                Person student = lab.sample().student(name);
                lab.sample()
                        .authorise(
                                student.id(),
                                org.standclear.people.Duty.OPERATOR,
                                null,
                                Instant.parse("2026-12-31T00:00:00Z"));
                return student;
            });
        }

        private Outcome book(SecondLab lab, String start, Person who) {
            return lab.in(() -> lab.sample().book(lab.cell(), start, who));
        }

        private Booking booked(SecondLab lab, String start, Person who) {
            Outcome outcome = book(lab, start, who);
            assertThat(outcome).isInstanceOf(Outcome.Booked.class);
            return ((Outcome.Booked) outcome).booking();
        }

        private static Outcome.Refused refused(Outcome outcome) {
            assertThat(outcome).isInstanceOf(Outcome.Refused.class);
            return (Outcome.Refused) outcome;
        }

        @Test
        void theHourThatComesTwiceHasTwoSlotsOfTheSameTimeForTwoPeopleAndOneEachIsTakenOnce() {
            at("2026-10-20T09:00:00Z");
            opens(berlin, "2026-10-25", "01:00", "06:00");
            Person kofi = student(berlin, "Kofi Marblewood");
            Person leilani = student(berlin, "Leilani Driftmark");

            // 2:30 in summer time and 2:30 in winter time
            assertThat(book(berlin, "2026-10-25T00:30:00Z", kofi)).isInstanceOf(Outcome.Booked.class);
            assertThat(book(berlin, "2026-10-25T01:30:00Z", leilani)).isInstanceOf(Outcome.Booked.class);

            assertThat(refused(book(berlin, "2026-10-25T00:30:00Z", leilani)).rule())
                    .isEqualTo("taken");
            assertThat(refused(book(berlin, "2026-10-25T01:30:00Z", kofi)).rule())
                    .isEqualTo("taken");
        }

        @Test
        void theHourThatIsLeftOutHasNoSlotInItsZoneAndHasInTheOther() {
            at("2026-03-20T09:00:00Z");
            opens(berlin, "2026-03-29", "01:00", "06:00");
            opens(halifax, "2026-03-29", "01:00", "06:00");

            // the instant at which Berlin's clock goes from 2:00 to 3:00 begins a slot, and none lies in between
            assertThat(book(berlin, "2026-03-29T01:00:00Z", student(berlin, "Kofi Marblewood")))
                    .isInstanceOf(Outcome.Booked.class);
            assertThat(book(halifax, "2026-03-29T05:00:00Z", student(halifax, "Noor Candlewick")))
                    .as("2:00 in Halifax, an ordinary night")
                    .isInstanceOf(Outcome.Booked.class);
            // Berlin closes at 6:00, four hours after opening: 4:00 UTC begins none
            assertThat(refused(book(berlin, "2026-03-29T04:00:00Z", student(berlin, "Yuki Halfmoon")))
                            .rule())
                    .isEqualTo("no-such-slot");
        }

        @Test
        void theHorizonEndsWithTheLabsDayThoughADayOnTheWayIsShorter() {
            // Sun 15 March, 23:59 in Berlin; fourteen days on is the day of the change
            at("2026-03-15T22:59:00Z");
            opens(berlin, "2026-03-29", "00:00", "23:30");
            opens(berlin, "2026-03-30", "00:00", "06:00");
            Person kofi = student(berlin, "Kofi Marblewood");

            assertThat(book(berlin, "2026-03-29T21:00:00Z", kofi))
                    .as("23:00 on the last day")
                    .isInstanceOf(Outcome.Booked.class);
            assertThat(refused(book(berlin, "2026-03-29T22:00:00Z", kofi)).rule())
                    .as("0:00 on the day after")
                    .isEqualTo("horizon");
            at("2026-03-15T23:00:00Z");
            assertThat(book(berlin, "2026-03-29T22:00:00Z", kofi))
                    .as("a minute later, on Monday")
                    .isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void aLateCancelIsTwoRealHoursBeforeWhateverTheClockDoes() {
            at("2026-03-27T09:00:00Z");
            opens(berlin, "2026-03-29", "01:00", "08:00");
            Person early = student(berlin, "Kofi Marblewood");
            Person late = student(berlin, "Leilani Driftmark");
            Booking one = booked(berlin, "2026-03-29T02:00:00Z", early);
            Booking other = booked(berlin, "2026-03-29T02:30:00Z", late);

            // 1:00 by Berlin's clock is three hours before 4:00 by the clock, and two real ones
            clock.moveTo(one.start().minus(Duration.ofHours(2)));
            berlin.in(() -> desk.cancel(one.id(), early.id()));
            clock.moveTo(other.start().minus(Duration.ofHours(2)).plusSeconds(1));
            berlin.in(() -> desk.cancel(other.id(), late.id()));

            assertThat(state(one)).isEqualTo(BookingState.CANCELLED);
            assertThat(state(other)).isEqualTo(BookingState.LATE_CANCELLED);
        }

        private BookingState state(Booking booking) {
            return berlin.in(() -> bookings.find(booking.id()).orElseThrow().state());
        }

        @Test
        void aWeekOfTheQuotaEndsWithTheLabsSundayThoughItHasAnHourMore() {
            berlin.in(() -> {
                application
                        .getBean(BookingNumbers.class)
                        .change(
                                new BookingSettings(30, 14, 9, 1, 9, 0, 120, 10, 6),
                                PersonId.next(),
                                "one a week for this test");
                return true;
            });
            at("2026-10-20T09:00:00Z");
            opens(berlin, "2026-10-25", "20:00", "23:30");
            opens(berlin, "2026-10-26", "00:00", "06:00");
            Person kofi = student(berlin, "Kofi Marblewood");

            // 23:00 on Sunday, and 0:00 and 0:30 on Monday, in winter time
            assertThat(book(berlin, "2026-10-25T22:00:00Z", kofi)).isInstanceOf(Outcome.Booked.class);
            assertThat(refused(book(berlin, "2026-10-25T19:30:00Z", kofi)).rule())
                    .as("the same Sunday")
                    .isEqualTo("quota-week");
            assertThat(book(berlin, "2026-10-25T23:00:00Z", kofi))
                    .as("Monday begins a week")
                    .isInstanceOf(Outcome.Booked.class);
            assertThat(refused(book(berlin, "2026-10-25T23:30:00Z", kofi)).rule())
                    .isEqualTo("quota-week");
        }

        @Test
        void theGraceTimeOfABookingInTheHourThatComesTwiceIsItsOwn() {
            at("2026-10-24T09:00:00Z");
            opens(halifax, "2026-11-01", "00:30", "06:00");
            Person kofi = student(halifax, "Kofi Marblewood");
            Person leilani = student(halifax, "Leilani Driftmark");
            // 1:30 in summer time, 1:30 in winter time
            Booking first = booked(halifax, "2026-11-01T04:30:00Z", kofi);
            Booking second = booked(halifax, "2026-11-01T05:30:00Z", leilani);

            clock.moveTo(first.start().plus(Duration.ofMinutes(6)));

            assertThat(halifax.<Integer>in(desk::releaseMissed)).isEqualTo(1);
            assertThat(halifax.in(() -> bookings.find(first.id()).orElseThrow().state()))
                    .isEqualTo(BookingState.MISSED);
            assertThat(halifax.in(() -> bookings.find(second.id()).orElseThrow().state()))
                    .isEqualTo(BookingState.BOOKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
