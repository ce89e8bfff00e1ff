package org.standclear.platform.database;

import java.util.List;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/**
 * Lets PostgreSQL look at tables that the running transaction has filled. Until somebody looks, statements and the checks
 * of keys go on with the plans of the tables as they were, and read a table that has become long from end to end for each
 * row. H2 has no such plans, and would commit.
 */
@Component
public class TableStatistics {

    private final JdbcTemplate jdbc;
    private final Engine engine;

    TableStatistics(JdbcTemplate jdbc, Engine engine) {
        this.jdbc = jdbc;
        this.engine = engine;
    }

    /** Looks at them in the running transaction; the names come from the program, never from outside. */
    public void lookAgain(List<String> tables) {
        if (engine.isPostgres()) {
            tables.forEach(table -> jdbc.execute("analyze " + table));
        }
    }
}
