package org.standclear.incident.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import org.h2.tools.TriggerAdapter;
import org.jspecify.annotations.Nullable;

/** H2 trigger: what was reported, when and by whom stays as it was told, whoever works on the incident. */
public final class KeepReportersWords extends TriggerAdapter {

    private static final List<String> KEPT = List.of(
            "sentence",
            "happened_at",
            "reported_at",
            "reporter",
            "reporter_part",
            "receipt_sha256",
            "number",
            "cell_id");

    @Override
    public void fire(java.sql.Connection connection, @Nullable ResultSet before, @Nullable ResultSet after)
            throws SQLException {
        for (String column : KEPT) {
            if (before != null && after != null && !Objects.equals(before.getObject(column), after.getObject(column))) {
                throw new SQLException("the words of a report are never changed", "23514");
            }
        }
    }
}
