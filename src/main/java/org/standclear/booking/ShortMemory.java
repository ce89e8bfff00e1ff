package org.standclear.booking;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;

/**
 * Keeps for each lab what hardly ever changes for a moment, so that not every booking reads it anew. Who changes it forgets it; other
 * instances notice within that moment. The transaction that changes it reads from the database until it ends.
 */
final class ShortMemory<T> {

    /** Short enough that nobody who changes a rule and turns to another screen finds the old one. */
    static final Duration MOMENT = Duration.ofSeconds(1);

    private final Supplier<T> source;
    private final Map<Optional<LabId>, Kept<T>> kept = new ConcurrentHashMap<>();

    ShortMemory(Supplier<T> source) {
        this.source = source;
    }

    /** A value and when it was read; a new object each time, so that a slow reader cannot bring an old one back. */
    private static final class Kept<T> {
        private final @Nullable T value;
        private final long readAt;

        Kept(@Nullable T value, long readAt) {
            this.value = value;
            this.readAt = readAt;
        }

        boolean isFresh(long now) {
            return now - readAt < MOMENT.toNanos();
        }
    }

    T get() {
        if (TransactionSynchronizationManager.hasResource(this)) {
            return source.get();
        }
        Optional<LabId> here = LabScope.here();
        Kept<T> seen = kept.computeIfAbsent(here, lab -> new Kept<>(null, 0));
        long now = System.nanoTime();
        T value = seen.value;
        if (value != null && seen.isFresh(now)) {
            return value;
        }
        T read = source.get();
        kept.replace(here, seen, new Kept<>(read, now));
        return read;
    }

    /** Called by the transaction that changes it; what it wrote counts for others only when it has ended. */
    void forget() {
        if (!TransactionSynchronizationManager.isSynchronizationActive()) {
            forgetNow();
        } else if (!TransactionSynchronizationManager.hasResource(this)) {
            TransactionSynchronizationManager.bindResource(this, Boolean.TRUE);
            TransactionSynchronizationManager.registerSynchronization(new AtTheEnd());
        }
    }

    /** What is being read just now is not kept either: its place is another one by then. */
    private void forgetNow() {
        kept.replaceAll((lab, old) -> new Kept<>(null, 0));
    }

    private final class AtTheEnd implements TransactionSynchronization {

        @Override
        public void afterCompletion(int status) {
            TransactionSynchronizationManager.unbindResourceIfPossible(ShortMemory.this);
            forgetNow();
        }
    }
}
