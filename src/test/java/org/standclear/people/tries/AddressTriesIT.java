package org.standclear.people.tries;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.people.tries.Tries.Begun;
import org.standclear.people.tries.Tries.Kind;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A room full of people behind one address: their right sign-ins shut nobody out, and wrong ones wear off. */
class AddressTriesIT {

    abstract static class Cases {

        @Autowired
        Tries tries;

        @Autowired
        MovableClock clock;

        private String address;

        @BeforeEach
        void freshAddress() {
            address = UUID.randomUUID().toString();
        }

        private Begun begin() {
            return tries.begin(Kind.ADDRESS, address);
        }

        private void wrong(int times) {
            for (int i = 0; i < times; i++) {
                assertThat(begin()).as("try %d", i).isInstanceOf(Begun.Go.class);
            }
        }

        private Begun right() {
            Begun begun = begin();
            if (begun instanceof Begun.Go go) {
                tries.takeBack(Kind.ADDRESS, address, go);
            }
            return begun;
        }

        @Test
        void rightTriesAfterAPauseShutNobodyOut() {
            wrong(40);
            assertThat(begin()).isInstanceOf(Begun.Paused.class);
            clock.moveBy(Duration.ofSeconds(30));

            for (int i = 0; i < 30; i++) {
                assertThat(right()).as("person %d", i).isInstanceOf(Begun.Go.class);
            }
        }

        @Test
        void rightTriesNeitherCountNorKeepTheWrongOnesAlive() {
            wrong(39);
            for (int minute = 0; minute < 60; minute++) {
                clock.moveBy(Duration.ofMinutes(1));
                assertThat(right()).as("minute %d", minute).isInstanceOf(Begun.Go.class);
            }
            // an hour on, the address has all its tries again
            wrong(39);
            assertThat(begin()).isInstanceOf(Begun.Go.class);
            assertThat(begin()).isInstanceOf(Begun.Paused.class);
        }

        @Test
        void wrongTriesWearOffOneByOne() {
            wrong(39);
            clock.moveBy(Duration.ofSeconds(89));
            assertThat(begin()).isEqualTo(new Begun.Go(0, clock.instant().plusSeconds(30)));

            clock.moveBy(Duration.ofSeconds(31));
            assertThat(begin())
                    .as("one of 40 worn off, one more")
                    .isEqualTo(new Begun.Go(0, clock.instant().plusSeconds(30)));
            clock.moveBy(Duration.ofMinutes(15));
            assertThat(begin()).as("ten worn off").isEqualTo(new Begun.Go(9, null));
        }

        @Test
        void aRightTryLeavesThePauseThatAWrongOneLedTo() {
            wrong(38);
            Begun.Go slow = (Begun.Go) begin();
            wrong(1);
            assertThat(begin()).isInstanceOf(Begun.Paused.class);
            clock.moveBy(Duration.ofSeconds(30));
            wrong(1);

            tries.takeBack(Kind.ADDRESS, address, slow);
            assertThat(begin()).as("40 wrong ones remain").isInstanceOf(Begun.Paused.class);
        }

        @Test
        void countsManyAtOnceBeforeTheyAreCompared() throws Exception {
            ExecutorService threads = Executors.newFixedThreadPool(8);
            try {
                List<Callable<Begun>> calls = new ArrayList<>();
                for (int i = 0; i < 60; i++) {
                    calls.add(this::begin);
                }
                int compared = 0;
                for (Future<Begun> begun : threads.invokeAll(calls)) {
                    compared += begun.get() instanceof Begun.Go ? 1 : 0;
                }
                assertThat(compared).isEqualTo(40);
            } finally {
                threads.shutdownNow();
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
