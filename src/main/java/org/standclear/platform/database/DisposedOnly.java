package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Locale;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger that refuses to change a row, and to delete it unless the same transaction has written down that the row is
 * disposed of; the first column of its tables is their id, and the end of their name is the kind of record.
 */
public final class DisposedOnly implements Trigger {

    private static final String WRITTEN_DOWN = """
            select count(*) from retention_items i
            where i.record_id = ? and i.kind = ? and i.state = 'DONE' and i.transaction_mark = transaction_id()""";

    private String table = "?";

    @Override
    public void init(
            Connection connection, String schema, String trigger, String tableName, boolean before, int operations) {
        table = tableName;
    }

    @Override
    public void fire(Connection connection, Object @Nullable [] before, Object @Nullable [] after) throws SQLException {
        if (before == null || after != null || !isWrittenDown(connection, before[0], kind())) {
            throw new SQLException(
                    "rows of " + table + " are never changed, and deleted only by a disposal that is written down",
                    "23514");
        }
    }

    private String kind() {
        return table.toUpperCase(Locale.ROOT).replaceFirst("^INCIDENT_", "");
    }

    /** Whether this transaction has written down that the record is disposed of. */
    static boolean isWrittenDown(Connection connection, Object id, String kind) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(WRITTEN_DOWN)) {
            query.setObject(1, id);
            query.setString(2, kind);
            try (ResultSet found = query.executeQuery()) {
                return found.next() && found.getInt(1) > 0;
            }
        }
    }
}
