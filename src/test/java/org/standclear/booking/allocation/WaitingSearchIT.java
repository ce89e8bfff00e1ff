package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.standclear.booking.SampleLab;
import org.standclear.core.allocation.Allocator;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Solution;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A search that waits for another one is alive and can be stopped, however long the other takes. */
class WaitingSearchIT {

    private static final LocalDate FAR_FRIDAY = LocalDate.of(2026, 6, 12);
    private static final Instant BEFORE = Instant.parse("2026-06-11T12:00:00Z");

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        Windows windows;

        @Autowired
        Searches searches;

        @Autowired
        Plans plans;

        @Autowired
        WindowProblem problems;

        @Autowired
        Allocator allocator;

        @Autowired
        PlatformTransactionManager transactions;

        @Autowired
        JdbcClient jdbc;

        private final CountDownLatch first = new CountDownLatch(1);
        private SearchDesk desk;
        private Person ines;

        @BeforeEach
        void aDeskWhoseFirstSearchTakesLong() {
            clock.moveToStart();
            ines = new SampleLab(application).person("Ines Quarryvale", Role.INSTRUCTOR);
            desk = new SearchDesk(windows, searches, plans, problems, this::afterTheFirst, transactions);
        }

        @AfterEach
        void end() {
            first.countDown();
            desk.destroy();
            jdbc.sql("""
                    update booking_windows set closed_by = made_by, closed_at = made_at, closed_reason = 'the test is over'
                    where made_by = ?""").param(ines.id().value()).update();
        }

        private Solution afterTheFirst(Problem problem, Allocator.Effort effort, Allocator.Watcher watcher) {
            try {
                assertThat(first.await(1, TimeUnit.MINUTES)).isTrue();
            } catch (InterruptedException interrupted) {
                throw new AssertionError(interrupted);
            }
            return allocator.solve(problem, effort, watcher);
        }

        private UUID begun(String title) {
            PersonId by = ines.id();
            UUID window = windows.open(title, FAR_FRIDAY, FAR_FRIDAY, BEFORE, by);
            return ((SearchDesk.Begun.Searching) desk.begin(window, 1, by)).search();
        }

        private Search find(UUID search) {
            return searches.find(search).orElseThrow();
        }

        private static void await(BooleanSupplier condition) {
            Instant until = Instant.now().plus(Duration.ofSeconds(30));
            while (!condition.getAsBoolean() && Instant.now().isBefore(until)) {
                try {
                    Thread.sleep(50);
                } catch (InterruptedException interrupted) {
                    throw new AssertionError(interrupted);
                }
            }
            assertThat(condition.getAsBoolean()).isTrue();
        }

        @Test
        void isNotLostWhileItWaitsAndFindsItsPlanAfterwards() {
            UUID running = begun("First");
            UUID waiting = begun("Second");

            clock.moveBy(Searches.SILENCE.plusSeconds(5));
            await(() -> find(running).state() == Search.State.RUNNING);
            await(() -> find(waiting).state() == Search.State.RUNNING);
            UUID window = find(waiting).window();
            assertThat(((SearchDesk.Begun.Searching) desk.begin(window, 2, ines.id())).search())
                    .as("no second search of the same window")
                    .isEqualTo(waiting);

            first.countDown();
            await(() -> find(waiting).endedAt() != null);
            assertThat(find(waiting).state()).isEqualTo(Search.State.FOUND);
        }

        @Test
        void isStoppedWhileItWaits() {
            begun("First");
            UUID waiting = begun("Second");
            searches.stop(waiting);
            await(() -> searches.isStopping(waiting));

            first.countDown();
            await(() -> find(waiting).endedAt() != null);
            assertThat(find(waiting).state().hasPlan()).isTrue();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
