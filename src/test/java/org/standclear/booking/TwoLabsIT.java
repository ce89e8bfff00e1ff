package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.labs.LabRegister;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Two labs in one installation: each by its own clock, with its own staff and hours; a person is one person in both. */
class TwoLabsIT {

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        Labs labs;

        @Autowired
        LabRegister register;

        @Autowired
        SlotCalendar calendar;

        @Autowired
        OpeningHours hours;

        @Autowired
        Cells cells;

        @Autowired
        People people;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        BookingNumbers numbers;

        @Autowired
        BookingDesk desk;

        private SecondLab berlin() {
            return new SecondLab(application, "Europe/Berlin");
        }

        private SecondLab halifax() {
            return new SecondLab(application, "America/Halifax");
        }

        private static Person in(SecondLab lab, Role role) {
            return lab.person(role);
        }

        /** Somebody who may book and attend in both. */
        private Person studentOfBoth(SecondLab one, SecondLab other) {
            Person student = one.in(() -> one.sample().student("Yuki Halfmoon"));
            other.in(() -> {
                assertThat(register.appoint(other.id(), student.login(), Set.of(Role.STUDENT), PersonId.next()))
                        .isInstanceOf(LabRegister.Outcome.Done.class);
                other.sample().authorise(student.id());
                return student;
            });
            return student;
        }

        /** 14:00 UTC on 12 March 2026 is 15:00 in Berlin (UTC+1) and 11:00 in Halifax (UTC-3 since 8 March). */
        @Test
        void nobodyIsInTwoLabsAtOnce() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Person yuki = studentOfBoth(berlin, halifax);
            berlin.in(() -> berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", yuki, null));

            BookingDesk.Outcome same =
                    halifax.in(() -> halifax.sample().book(halifax.cell(), "2026-03-12T14:00:00Z", yuki));
            BookingDesk.Outcome next =
                    halifax.in(() -> halifax.sample().book(halifax.cell(), "2026-03-12T14:30:00Z", yuki));

            assertThat(same).isInstanceOf(BookingDesk.Outcome.Refused.class);
            assertThat(next).isInstanceOf(BookingDesk.Outcome.Booked.class);
        }

        private void grace(SecondLab lab, int minutes) {
            lab.in(() -> {
                numbers.change(
                        new BookingSettings(30, 14, 2, 4, 6, 24, 120, 10, minutes), PersonId.next(), "for this test");
                return true;
            });
        }

        private String state(Booking booking) {
            return jdbc.sql("select state from bookings where id = :id")
                    .param("id", booking.id().value())
                    .query(String.class)
                    .single();
        }

        @Test
        void aBookingIsMissedByTheGraceTimeAndInTheRecordOfItsOwnLabAlone() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            grace(berlin, 20);
            grace(halifax, 2);
            Person yuki = studentOfBoth(berlin, halifax);
            Booking inBerlin =
                    berlin.in(() -> berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", yuki, null));
            CellId later = halifax.in(() -> halifax.sample().cell(15));

            for (String time : List.of("2026-03-12T14:05:00Z", "2026-03-12T14:14:00Z")) {
                clock.standAt(Instant.parse(time));
                assertThat(halifax.in(() -> halifax.sample().book(later, "2026-03-12T14:15:00Z", yuki)))
                        .as("after the grace of Halifax, within that of Berlin")
                        .isInstanceOf(BookingDesk.Outcome.Refused.class);
                assertThat(state(inBerlin)).isEqualTo("BOOKED");
            }
        }

        @Test
        void whatIsMissedInOneLabIsSettledByThatLabBeforeTheOtherGivesThePersonASlot() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            grace(berlin, 2);
            Person yuki = studentOfBoth(berlin, halifax);
            Booking inBerlin =
                    berlin.in(() -> berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", yuki, null));
            CellId later = halifax.in(() -> halifax.sample().cell(15));
            clock.standAt(Instant.parse("2026-03-12T14:12:00Z"));

            assertThat(halifax.in(() -> halifax.sample().book(later, "2026-03-12T14:15:00Z", yuki)))
                    .isInstanceOf(BookingDesk.Outcome.Refused.class);
            assertThat(state(inBerlin)).isEqualTo("BOOKED");
            berlin.in(() -> desk.releaseMissed());
            assertThat(state(inBerlin)).isEqualTo("MISSED");
            assertThat(halifax.in(() -> halifax.sample().book(later, "2026-03-12T14:15:00Z", yuki)))
                    .isInstanceOf(BookingDesk.Outcome.Booked.class);
            assertThat(recordedIn(inBerlin)).containsOnly(berlin.id().value());
        }

