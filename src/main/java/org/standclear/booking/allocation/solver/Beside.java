package org.standclear.booking.allocation.solver;

import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Two pieces of work of a search at a time, the second on a thread of its own. What either finds must not depend on the
 * other, so that the search comes to the same however fast each is; both are through when it goes on.
 *
 * @param here what came of the work on the thread that asked
 * @param beside what came of the other
 */
record Beside<A, B>(A here, B beside) {

    /** What the second came to: one of the two. */
    private record Outcome<B>(@Nullable B found, @Nullable Throwable thrown) {}

    /**
     * Does both. Either ends by itself when the search is stopped; what the second throws is thrown here, that of the
     * first before it.
     */
    static <A, B> Beside<A, B> of(Supplier<A> here, Supplier<B> beside) {
        AtomicReference<Outcome<B>> outcome = new AtomicReference<>();
        Thread thread = new Thread(() -> outcome.set(outcome(beside)), "allocation-beside");
        thread.setDaemon(true);
        thread.start();
        A found;
        try {
            found = here.get();
        } finally {
            join(thread);
        }
        Outcome<B> other = Objects.requireNonNull(outcome.get(), "a thread that ended has an outcome");
        if (other.thrown() instanceof Error error) {
            throw error;
        }
        if (other.found() == null) {
            throw new IllegalStateException("a part of the search was lost", other.thrown());
        }
        return new Beside<>(found, other.found());
    }

    private static <B> Outcome<B> outcome(Supplier<B> work) {
        try {
            return new Outcome<>(work.get(), null);
        } catch (RuntimeException | Error lost) {
            return new Outcome<>(null, lost);
        }
    }

    /** Waits for the end even when asked to hurry: the other must not go on with what the search throws away. */
    private static void join(Thread thread) {
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException hurry) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
