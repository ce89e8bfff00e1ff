package org.standclear.simulation;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Rows of a query as maps from column to value, since the auditor has no types of the application. */
final class Rows {

    private Rows() {}

    static List<Map<String, Object>> of(Connection connection, String sql, Object... values) throws SQLException {
        List<Map<String, Object>> rows = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                Object value = values[i];
                statement.setObject(i + 1, value instanceof Instant at ? at.atOffset(ZoneOffset.UTC) : value);
            }
            try (ResultSet found = statement.executeQuery()) {
                List<String> columns = new ArrayList<>();
                while (found.next()) {
                    if (columns.isEmpty()) {
                        columns = columns(found.getMetaData());
                    }
                    Map<String, Object> row = new LinkedHashMap<>();
                    for (int i = 0; i < columns.size(); i++) {
                        row.put(columns.get(i), found.getObject(i + 1));
                    }
                    rows.add(row);
                }
            }
        }
        return rows;
    }

    private static List<String> columns(ResultSetMetaData of) throws SQLException {
        List<String> columns = new ArrayList<>();
        for (int i = 1; i <= of.getColumnCount(); i++) {
            columns.add(of.getColumnLabel(i).toLowerCase(java.util.Locale.ROOT));
        }
        return columns;
    }

    /** Each row of a query that should find none, as a fault of that name. */
    static List<String> faults(Connection connection, String name, String sql, Object... values) throws SQLException {
        return of(connection, sql, values).stream().map(row -> name + " " + row).toList();
    }

    static long number(Map<String, Object> row, String column) {
        return ((Number) Objects.requireNonNull(row.get(column), column)).longValue();
    }

    static String text(Map<String, Object> row, String column) {
        return Objects.toString(row.get(column), "");
    }
}