        /** The labs in whose records something stands about the booking. */
        private List<UUID> recordedIn(Booking booking) {
            return jdbc.sql("select lab from trail_entries where subject like :id")
                    .param("id", "%" + booking.id())
                    .query(UUID.class)
                    .list();
        }

        @Test
        void nobodyAttendsInTwoLabsAtOnce() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Person yuki = studentOfBoth(berlin, halifax);
            berlin.in(() ->
                    berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", in(berlin, Role.STUDENT), yuki));

            BookingDesk.Outcome attends = halifax.in(() ->
                    halifax.sample().book(halifax.cell(), "2026-03-12T14:00:00Z", in(halifax, Role.STUDENT), yuki));

            assertThat(attends).isInstanceOf(BookingDesk.Outcome.Refused.class);
        }

        @Test
        void theNumberOfBookingsIsEachLabsOwn() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Person yuki = studentOfBoth(berlin, halifax);
            berlin.in(() -> berlin.sample().booked(berlin.cell(), "2026-03-16T08:00:00Z", yuki, null));
            berlin.in(() -> berlin.sample().booked(berlin.cell(), "2026-03-16T09:00:00Z", yuki, null));

            assertThat(berlin.in(() -> berlin.sample().book(berlin.cell(), "2026-03-16T10:00:00Z", yuki)))
                    .isInstanceOf(BookingDesk.Outcome.Refused.class);
            assertThat(halifax.in(() -> halifax.sample().book(halifax.cell(), "2026-03-16T12:00:00Z", yuki)))
                    .isInstanceOf(BookingDesk.Outcome.Booked.class);
        }

        /**
         * tz database 2025b: Berlin leaves out 02:00 to 03:00 on 29 March 2026 (01:00 UTC) and repeats it on 25 October;
         * Halifax leaves out 02:00 to 03:00 on 8 March 2026 (06:00 UTC) and repeats 01:00 to 02:00 on 1 November.
         */
        @Test
        void eachLabChangesItsClocksOnItsOwnDay() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();

            assertThat(starts(berlin, "2026-03-29", "01:00", "04:00"))
                    .containsExactly("00:00", "00:30", "01:00", "01:30");
            assertThat(starts(halifax, "2026-03-29", "01:00", "04:00"))
                    .containsExactly("04:00", "04:30", "05:00", "05:30", "06:00", "06:30");
            assertThat(starts(halifax, "2026-03-08", "01:00", "04:00"))
                    .containsExactly("05:00", "05:30", "06:00", "06:30");
            assertThat(starts(berlin, "2026-03-08", "01:00", "04:00"))
                    .containsExactly("00:00", "00:30", "01:00", "01:30", "02:00", "02:30");
            assertThat(starts(berlin, "2026-10-25", "02:00", "03:00"))
                    .containsExactly("00:00", "00:30", "01:00", "01:30");
            assertThat(starts(halifax, "2026-11-01", "01:00", "02:00"))
                    .containsExactly("04:00", "04:30", "05:00", "05:30");
        }

        /** The starts of the lab's slots on that day, as the clock shows them in UTC. */
        private List<String> starts(SecondLab lab, String day, String opens, String closes) {
            return lab.in(() -> {
                LocalDate date = LocalDate.parse(day);
                hours.except(
                        new OpeningHours.DayHours(
                                date,
                                List.of(new OpenPeriod(LocalTime.parse(opens), LocalTime.parse(closes))),
                                "a night of measuring"),
                        PersonId.next());
                return calendar.day(date).cells().stream()
                        .flatMap(cell -> cell.free().stream())
                        .map(slot -> slot.start().toString().substring(11, 16))
                        .toList();
            });
        }

        @Test
        void hoursRulesAndCellsAreEachLabsOwn() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            LocalDate thursday = LocalDate.parse("2026-03-12");
            berlin.in(() -> {
                hours.except(new OpeningHours.DayHours(thursday, List.of(), "founders' day"), PersonId.next());
                return true;
            });

            assertThat(berlin.in(() -> hours.on(thursday).closed())).isTrue();
            assertThat(halifax.in(() -> hours.on(thursday).closed())).isFalse();
            assertThat(berlin.in(() -> cells.all()))
                    .singleElement()
                    .satisfies(cell -> assertThat(cell.id()).isEqualTo(berlin.cell()));
            assertThat(halifax.in(() -> cells.all()))
                    .singleElement()
                    .satisfies(cell -> assertThat(cell.id()).isEqualTo(halifax.cell()));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
