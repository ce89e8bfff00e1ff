package org.standclear.report.records;

import java.time.Instant;
import java.time.LocalDate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.time.SqlTime;

/** The lab and the days of a report, as instants and as dates of the lab. */
record Days(LabId lab, Instant from, Instant until, LocalDate first, LocalDate last) {

    /** A query over these days; it names the lab and may name any of the four. */
    JdbcClient.StatementSpec ask(JdbcClient jdbc, String sql) {
        if (!sql.contains(":lab")) {
            throw new IllegalArgumentException("a report that is not one lab's: " + sql);
        }
        JdbcClient.StatementSpec asked = jdbc.sql(sql).param("lab", lab.value());
        asked = sql.contains(":from") ? asked.param("from", SqlTime.toSql(from)) : asked;
        asked = sql.contains(":until") ? asked.param("until", SqlTime.toSql(until)) : asked;
        asked = sql.contains(":first") ? asked.param("first", first) : asked;
        return sql.contains(":last") ? asked.param("last", last) : asked;
    }

    int count(JdbcClient jdbc, String sql) {
        return ask(jdbc, sql).query(Integer.class).single();
    }
}
