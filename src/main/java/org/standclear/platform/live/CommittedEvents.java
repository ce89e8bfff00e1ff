package org.standclear.platform.live;

import java.util.LinkedHashSet;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.standclear.platform.ids.CellId;

/**
 * Collects what a transaction changed. On PostgreSQL the database tells all instances, since a notification of a
 * transaction is delivered when it commits and never when it rolls back; elsewhere there is one instance, and it is told
 * after the commit.
 */
@Component
class CommittedEvents implements LiveEvents {

    private final JdbcClient jdbc;
    private final LiveHub hub;
    private final DatabaseChannel channel;

    CommittedEvents(JdbcClient jdbc, LiveHub hub, DatabaseChannel channel) {
        this.jdbc = jdbc;
        this.hub = hub;
        this.channel = channel;
    }

    @Override
    public void cellChanged(CellId cell) {
        if (!TransactionSynchronizationManager.isSynchronizationActive()) {
            tell(cell.toString());
            return;
        }
        for (TransactionSynchronization one : TransactionSynchronizationManager.getSynchronizations()) {
            if (one instanceof Changed changed && changed.owner() == this) {
                changed.cells.add(cell.toString());
                return;
            }
        }
        Changed changed = new Changed();
        changed.cells.add(cell.toString());
        TransactionSynchronizationManager.registerSynchronization(changed);
    }

    private void tell(String cell) {
        if (channel.reachesAll()) {
            notifyAll(cell);
        } else {
            hub.publish(cell);
        }
    }

    private void notifyAll(String cell) {
        jdbc.sql("select pg_notify(:channel, :cell)")
                .param("channel", DatabaseChannel.NAME)
                .param("cell", cell)
                .query((row, number) -> 0)
                .list();
    }

    private final class Changed implements TransactionSynchronization {

        private final Set<String> cells = new LinkedHashSet<>();

        CommittedEvents owner() {
            return CommittedEvents.this;
        }

        @Override
        public void beforeCommit(boolean readOnly) {
            if (!readOnly && channel.reachesAll()) {
                cells.forEach(CommittedEvents.this::notifyAll);
            }
        }

        @Override
        public void afterCommit() {
            if (!channel.reachesAll()) {
                cells.forEach(hub::publish);
            }
        }
    }
}
