package org.standclear.platform.database;

import java.util.List;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.util.function.SingletonSupplier;

/**
 * Lets PostgreSQL look at tables that the running transaction has filled. Until somebody looks, statements and the checks
 * of keys go on with the plans of the tables as they were, and read a table that has become long from end to end for each
 * row. H2 has no such plans, and would commit.
 */
@Component
public class TableStatistics {

    private static final String ENGINE = "PostgreSQL";

    private final JdbcTemplate jdbc;
    private final SingletonSupplier<Boolean> wanted;

    TableStatistics(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
        this.wanted = SingletonSupplier.of(() -> ENGINE.equals(jdbc.execute((ConnectionCallback<String>)
                connection -> connection.getMetaData().getDatabaseProductName())));
    }

    /** Looks at them in the running transaction; the names come from the program, never from outside. */
    public void lookAgain(List<String> tables) {
        if (wanted.obtain()) {
            tables.forEach(table -> jdbc.execute("analyze " + table));
        }
    }
}
