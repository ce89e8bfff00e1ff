package org.standclear.booking;

import java.util.Collection;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Locks what is going to be claimed, in one fixed order, until the transaction ends. Cells and persons share a fixed set
 * of lock rows, so that nothing has to be inserted for a new one and two strangers now and then wait for each other.
 */
@Component
class ClaimLocks {

    static final int BUCKETS = 1000;

    /** An update that changes nothing locks as well as a select does, and H2 need not parse it anew each time. */
    static final String LOCK = "update booking_claim_locks set bucket = bucket where bucket = ?";

    private final JdbcTemplate jdbc;

    ClaimLocks(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /** The lock row of a subject: UUID's hash is specified, so every instance and version agrees. */
    static int bucket(UUID subject) {
        return Math.floorMod(subject.hashCode(), BUCKETS);
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void lock(Collection<UUID> subjects) {
        // one statement each, sent together: within one statement the engines lock in an order of their own
        jdbc.batchUpdate(
                LOCK,
                subjects.stream()
                        .map(ClaimLocks::bucket)
                        .distinct()
                        .sorted()
                        .map(bucket -> new Object[] {bucket})
                        .toList());
    }
}
