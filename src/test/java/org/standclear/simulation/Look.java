package org.standclear.simulation;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.table.Table;

/**
 * One look at the database: queries are asked only when a table that they read was written to since the last look, since
 * otherwise they would find what they found then. H2 counts the changes of every table; the first look asks everything.
 */
final class Look {

    private static final Pattern READ = Pattern.compile("(?:from|join)\\s+([a-z_]+)");
    private static final Map<String, Set<String>> TABLES = new ConcurrentHashMap<>();

    private final Connection connection;
    private final boolean first;
    private final Set<String> changed;

    private Look(Connection connection, boolean first, Set<String> changed) {
        this.connection = connection;
        this.first = first;
        this.changed = changed;
    }

    /** How often every table was written to, as the last look found it. */
    static final class Memory {

        private final Map<String, Long> counts = new HashMap<>();

        /** Looks again. */
        Look again(Connection connection) throws SQLException {
            boolean first = counts.isEmpty();
            Set<String> changed =
                    tables(connection).filter(this::isNew).map(Memory::name).collect(Collectors.toSet());
            return new Look(connection, first, changed);
        }

        /** As the engine has them: its view of them costs a third of an audit, since it counts their rows. */
        private static Stream<Table> tables(Connection connection) throws SQLException {
            SessionLocal session =
                    (SessionLocal) connection.unwrap(JdbcConnection.class).getSession();
            return session.getDatabase().getSchema("PUBLIC").getAllTablesAndViews(null).stream();
        }

        private boolean isNew(Table table) {
            long now = table.getMaxDataModificationId();
            Long before = counts.put(name(table), now);
            return before == null || before != now;
        }

        private static String name(Table table) {
            return table.getName().toLowerCase(Locale.ROOT);
        }
    }

    /** A look at everything, by somebody who remembers nothing. */
    static Look whole(Connection connection) {
        return new Look(connection, true, Set.of());
    }

    Connection connection() {
        return connection;
    }

    /** Whether the table was written to. */
    boolean changed(String table) {
        return first || changed.contains(table);
    }

    /** Each row of a query that should find none, as a fault of that name. */
    List<String> faults(String name, String sql, Object... values) throws SQLException {
        return isAsked(sql) ? Rows.faults(connection, name, sql, values) : List.of();
    }

    /** Whether the query may find anything else than the last time. */
    boolean isAsked(String sql) {
        return TABLES.computeIfAbsent(sql, Look::tables).stream().anyMatch(this::changed);
    }

    private static Set<String> tables(String sql) {
        return READ.matcher(sql)
                .results()
                .map((MatchResult found) -> found.group(1))
                .collect(Collectors.toSet());
    }
}
