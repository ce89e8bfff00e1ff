package org.standclear.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.people.AuthorisationRegister.Outcome;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Authorisations and duty hold from their first instant to just before their last, on both engines. */
class AuthorisationsIT {

    private static final Instant START = MovableClock.START;
    private static final Instant END = START.plus(Duration.ofDays(30));

    abstract static class Cases {

        @Autowired
        PeopleRegister people;

        @Autowired
        AuthorisationRegister register;

        @Autowired
        Authorisations authorisations;

        @Autowired
        DutyRegister duties;

        @Autowired
        DutyRoster roster;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock clock;

        private final CellId avocet = CellId.next();
        private final CellId bittern = CellId.next();
        private Person noor;
        private Person ines;

        @BeforeEach
        void add() {
            noor = add("Noor Candlewick", Role.STUDENT);
            ines = add("Ines Quarryvale", Role.INSTRUCTOR);
        }

        private Person add(String name, Role role) {
            return ((PeopleRegister.Outcome.Done) people.add(
                            new NewPerson("a" + UUID.randomUUID(), name, Set.of(role), new Password.Hashed("x"), null)))
                    .person();
        }

        private Granted grant(Duty duty, @Nullable CellId cell) {
            return ((Outcome.Done)
                            register.grant(new Grant(noor.id(), duty, cell, START, END, "induction passed", ines.id())))
                    .granted();
        }

        private boolean holds(CellId cell, Instant at) {
            return authorisations.holds(noor.id(), Duty.OPERATOR, cell, at);
        }

        @Test
        void holdFromTheFirstInstantToJustBeforeTheLast() {
            grant(Duty.OPERATOR, avocet);

            assertThat(holds(avocet, START.minusNanos(1000))).isFalse();
            assertThat(holds(avocet, START)).isTrue();
            assertThat(holds(avocet, END.minusNanos(1000))).isTrue();
            assertThat(holds(avocet, END)).isFalse();
            assertThat(holds(bittern, START)).isFalse();
            assertThat(authorisations.holds(noor.id(), Duty.ATTENDANT, avocet, START))
                    .isFalse();
        }

        @Test
        void coverEveryCellWhenNoneIsNamed() {
            grant(Duty.OPERATOR, null);

            assertThat(holds(avocet, START)).isTrue();
            assertThat(holds(bittern, START)).isTrue();
            assertThat(authorisations.holders(Duty.OPERATOR, bittern, START)).contains(noor);
        }

        @Test
        void endWhenRevokedAndWhenTheAccountIsClosed() {
            Granted granted = grant(Duty.OPERATOR, avocet);
            clock.moveBy(Duration.ofDays(1));

            assertThat(register.revoke(granted.id(), " ", ines.id())).isInstanceOf(Outcome.Refused.class);
            assertThat(register.revoke(granted.id(), "left the stand line", ines.id()))
                    .isInstanceOf(Outcome.Done.class);
            assertThat(register.revoke(granted.id(), "again", ines.id())).isInstanceOf(Outcome.Refused.class);
            assertThat(holds(avocet, clock.instant())).isFalse();
            assertThat(holds(avocet, START)).as("history stays").isTrue();
            assertThat(authorisations.of(noor.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.validUntil()).isEqualTo(clock.instant()));

            grant(Duty.ATTENDANT, avocet);
            people.deactivate(noor.id(), "left", ines.id());
            assertThat(authorisations.holds(noor.id(), Duty.ATTENDANT, avocet, START))
                    .isFalse();
            assertThat(authorisations.holders(Duty.ATTENDANT, avocet, START))
                    .extracting(Person::id)
                    .doesNotContain(noor.id());
        }

        @Test
        void areRefusedWhenTheyMakeNoSense() {
            assertThat(field(noor, START, START, "x")).isEqualTo("until");
            assertThat(field(noor, START, START.minusSeconds(1), "x")).isEqualTo("until");
            assertThat(field(noor, START, START.plus(Duration.ofDays(2000)), "x"))
                    .isEqualTo("until");
            assertThat(field(noor, START, END, "\u0000")).isEqualTo("reason");
            assertThat(field(noor, START, END, "x".repeat(401))).isEqualTo("reason");
            assertThat(field(add("Avocet screen", Role.BENCH), START, END, "x")).isEqualTo("person");
            assertThat(authorisations.of(noor.id())).isEmpty();
        }

        private String field(Person person, Instant from, Instant until, String reason) {
            Outcome outcome =
                    register.grant(new Grant(person.id(), Duty.OPERATOR, avocet, from, until, reason, ines.id()));
            return ((Outcome.Refused) outcome).field();
        }

        @Test
        void areRefusedByTheDatabaseToo() {
            Granted granted = grant(Duty.OPERATOR, avocet);

            assertThatThrownBy(() -> jdbc.sql("update authorisations set valid_until = valid_from where id = ?")
                            .param(granted.id())
                            .update())
                    .isInstanceOf(DataIntegrityViolationException.class);
        }

        @Test
        void dutyHoldsForStaffOnly() {
            assertThat(duties.plan(noor.id(), START, END, ines.id())).isInstanceOf(DutyRegister.Outcome.Refused.class);
            Instant until = START.plus(Duration.ofHours(8));
            var done = (DutyRegister.Outcome.Done) duties.plan(ines.id(), START, until, null);

            assertThat(roster.onDuty(ines.id(), START.minusNanos(1000))).isFalse();
            assertThat(roster.onDuty(ines.id(), START)).isTrue();
            assertThat(roster.onDuty(ines.id(), until)).isFalse();
            assertThat(roster.onDuty(START)).contains(ines);
            assertThat(duties.between(START, until))
                    .anySatisfy(period -> assertThat(period.person()).isEqualTo(ines));

            duties.remove(done.period(), ines.id());
            assertThat(roster.onDuty(ines.id(), START)).isFalse();
            assertThat(duties.remove(done.period(), ines.id())).isInstanceOf(DutyRegister.Outcome.Refused.class);
        }

        @Test
        void dutyThatSomebodyPlansForThemselvesIsMarked() {
            Instant until = START.plus(Duration.ofHours(8));
            var own = (DutyRegister.Outcome.Done) duties.plan(ines.id(), START, until, ines.id());
            var others = (DutyRegister.Outcome.Done) duties.plan(ines.id(), START, until, noor.id());

            assertThat(duties.between(START, until))
                    .filteredOn(period -> period.id().equals(own.period()))
                    .allMatch(DutyRegister.Period::plannedByThemselves)
                    .hasSize(1);
            assertThat(duties.between(START, until))
                    .filteredOn(period -> period.id().equals(others.period()))
                    .noneMatch(DutyRegister.Period::plannedByThemselves);
            assertThat(jdbc.sql("select words from trail_entries where subject = ? and kind = 'people.duty_planned'")
                            .param(ines.id().toString())
                            .query(String.class)
                            .list())
                    .containsExactlyInAnyOrder(
                            ines.printedName() + " is on duty, planned by themselves.",
                            ines.printedName() + " is planned on duty.");
        }

        @Test
        void dutyEndsWithTheRole() {
            duties.plan(ines.id(), START, START.plus(Duration.ofHours(8)), null);

            people.setRoles(ines.id(), Set.of(Role.STUDENT), 1, noor.id());

            assertThat(roster.onDuty(ines.id(), START)).isFalse();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
