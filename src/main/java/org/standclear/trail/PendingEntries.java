package org.standclear.trail;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.springframework.core.Ordered;
import org.springframework.transaction.support.TransactionSynchronization;
import org.standclear.trail.StoredEntry.PendingEntry;

/**
 * The entries of one transaction until its end. They are written last of all, so that the lab's row is locked for as
 * short a time as possible; what is appended after that moment is written at once, under the lock already held.
 */
final class PendingEntries implements TransactionSynchronization {

    private final List<PendingEntry> waiting = new ArrayList<>();
    private final Map<Object, Integer> savepoints = new HashMap<>();
    private final Consumer<List<PendingEntry>> writer;
    private boolean written;

    PendingEntries(Consumer<List<PendingEntry>> writer) {
        this.writer = writer;
    }

    void add(PendingEntry entry) {
        if (written) {
            writer.accept(List.of(entry));
        } else {
            waiting.add(entry);
        }
    }

    @Override
    public int getOrder() {
        return Ordered.LOWEST_PRECEDENCE;
    }

    @Override
    public void beforeCommit(boolean readOnly) {
        written = true;
        byLab().forEach(writer);
        waiting.clear();
    }

    /** Labs in the order of their ids, so that two transactions never wait for each other's. */
    private Collection<List<PendingEntry>> byLab() {
        return waiting.stream()
                .collect(Collectors.groupingBy(
                        pending -> pending.entry().lab().toString(), TreeMap::new, Collectors.toList()))
                .values();
    }

    @Override
    public void savepoint(Object savepoint) {
        savepoints.put(savepoint, waiting.size());
    }

    @Override
    public void savepointRollback(Object savepoint) {
        Integer size = savepoints.get(savepoint);
        if (size != null && size < waiting.size()) {
            waiting.subList(size, waiting.size()).clear();
        }
    }
}
