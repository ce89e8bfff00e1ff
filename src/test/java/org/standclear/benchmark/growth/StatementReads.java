package org.standclear.benchmark.growth;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.standclear.testing.TestDatabase;

/** What each statement read on PostgreSQL, in blocks of 8 KiB: a count that does not depend on how busy the machine is. */
final class StatementReads {

    private final JdbcClient jdbc;

    StatementReads(TestDatabase database) {
        jdbc = JdbcClient.create(new DriverManagerDataSource(database.url(), database.user(), database.password()));
        jdbc.sql("create extension if not exists pg_stat_statements").update();
    }

    /** Counts anew from now on. */
    void reset() {
        jdbc.sql("select pg_stat_statements_reset()").query((row, number) -> "").list();
    }

    /** A statement that was prepared before the counting began keeps its values in its text, another has numbers instead. */
    private static String withoutValues(String statement) {
        return statement.replaceAll("'[^']*'|\\$\\d+|\\b\\d+\\b", "?").replaceAll("\\s+", " ");
    }

    /** Blocks by statement since then, most first. */
    Map<String, Long> blocks() {
        Map<String, Long> blocks = new LinkedHashMap<>();
        jdbc.sql("""
                select query, cast(sum(shared_blks_hit + shared_blks_read) as bigint) as blocks from pg_stat_statements
                where query not like '%pg_stat_statements%'
                    and dbid = (select oid from pg_database where datname = current_database())
                group by query order by 2 desc""")
                .query((row, number) ->
                        blocks.merge(withoutValues(row.getString("query")), row.getLong("blocks"), Long::sum))
                .list();
        return blocks;
    }
}
