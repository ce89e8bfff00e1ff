package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.labs.LabRegister;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.DutyRegister;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.TrailReader;

/** What is each lab's own: staff, duty, record, rounds, and the end of its use. */
class LabsApartIT {

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
        BookingDesk desk;

        @Autowired
        People people;

        @Autowired
        DutyRegister duties;

        @Autowired
        DutyRoster onDuty;

        @Autowired
        Authorisations authorisations;

        @Autowired
        TrailReader reader;

        @Autowired
        JdbcClient jdbc;

        private SecondLab berlin() {
            return new SecondLab(application, "Europe/Berlin");
        }

        private SecondLab halifax() {
            return new SecondLab(application, "America/Halifax");
        }

        private static Person in(SecondLab lab, Role role) {
            return lab.person(role);
        }

        @Test
        void aTechnicianOfOneLabIsNobodyInTheOther() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Person technician = in(berlin, Role.TECHNICIAN);

            assertThat(halifax.in(
                            () -> people.find(technician.id()).orElseThrow().roles()))
                    .isEmpty();
            assertThat(halifax.in(() -> people.with(Role.TECHNICIAN))).doesNotContain(technician);
            assertThat(berlin.in(() -> people.with(Role.TECHNICIAN))).contains(technician);
            assertThat(halifax.in(() -> duties.plan(
                            technician.id(), clock.instant(), clock.instant().plusSeconds(3600), null)))
                    .isInstanceOf(DutyRegister.Outcome.Refused.class);
            assertThat(berlin.in(
                            () -> authorisations.holds(technician.id(), Duty.OPERATOR, berlin.cell(), clock.instant())))
                    .isTrue();
            assertThat(halifax.in(() ->
                            authorisations.holds(technician.id(), Duty.OPERATOR, halifax.cell(), clock.instant())))
                    .isFalse();
        }

        @Test
        void nobodyIsOnDutyInTwoLabsAtOnce() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Person technician = in(berlin, Role.TECHNICIAN);
            register.appoint(halifax.id(), technician.login(), Set.of(Role.TECHNICIAN), PersonId.next());
            Instant from = clock.instant();
            Instant until = from.plusSeconds(7200);

            assertThat(berlin.in(() -> duties.plan(technician.id(), from, until, null)))
                    .isInstanceOf(DutyRegister.Outcome.Done.class);
            assertThat(halifax.in(
                            () -> duties.plan(technician.id(), from.plusSeconds(3600), until.plusSeconds(3600), null)))
                    .isInstanceOf(DutyRegister.Outcome.Refused.class);
            assertThat(halifax.in(() -> duties.plan(technician.id(), until, until.plusSeconds(3600), null)))
                    .isInstanceOf(DutyRegister.Outcome.Done.class);
            assertThat(berlin.in(() -> onDuty.onDuty(technician.id(), from))).isTrue();
            assertThat(halifax.in(() -> onDuty.onDuty(technician.id(), from))).isFalse();
            assertThat(berlin.in(() -> duties.between(from, until.plusSeconds(7200))))
                    .hasSize(1);
        }

        @Test
        void eachLabHasARecordOfItsOwn() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Booking booking = berlin.in(() ->
                    berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", in(berlin, Role.STUDENT), null));

            assertThat(reader.about(berlin.id(), booking.id().toString())).hasSize(1);
            assertThat(reader.about(halifax.id(), booking.id().toString())).isEmpty();
            assertThat(reader.about(halifax.id(), halifax.id().toString()))
                    .anyMatch(entry -> entry.kind().equals("people.lab-made"));
        }

        @Test
        void aRoundGoesOnWhereOneLabFails() {
            SecondLab broken = berlin();
            SecondLab well = halifax();
            List<LabId> looked = new ArrayList<>();

            labs.forEach(lab -> {
                if (lab.id().equals(broken.id())) {
                    throw new IllegalStateException("planted");
                }
                assertThat(labs.theLab().id()).isEqualTo(lab.id());
                looked.add(lab.id());
            });

            assertThat(looked).contains(well.id()).doesNotContain(broken.id());
            assertThat(LabScope.here()).isEmpty();
        }

        @Test
        void aRoundReleasesMissedBookingsOfEveryLab() {
            SecondLab berlin = berlin();
            SecondLab halifax = halifax();
            Booking one = berlin.in(() ->
                    berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", in(berlin, Role.STUDENT), null));
            Booking other = halifax.in(() ->
                    halifax.sample().booked(halifax.cell(), "2026-03-12T14:00:00Z", in(halifax, Role.STUDENT), null));
            clock.standAt(Instant.parse("2026-03-12T14:10:00Z"));

            labs.forEach(lab -> desk.releaseMissed());

            for (Booking booking : List.of(one, other)) {
                assertThat(states(booking)).isEqualTo("MISSED");
            }
        }

        @Test
        void aLabIsClosedOnlyWhenNothingIsAhead() {
            SecondLab berlin = berlin();
            PersonId by = PersonId.next();
            Booking booking = berlin.in(() ->
                    berlin.sample().booked(berlin.cell(), "2026-03-12T14:00:00Z", in(berlin, Role.STUDENT), null));

            assertThat(register.close(berlin.id(), "moved away", by))
                    .isInstanceOfSatisfying(
                            LabRegister.Outcome.Refused.class,
                            refused -> assertThat(refused.says()).startsWith("1 booking is ahead"));
            berlin.in(() -> desk.cancel(booking.id(), in(berlin, Role.STUDENT).id()));
            assertThat(register.close(berlin.id(), " ", by)).isInstanceOf(LabRegister.Outcome.Refused.class);
            assertThat(register.close(berlin.id(), "moved away", by)).isInstanceOf(LabRegister.Outcome.Done.class);

            assertThat(labs.open()).noneMatch(lab -> lab.id().equals(berlin.id()));
            assertThat(berlin.in(() ->
                            berlin.sample().book(berlin.cell(), "2026-03-12T14:00:00Z", in(berlin, Role.STUDENT))))
                    .isInstanceOf(BookingDesk.Outcome.Refused.class);
            register.open(berlin.id(), by);
            assertThat(berlin.in(() ->
                            berlin.sample().book(berlin.cell(), "2026-03-12T14:00:00Z", in(berlin, Role.STUDENT))))
                    .isInstanceOf(BookingDesk.Outcome.Booked.class);
        }

        private String states(Booking booking) {
            return jdbc.sql("select state from bookings where id = :id")
                    .param("id", booking.id().value())
                    .query(String.class)
                    .single();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
