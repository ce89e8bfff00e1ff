package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

class ShortMemoryTests {

    private final AtomicInteger stored = new AtomicInteger(1);
    private final AtomicInteger reads = new AtomicInteger();
    private final ShortMemory<Integer> memory = new ShortMemory<>(() -> {
        reads.incrementAndGet();
        return stored.get();
    });

    @AfterEach
    void noTransactionStaysOpen() {
        if (TransactionSynchronizationManager.isSynchronizationActive()) {
            TransactionSynchronizationManager.clearSynchronization();
        }
    }

    @Test
    void readsOnceForAMomentAndThenAnew() throws InterruptedException {
        assertThat(memory.get()).isEqualTo(1);
        stored.set(2);
        assertThat(memory.get()).isEqualTo(1);
        assertThat(reads).hasValue(1);
        Thread.sleep(ShortMemory.MOMENT.toMillis() + 50);
        assertThat(memory.get()).isEqualTo(2);
    }

    @Test
    void showsAChangeAtOnceToWhoMakesItAndToOthersWhenItIsCommitted() throws InterruptedException {
        assertThat(memory.get()).isEqualTo(1);
        TransactionSynchronizationManager.initSynchronization();
        stored.set(2);
        memory.forget();
        assertThat(memory.get()).isEqualTo(2);
        assertThat(seenByAnotherThread()).isEqualTo(1);
        end(TransactionSynchronization.STATUS_COMMITTED);
        assertThat(seenByAnotherThread()).isEqualTo(2);
    }

    @Test
    void keepsNothingOfAChangeThatWasRolledBack() {
        TransactionSynchronizationManager.initSynchronization();
        stored.set(2);
        memory.forget();
        assertThat(memory.get()).isEqualTo(2);
        stored.set(1);
        end(TransactionSynchronization.STATUS_ROLLED_BACK);
        assertThat(memory.get()).isEqualTo(1);
    }

    private static void end(int status) {
        var synchronizations = TransactionSynchronizationManager.getSynchronizations();
        TransactionSynchronizationManager.clearSynchronization();
        synchronizations.forEach(one -> one.afterCompletion(status));
    }

    private int seenByAnotherThread() throws InterruptedException {
        AtomicInteger seen = new AtomicInteger();
        Thread other = new Thread(() -> seen.set(memory.get()));
        other.start();
        other.join();
        return seen.get();
    }
}
