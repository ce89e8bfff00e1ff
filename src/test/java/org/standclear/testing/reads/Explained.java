package org.standclear.testing.reads;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Set;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What an engine says that a query read when it carried it out. */
final class Explained {

    /** H2 says it beside each table and view of the plan. */
    private static final Pattern SCANNED = Pattern.compile("scanCount: (\\d+)");

    /** They read what another node of the plan has read. */
    private static final Set<String> NO_TABLES =
            Set.of("Subquery Scan", "CTE Scan", "Bitmap Index Scan", "Function Scan", "Values Scan", "WorkTable Scan");

    private Explained() {}

    /** Sets the query's values. */
    @FunctionalInterface
    interface Values {

        void set(PreparedStatement statement) throws SQLException;
    }

    /** Rows that were read in tables or their indexes, those that a condition then left out among them. */
    static long rows(Connection connection, String sql, Values values) throws SQLException {
        boolean h2 = connection.getMetaData().getDatabaseProductName().equals("H2");
        String explain = h2 ? "explain analyze " : "explain (analyze, format json) ";
        try (PreparedStatement statement = connection.prepareStatement(explain + sql)) {
            values.set(statement);
            try (ResultSet plan = statement.executeQuery()) {
                plan.next();
                String text = plan.getString(1);
                return h2
                        ? scanned(text)
                        : read(JsonMapper.shared().readTree(text).get(0).get("Plan"));
            }
        }
    }

    private static long scanned(String plan) {
        return SCANNED.matcher(plan)
                .results()
                .mapToLong(count -> Long.parseLong(count.group(1)))
                .sum();
    }

    private static long read(JsonNode node) {
        long rows = 0;
        String type = node.path("Node Type").asString("");
        if (type.contains("Scan") && !NO_TABLES.contains(type)) {
            double each = node.path("Actual Rows").asDouble(0)
                    + node.path("Rows Removed by Filter").asDouble(0)
                    + node.path("Rows Removed by Index Recheck").asDouble(0);
            rows += Math.round(each * node.path("Actual Loops").asDouble(0));
        }
        for (JsonNode below : node.path("Plans")) {
            rows += read(below);
        }
        return rows;
    }
}
