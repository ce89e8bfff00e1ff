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
    private final Growth growth = new Growth();
    private final Look.Memory memory = new Look.Memory();
    private Instant since = Instant.EPOCH;

    Auditor(Connection connection) {
        this.connection = connection;
        chain = new ChainReader(connection);
        paths = new LifePaths(connection);
    }

    /**
     * What is wrong now, looking at what came since the last time; empty when nothing is.
     */
    List<String> look(Instant now) throws SQLException {
        List<String> faults = new ArrayList<>();
        List<ChainReader.Entry> fresh = chain.next(faults);
        rules(memory.again(connection), now, fresh, faults);
        since = now;
        return faults;
    }

    private void rules(Look look, Instant now, List<ChainReader.Entry> fresh, List<String> faults) throws SQLException {
        faults.addAll(new StandingRules(look).faults(now));
        faults.addAll(new ReleaseRules(look).faults(since, now));
        faults.addAll(new SignedRules(look).faults(since, fresh));
        faults.addAll(new IncidentRules(look).faults(since, fresh));
        faults.addAll(new CalendarRules(look).faults(since, now));
        faults.addAll(paths.faults(fresh));
        faults.addAll(growth.faults(look));
    }

    /** When a term is over: everything from the beginning, with nothing remembered. */
    List<String> everything(Instant now) throws SQLException {
        return whole(connection, now);
    }

    /** The same of any database. */
    static List<String> whole(Connection connection, Instant now) throws SQLException {
        Auditor auditor = new Auditor(connection);
        List<String> faults = new ArrayList<>();
        auditor.rules(Look.whole(connection), now, auditor.chain.next(faults), faults);
        return faults;
    }
}
