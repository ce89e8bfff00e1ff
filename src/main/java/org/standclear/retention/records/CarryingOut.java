package org.standclear.retention.records;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Settled;
import org.standclear.retention.records.ItemRows.Item;
import org.standclear.retention.records.ItemRows.State;
import org.standclear.retention.records.WhatKeeps.Asked;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/**
 * Carries approved lists out, a batch a transaction: a record and its line on the list change together, so a process that
 * dies leaves whole batches behind it, and the row of the list lets one instance at a time work on it.
 */
@Component
class CarryingOut {

    private static final Logger LOG = LoggerFactory.getLogger(CarryingOut.class);

    private final ItemRows items;
    private final ListRows lists;
    private final JdbcDueRecords due;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;
    private final TransactionTemplate transaction;

    CarryingOut(
            ItemRows items,
            ListRows lists,
            JdbcDueRecords due,
            Labs labs,
            Trail trail,
            Clock clock,
            PlatformTransactionManager transactions) {
        this.items = items;
        this.lists = lists;
        this.due = due;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
        this.transaction = new TransactionTemplate(transactions);
    }

    int carryOut(int most) {
        try {
            return batch(most);
        } catch (RuntimeException broken) {
            LOG.warn("a batch of disposals was refused and is tried record by record", broken);
            return oneByOne(most);
        }
    }

    /** Finds the record that the database refuses to let go, and leaves it on the list as failed. */
    private int oneByOne(int most) {
        int settled = 0;
        for (int i = 0; i < most; i++) {
            try {
                int done = batch(1);
                if (done == 0) {
                    return settled;
                }
                settled += done;
            } catch (RuntimeException broken) {
                LOG.warn("a record could not be disposed of", broken);
                settled += fail();
            }
        }
        return settled;
    }

    private int batch(int most) {
        return Objects.requireNonNull(transaction.execute(status -> {
            Optional<UUID> list = items.lockOpenList(lab(), now());
            if (list.isEmpty()) {
                return 0;
            }
            List<Item> batch = items.pending(list.get(), most);
            Asked asked = due.ask();
            batch.forEach(item -> settle(item, asked));
            finish(list.get());
            return batch.size();
        }));
    }

    private void settle(Item item, Asked asked) {
        Optional<Candidate> record = due.find(item.kind(), item.record());
        if (record.isEmpty()) {
            items.settle(item, State.GONE, "it was gone already", now());
            return;
        }
        String why = due.whyItStays(item.kind(), record.get(), asked);
        if (!why.isEmpty()) {
            items.settle(item, State.KEPT, why, now());
            return;
        }
        // the line first: guarded tables let the record go only when it stands there
        items.settle(item, State.DONE, "", now());
        if (!due.room(item.kind()).dispose(item.record())) {
            items.settle(item, State.GONE, "it was gone already", now());
        }
    }

    private int fail() {
        return Objects.requireNonNull(transaction.execute(status -> {
            Optional<UUID> list = items.lockOpenList(lab(), now());
            List<Item> next = list.map(id -> items.pending(id, 1)).orElse(List.of());
            next.forEach(item ->
                    items.settle(item, State.FAILED, "it could not be let go; the log of the program says why", now()));
            list.ifPresent(this::finish);
            return next.size();
        }));
    }

    private void finish(UUID list) {
        if (!items.pending(list, 1).isEmpty()) {
            return;
        }
        items.finish(list, now());
        MonthList done = lists.find(list).orElseThrow();
        TrailEntry entry = TrailEntry.of(
                lab(),
                "retention.list-carried-out",
                list,
                null,
                "The disposal list of " + done.month() + " was carried out.");
        for (Settled kind : done.kinds()) {
            entry = entry.with(
                    kind.kind().name(),
                    kind.disposed() + " disposed of, " + kind.keptBack() + " kept back, " + kind.gone()
                            + " gone already, " + kind.failed() + " failed");
        }
        trail.append(entry);
    }

    private LabId lab() {
        return labs.theLab().id();
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
