package org.standclear.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.SigningPins.Choice;
import org.standclear.people.SigningPins.Outcome;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Signing PINs are compared a few times only, whatever happens around the comparison. */
class SigningPinsIT {

    private static final String PIN = "274913";

    abstract static class Cases {

        @Autowired
        PeopleRegister register;

        @Autowired
        SigningPins pins;

        @Autowired
        PlatformTransactionManager transactions;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock clock;

        private PersonId person(Role role) {
            return ((PeopleRegister.Outcome.Done) register.add(new NewPerson(
                            "n" + UUID.randomUUID(), "Wren Saltmarsh", Set.of(role), new Password.Hashed("x"), null)))
                    .person()
                    .id();
        }

        private PersonId withPin() {
            PersonId person = person(Role.STUDENT);
            assertThat(pins.choose(person, PIN)).isEqualTo(new Choice.Chosen());
            return person;
        }

        @Test
        void comparesAndHidesIt() {
            PersonId person = withPin();

            assertThat(pins.check(person, PIN)).isEqualTo(new Outcome.Right());
            assertThat(pins.check(person, "000000")).isEqualTo(new Outcome.Wrong(4));
            assertThat(jdbc.sql("select pin_hash from people where id = ?")
                            .param(person.value())
                            .query(String.class)
                            .single())
                    .startsWith("$argon2id$");
        }

        @Test
        void isChosenFirst() {
            PersonId person = person(Role.STUDENT);

            assertThat(pins.check(person, PIN)).isEqualTo(new Outcome.NotSet());
            assertThat(pins.choose(person, "123456")).isInstanceOf(Choice.Refused.class);
            assertThat(pins.isSet(person)).isFalse();
            assertThat(pins.choose(person(Role.BENCH), PIN)).isInstanceOf(Choice.Refused.class);
        }

        @Test
        void pausesAfterFiveWrongTriesOfTwentyAndForLongerEachTime() {
            PersonId person = withPin();
            List<Outcome> said = IntStream.range(0, 20)
                    .mapToObj(i -> pins.check(person, "99999" + i % 10))
                    .toList();

            assertThat(said.subList(0, 5))
                    .containsExactly(
                            new Outcome.Wrong(4),
                            new Outcome.Wrong(3),
                            new Outcome.Wrong(2),
                            new Outcome.Wrong(1),
                            new Outcome.Wrong(0));
            Outcome paused = new Outcome.Paused(MovableClock.START.plusSeconds(60));
            assertThat(said.subList(5, 20)).containsOnly(paused);
            assertThat(pins.check(person, PIN)).isEqualTo(paused);

            clock.moveBy(Duration.ofSeconds(60));
            assertThat(pins.check(person, "999999")).isEqualTo(new Outcome.Wrong(0));
            assertThat(pins.check(person, PIN)).isEqualTo(new Outcome.Paused(MovableClock.START.plusSeconds(180)));
            clock.moveBy(Duration.ofSeconds(120));
            assertThat(pins.check(person, PIN)).isEqualTo(new Outcome.Right());
            assertThat(pins.check(person, "999999")).isEqualTo(new Outcome.Wrong(4));
        }

        @Test
        void remembersTriesWhoseActWasRolledBack() {
            PersonId person = withPin();
            for (int i = 0; i < 5; i++) {
                new TransactionTemplate(transactions).executeWithoutResult(status -> {
                    pins.check(person, "999999");
                    status.setRollbackOnly();
                });
            }

            assertThat(pins.check(person, PIN)).isInstanceOf(Outcome.Paused.class);
        }

        /** Twice as many acts at once as there are connections: each holds one while its PIN is counted. */
        @RepeatedTest(2)
        void letsFiveOfManyAtOnceThrough() throws Exception {
            PersonId person = withPin();
            ExecutorService many = Executors.newFixedThreadPool(40);
            try {
                Callable<Outcome> act = () -> new TransactionTemplate(transactions).execute(status -> {
                    jdbc.sql("select count(*) from people").query(Integer.class).single();
                    return pins.check(person, "999999");
                });
                List<Future<Outcome>> said = many.invokeAll(java.util.Collections.nCopies(40, act));
                int wrong = 0;
                for (Future<Outcome> one : said) {
                    wrong += one.get() instanceof Outcome.Wrong ? 1 : 0;
                }
                assertThat(wrong).isEqualTo(5);
            } finally {
                many.shutdown();
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
