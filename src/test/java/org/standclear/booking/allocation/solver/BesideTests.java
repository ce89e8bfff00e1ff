package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** Two pieces of work at a time. */
class BesideTests {

    private static boolean waits(CountDownLatch latch) {
        try {
            return latch.await(20, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    /** Each waits for the other to have begun. */
    @Test
    void bothGoOnAtATimeTheSecondOnANamedThreadThatKeepsNoProcessAlive() {
        CountDownLatch first = new CountDownLatch(1);
        CountDownLatch second = new CountDownLatch(1);
        AtomicReference<Thread> thread = new AtomicReference<>();

        Beside<Boolean, Boolean> both = Beside.of(
                () -> {
                    first.countDown();
                    return waits(second);
                },
                () -> {
                    thread.set(Thread.currentThread());
                    second.countDown();
                    return waits(first);
                });

        assertThat(both).isEqualTo(new Beside<>(true, true));
        assertThat(thread.get())
                .extracting(Thread::getName, Thread::isDaemon, Thread::isAlive)
                .containsExactly("allocation-beside", true, false);
    }

    @Test
    void whatTheSecondThrowsIsThrownWhenTheFirstIsThrough() {
        CountDownLatch thrown = new CountDownLatch(1);
        AtomicBoolean through = new AtomicBoolean();

        assertThatThrownBy(() -> Beside.of(
                        () -> {
                            waits(thrown);
                            through.set(true);
                            return 1;
                        },
                        () -> {
                            thrown.countDown();
                            throw new IllegalArgumentException("no numbers");
                        }))
                .hasRootCauseMessage("no numbers");
        assertThat(through).isTrue();
        assertThatThrownBy(() -> Beside.of(() -> 1, () -> {
                    throw new OutOfMemoryError("planned");
                }))
                .isInstanceOf(OutOfMemoryError.class);
    }

    /** The second looks at what the search is about to throw away: it must be through first. */
    @Test
    void whateverTheFirstThrowsComesWhenTheSecondIsThrough() {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch goesOn = new CountDownLatch(1);
        AtomicBoolean through = new AtomicBoolean();

        assertThatThrownBy(() -> Beside.of(
                        () -> {
                            waits(begun);
                            // an interrupt does not make it go on either
                            Thread.currentThread().interrupt();
                            goesOn.countDown();
                            throw new IllegalArgumentException("no plan");
                        },
                        () -> {
                            begun.countDown();
                            waits(goesOn);
                            through.set(true);
                            return 2;
                        }))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(through).isTrue();
        assertThat(Thread.interrupted()).isTrue();
    }
}
