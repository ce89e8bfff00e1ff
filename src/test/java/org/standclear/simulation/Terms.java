package org.standclear.simulation;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.springframework.context.ApplicationContext;

/** Plays terms one after the other in one running application, each on an empty lab. */
final class Terms {

    private final ApplicationContext application;

    /** Makes the tables, so it stays open: H2 asks the session that made a table about its checks. */
    private final Connection connection;

    private final List<String> emptyLab = new ArrayList<>();

    Terms(ApplicationContext application) throws SQLException {
        this.application = application;
        connection = DriverManager.getConnection(
                application.getEnvironment().getRequiredProperty("spring.datasource.url"), "sa", "");
        try (Statement statement = connection.createStatement();
                var script = statement.executeQuery("script")) {
            while (script.next()) {
                emptyLab.add(script.getString(1));
            }
        }
    }

    /** To the database of the term that was played last. */
    Connection connection() {
        return connection;
    }

    /** Plays the seed's term on an empty lab; throws with seed and step when the audit finds anything. */
    Journal play(long seed, int weeks) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("drop all objects");
            for (String line : emptyLab) {
                statement.execute(line);
            }
        }
        Journal journal = new Journal(seed);
        try {
            new Term(application, new Auditor(connection), journal).play(weeks);
        } catch (RuntimeException fault) {
            throw new AssertionError(journal.failure(List.of(fault.toString())).getMessage(), fault);
        }
        return journal;
    }
}
