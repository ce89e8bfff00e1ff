package org.standclear.booking;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger that refuses a claim on what is claimed already, as an exclusion constraint does on PostgreSQL. It locks
 * the subject before it looks, so that of two transactions the second looks only when the first has ended.
 */
public final class ClaimOverlap implements Trigger {

    /** What PostgreSQL answers too: exclusion violation. */
    static final String EXCLUSION = "23P01";

    private static final List<String> COLUMNS = List.of("ID", "SUBJECT", "STARTS_AT", "ENDS_AT");

    private int[] places = new int[0];

    @Override
    public void init(Connection connection, String schema, String trigger, String table, boolean before, int operations)
            throws SQLException {
        places = new int[COLUMNS.size()];
        try (ResultSet columns = connection.getMetaData().getColumns(null, schema, table, null)) {
            while (columns.next()) {
                int wanted = COLUMNS.indexOf(columns.getString("COLUMN_NAME"));
                if (wanted >= 0) {
                    places[wanted] = columns.getInt("ORDINAL_POSITION") - 1;
                }
            }
        }
    }

    @Override
    public void fire(Connection connection, Object @Nullable [] before, Object @Nullable [] after) throws SQLException {
        if (after == null) {
            return;
        }
        // any other level would look at the rows as they were when the transaction began
        if (connection.getTransactionIsolation() != Connection.TRANSACTION_READ_COMMITTED) {
            throw new SQLException("claims are made at isolation level read committed", EXCLUSION);
        }
        lock(connection, (UUID) after[places[1]]);
        refuseOverlap(connection, after);
    }

    private static void lock(Connection connection, UUID subject) throws SQLException {
        try (PreparedStatement lock = connection.prepareStatement(ClaimLocks.LOCK)) {
            lock.setInt(1, ClaimLocks.bucket(subject));
            lock.executeUpdate();
        }
    }

    /** What stands does not overlap, so that the first to end after this one starts is the one to look at. */
    private void refuseOverlap(Connection connection, @Nullable Object[] row) throws SQLException {
        try (PreparedStatement look = connection.prepareStatement("""
                select case when starts_at < ? then 1 else 0 end from booking_claims
                where subject = ? and ends_at > ? and id <> ?
                order by subject, ends_at fetch first row only""")) {
            look.setObject(1, row[places[3]]);
            look.setObject(2, row[places[1]]);
            look.setObject(3, row[places[2]]);
            look.setObject(4, row[places[0]]);
            try (ResultSet found = look.executeQuery()) {
                if (found.next() && found.getInt(1) > 0) {
                    throw new SQLException("booking_claims_no_overlap: the subject is claimed already", EXCLUSION);
                }
            }
        }
    }
}
