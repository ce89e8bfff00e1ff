package org.standclear.simulation;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What was signed or logged is never lost: these tables only grow. */
final class Growth {

    static final List<String> TABLES = List.of(
            "trail_entries",
            "signoff_signatures",
            "signoff_answers",
            "signoff_releases",
            "signoff_lapses",
            "signoff_disagreements",
            "run_events",
            "cell_stops",
            "cell_tags",
            "cell_day_tests",
            "program_revisions",
            "incidents",
            "incident_steps",
            "incident_forms",
            "incident_statements",
            "incident_restarts",
            "cell_duties_done",
            "signoff_paper_cards");

    private final Connection connection;
    private final Map<String, Long> counts = new HashMap<>();

    Growth(Connection connection) {
        this.connection = connection;
    }

    List<String> faults() throws SQLException {
        List<String> faults = new ArrayList<>();
        for (String table : TABLES) {
            long now = Rows.number(
                    Rows.of(connection, "select count(*) as n from " + table).get(0), "n");
            Long before = counts.put(table, now);
            if (before != null && now < before) {
                faults.add(table + " has lost " + (before - now) + " rows");
            }
        }
        return faults;
    }
}
