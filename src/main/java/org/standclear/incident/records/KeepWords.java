package org.standclear.incident.records;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.h2.tools.TriggerAdapter;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger: what was told of an incident stays as it was told, whoever works on it, until a disposal that the same
 * transaction has written down takes the words out.
 */
public final class KeepWords extends TriggerAdapter {

    private static final List<String> NEVER =
            List.of("happened_at", "reported_at", "reporter_part", "number", "cell_id");
    private static final List<String> UNTIL_DISPOSED = List.of("sentence", "reporter", "receipt_sha256");

    private static final String WRITTEN_DOWN = """
            select count(*) from retention_items i where i.record_id = ? and i.kind = 'INCIDENTS'
            and i.state = 'DONE' and i.transaction_mark = transaction_id()""";

    @Override
    public void fire(Connection connection, @Nullable ResultSet before, @Nullable ResultSet after) throws SQLException {
        if (before == null) {
            return;
        }
        if (after == null) {
            keep(isDisposed(connection, before.getObject("incident_id", UUID.class)));
        } else if (isIncident(before)) {
            keep(!differ(NEVER, before, after));
            keep(!differ(UNTIL_DISPOSED, before, after) || isDisposed(connection, before.getObject("id", UUID.class)));
        } else {
            keep(false);
        }
    }

    /** By its columns: H2 copies a table when one is added, and the trigger then knows the copy's name. */
    private static boolean isIncident(ResultSet row) throws SQLException {
        ResultSetMetaData columns = row.getMetaData();
        for (int i = 1; i <= columns.getColumnCount(); i++) {
            if (columns.getColumnName(i).equalsIgnoreCase("incident_id")) {
                return false;
            }
        }
        return true;
    }

    private static boolean differ(List<String> columns, ResultSet before, ResultSet after) throws SQLException {
        for (String column : columns) {
            if (!Objects.equals(before.getObject(column), after.getObject(column))) {
                return true;
            }
        }
        return false;
    }

    private static boolean isDisposed(Connection connection, UUID incident) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(WRITTEN_DOWN)) {
            query.setObject(1, incident);
            try (ResultSet found = query.executeQuery()) {
                return found.next() && found.getInt(1) > 0;
            }
        }
    }

    private static void keep(boolean allowed) throws SQLException {
        if (!allowed) {
            throw new SQLException("the words of a report are never changed", "23514");
        }
    }
}
