package org.standclear.simulation;

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
            "signoff_first_answers",
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
            "signoff_paper_cards",
            "bookings",
            "booking_waits",
            "booking_offers",
            "booking_bulk_moves",
            "booking_closures",
            "messages",
            "run_credits");

    private final Map<String, Long> counts = new HashMap<>();

    List<String> faults(Look look) throws SQLException {
        List<String> faults = new ArrayList<>();
        for (String table : TABLES) {
            if (!look.changed(table)) {
                continue;
            }
            long now = Rows.number(
                    Rows.of(look.connection(), "select count(*) as n from " + table)
                            .get(0),
                    "n");
            Long before = counts.put(table, now);
            if (before != null && now < before) {
                faults.add(table + " has lost " + (before - now) + " rows");
            }
        }
        return faults;
    }
}
