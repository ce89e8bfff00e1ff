package org.standclear.testing.reads;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** How many rows each statement of the requests since the last reset made the database read. */
public final class RowsRead {

    private final Map<String, Long> byStatement = new ConcurrentHashMap<>();
    private final ThreadLocal<Boolean> inRequest = ThreadLocal.withInitial(() -> false);
    private volatile boolean on;

    /** Counts the requests that the act sends. */
    public Map<String, Long> of(Runnable act) {
        byStatement.clear();
        on = true;
        try {
            act.run();
        } finally {
            on = false;
        }
        return Map.copyOf(byStatement);
    }

    void enter() {
        inRequest.set(true);
    }

    void leave() {
        inRequest.remove();
    }

    boolean counts(String sql) {
        String begins = sql.stripLeading().toLowerCase(java.util.Locale.ROOT);
        boolean reads = begins.startsWith("select") || begins.startsWith("with") || begins.startsWith("(select");
        return on && inRequest.get() && reads && !begins.contains("for update");
    }

    void add(String sql, long rows) {
        byStatement.merge(sql.replaceAll("\\s+", " "), rows, Long::sum);
    }
}
