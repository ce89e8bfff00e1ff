package org.standclear.trail;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Gives every transaction a place for its entries when it begins. Doing that at the first append would be too late for
 * an entry that is first appended while the transaction already commits.
 */
@Component
class OpenTransactions implements TransactionExecutionListener {

    private final ChainWriter writer;

    OpenTransactions(ChainWriter writer) {
        this.writer = writer;
    }

    @Override
    public void afterBegin(TransactionExecution transaction, @Nullable Throwable failure) {
        if (failure == null && TransactionSynchronizationManager.isSynchronizationActive()) {
            TransactionSynchronizationManager.registerSynchronization(new PendingEntries(writer::write));
        }
    }

    /** The running transaction's entries; empty when none is running or it may only read. */
    Optional<PendingEntries> current() {
        if (!TransactionSynchronizationManager.isActualTransactionActive()
                || TransactionSynchronizationManager.isCurrentTransactionReadOnly()) {
            return Optional.empty();
        }
        for (TransactionSynchronization one : TransactionSynchronizationManager.getSynchronizations()) {
            if (one instanceof PendingEntries pending) {
                return Optional.of(pending);
            }
        }
        return Optional.empty();
    }
}
