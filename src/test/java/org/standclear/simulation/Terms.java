package org.standclear.simulation;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.context.ApplicationContext;

/** Plays terms one after the other in one running application, each on an empty lab. */
final class Terms {

    private static final Pattern INSERT = Pattern.compile("INSERT INTO (\\S+) VALUES.*", Pattern.DOTALL);

    private static final ThreadMXBean PROCESSOR = ManagementFactory.getThreadMXBean();

    private final ApplicationContext application;

    /** Makes the tables, so it stays open: H2 asks the session that made a table about its checks. */
    private final Connection connection;

    private final List<String> emptyLab;
    private boolean whole = true;

    Terms(ApplicationContext application) throws SQLException {
        this.application = application;
        connection = DriverManager.getConnection(
                application.getEnvironment().getRequiredProperty("spring.datasource.url"), "sa", "");
        emptyLab = script();
    }

    /** Everything that is in the database, as statements that make it so. */
    List<String> script() throws SQLException {
        List<String> lines = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                var script = statement.executeQuery("script")) {
            while (script.next()) {
                lines.add(script.getString(1));
            }
        }
        return lines;
    }

    /** The same of the lab before the first term. */
    List<String> emptyLab() {
        return emptyLab;
    }

    /** To the database of the term that was played last. */
    Connection connection() {
        return connection;
    }

    /** Tables lost triggers or checks: the next term makes them anew. */
    void spoiled() {
        whole = false;
    }

    /** Plays the seed's term on an empty lab; throws with seed and step when the audit finds anything. */
    Journal play(long seed, int weeks) throws SQLException {
        if (whole) {
            emptied();
        } else {
            madeAnew();
        }
        long before = PROCESSOR.getCurrentThreadCpuTime();
        Journal journal = new Journal(seed);
        try {
            new Term(application, new Auditor(connection), journal).play(weeks);
        } catch (RuntimeException fault) {
            throw new AssertionError(journal.failure(List.of(fault.toString())).getMessage(), fault);
        }
        journal.took(Duration.ofNanos(PROCESSOR.getCurrentThreadCpuTime() - before));
        return journal;
    }

    private void madeAnew() throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("drop all objects");
            for (String line : emptyLab) {
                statement.execute(line);
            }
        }
        whole = true;
    }

    /** The tables stay, and with them what the sessions know of them: much faster than making them anew. */
    void emptied() throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("set referential_integrity false");
            for (String table : tables()) {
                statement.execute("truncate table " + table + " restart identity");
            }
            // first the labs: with each of them a trigger puts the head of its record, which goes again
            Set<String> begun = new HashSet<>();
            for (boolean ofLabs : List.of(true, false)) {
                for (String line : emptyLab) {
                    Matcher rows = INSERT.matcher(line);
                    if (rows.matches() && rows.group(1).contains("\"LABS\"") == ofLabs) {
                        if (begun.add(rows.group(1))) {
                            statement.execute("truncate table " + rows.group(1));
                        }
                        statement.execute(line);
                    }
                }
            }
            statement.execute("set referential_integrity true");
        }
    }

    private List<String> tables() throws SQLException {
        return Rows.of(
                        connection,
                        "select table_name from information_schema.tables where table_schema = 'PUBLIC'"
                                + " and table_type = 'BASE TABLE'")
                .stream()
                .map(row -> "\"" + Rows.text(row, "table_name") + "\"")
                .toList();
    }
}
