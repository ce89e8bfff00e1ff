package org.standclear.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.standclear.testing.OnPostgres;

/** How many statements reach PostgreSQL for a batch of rows: the server counts them itself, by a trigger for each statement. */
@OnPostgres
class RowsTogetherIT {

    @Autowired
    JdbcTemplate jdbc;

    @BeforeEach
    void aTableThatCountsItsStatements() {
        jdbc.execute("create table rows_together_probe (number integer, words varchar(20))");
        jdbc.execute("create table rows_together_statements (at timestamp with time zone)");
        jdbc.execute("""
                create function rows_together_count() returns trigger language plpgsql as $$
                begin
                    insert into rows_together_statements values (now());
                    return null;
                end $$""");
        jdbc.execute("create trigger rows_together_counted after insert on rows_together_probe"
                + " for each statement execute function rows_together_count()");
    }

    @AfterEach
    void noneLeft() {
        jdbc.execute("drop table rows_together_probe, rows_together_statements");
        jdbc.execute("drop function rows_together_count()");
    }

    @Test
    void sendsTheRowsOfABatchInFewStatements() {
        List<Object[]> rows = IntStream.range(0, 1000)
                .mapToObj(number -> new Object[] {number, "row " + number})
                .toList();

        jdbc.batchUpdate("insert into rows_together_probe (number, words) values (?, ?)", rows);

        assertThat(jdbc.queryForObject("select count(distinct number) from rows_together_probe", Integer.class))
                .isEqualTo(1000);
        // the driver sends powers of two: 512 + 256 + 128 + 64 + 32 + 8 (seen with pgjdbc 42.7.14)
        assertThat(jdbc.queryForObject("select count(*) from rows_together_statements", Integer.class))
                .isBetween(1, 10);
    }
}
