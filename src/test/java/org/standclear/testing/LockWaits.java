package org.standclear.testing;

import java.time.Duration;
import java.util.List;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;

/** Who waits for a lock that the running transaction holds, so that tests step two transactions without sleeping. */
public class LockWaits {

    private static final Duration LONGEST = Duration.ofSeconds(20);

    private final JdbcTemplate jdbc;

    public LockWaits(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /** The database's number for the running transaction's session. */
    public long mine() {
        return single(isPostgres() ? "select pg_backend_pid()" : "select session_id()");
    }

    /** Returns as soon as that session waits for the running transaction. */
    public void await(long session) {
        await(List.of(session));
    }

    /** Returns as soon as anybody waits for the running transaction. */
    public void awaitAnybody() {
        await(List.of());
    }

    private void await(List<Long> wanted) {
        long end = System.nanoTime() + LONGEST.toNanos();
        while (System.nanoTime() < end) {
            List<Long> waiting = waiting();
            if (!waiting.isEmpty() && waiting.containsAll(wanted)) {
                return;
            }
            pause();
        }
        throw new AssertionError("nobody waits for the running transaction");
    }

    private List<Long> waiting() {
        return jdbc.queryForList(
                isPostgres()
                        ? "select pid from pg_stat_activity where pg_backend_pid() = any (pg_blocking_pids(pid))"
                        : "select session_id from information_schema.sessions where blocker_id = session_id()",
                Long.class);
    }

    private long single(String sql) {
        Long found = jdbc.queryForObject(sql, Long.class);
        if (found == null) {
            throw new AssertionError(sql);
        }
        return found;
    }

    private boolean isPostgres() {
        return Boolean.TRUE.equals(jdbc.execute((ConnectionCallback<Boolean>)
                connection -> connection.getMetaData().getDatabaseProductName().equals("PostgreSQL")));
    }

    private static void pause() {
        try {
            Thread.sleep(10);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new AssertionError("stopped while waiting", stopped);
        }
    }
}
