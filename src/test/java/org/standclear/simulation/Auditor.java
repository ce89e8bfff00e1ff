package org.standclear.simulation;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Looks at the database after every act and says what must never be there. Knows nothing of the application: it reads
 * tables with plain SQL, and computes hashes as docs/trail.md describes them.
 */
final class Auditor {

    private final Connection connection;
    private final ChainReader chain;
    private final LifePaths paths;
    private final Growth growth;
    private Instant since = Instant.EPOCH;
    private int unseen = 10;

    Auditor(Connection connection) {
        this.connection = connection;
        chain = new ChainReader(connection);
        paths = new LifePaths(connection);
        growth = new Growth(connection);
    }

    /**
     * What is wrong now, looking at what came since the last time; empty when nothing is. An act that left no entry in the
     * record is looked at with the next one that does, and after ten acts at the latest.
     */
    List<String> look(Instant now) throws SQLException {
        List<String> faults = new ArrayList<>();
        List<ChainReader.Entry> fresh = chain.next(faults);
        if (fresh.isEmpty() && ++unseen < 10) {
            return faults;
        }
        unseen = 0;
        faults.addAll(new StandingRules(connection).faults(now));
        faults.addAll(new ReleaseRules(connection).faults(since, now));
        faults.addAll(new SignedRules(connection).faults(since, fresh));
        faults.addAll(new IncidentRules(connection).faults(since, fresh));
        faults.addAll(paths.faults(fresh));
        faults.addAll(growth.faults());
        since = now;
        return faults;
    }

    /** Everything from the beginning, with nothing remembered. */
    static List<String> whole(Connection connection, Instant now) throws SQLException {
        return new Auditor(connection).look(now);
    }
}
