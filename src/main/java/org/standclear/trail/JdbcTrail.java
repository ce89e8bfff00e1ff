package org.standclear.trail;

import java.time.Clock;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Service;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.StoredEntry.PendingEntry;

/** The record in the database. */
@Service
class JdbcTrail implements Trail {

    private final OpenTransactions transactions;
    private final JdbcTemplate jdbc;
    private final Clock clock;

    JdbcTrail(OpenTransactions transactions, JdbcTemplate jdbc, Clock clock) {
        this.transactions = transactions;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public void append(TrailEntry entry) {
        transactions
                .current()
                .orElseThrow(() -> new IllegalStateException(
                        "an entry of the record needs a running transaction that may write: " + entry.kind()))
                .add(new PendingEntry(entry, SqlTime.stored(clock.instant())));
    }

    @Override
    public TrailVerification verify(LabId lab) {
        return new ChainCheck(jdbc, lab).run();
    }
}
