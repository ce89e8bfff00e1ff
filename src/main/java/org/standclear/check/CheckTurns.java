package org.standclear.check;

import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;

/**
 * Lets only a few large files be checked at a time, so that the rest of the lab's pages keep answering. Small files,
 * which is nearly all of them, go straight through.
 */
@Component
class CheckTurns {

    /** A sheet of this size has about four thousand steps. */
    static final int LARGE_BYTES = 256 * 1024;

    private final Semaphore running;
    private final Semaphore waiting;
    private final long patienceSeconds;

    CheckTurns() {
        this(Math.max(1, Runtime.getRuntime().availableProcessors() / 2), 4, 10);
    }

    CheckTurns(int atOnce, int mayWait, long patienceSeconds) {
        this.running = new Semaphore(atOnce, true);
        this.waiting = new Semaphore(atOnce + mayWait);
        this.patienceSeconds = patienceSeconds;
    }

    /** The result, or nothing when there was no turn to be had. */
    <T> Optional<T> take(int bytes, Supplier<T> work) {
        if (bytes < LARGE_BYTES) {
            return Optional.of(work.get());
        }
        if (!waiting.tryAcquire()) {
            return Optional.empty();
        }
        try {
            return inTurn(work);
        } finally {
            waiting.release();
        }
    }

    private <T> Optional<T> inTurn(Supplier<T> work) {
        if (!gotTurn()) {
            return Optional.empty();
        }
        try {
            return Optional.of(work.get());
        } finally {
            running.release();
        }
    }

    private boolean gotTurn() {
        try {
            return running.tryAcquire(patienceSeconds, TimeUnit.SECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
