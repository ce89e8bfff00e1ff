package org.standclear.trail;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/** Makes H2 refuse to move a lab's head back or to delete it; public only because the database creates it by name. */
public final class ForwardOnly implements Trigger {

    private static final int LAB = 0;
    private static final int SEQUENCE = 1;

    @Override
    public void fire(Connection connection, Object @Nullable [] oldRow, Object @Nullable [] newRow)
            throws SQLException {
        if (oldRow == null
                || newRow == null
                || !oldRow[LAB].equals(newRow[LAB])
                || sequence(newRow) <= sequence(oldRow)) {
            throw new SQLException("the record is append-only: its head only moves forward", "23000");
        }
    }

    private static long sequence(@Nullable Object[] row) {
        return row[SEQUENCE] instanceof Number number ? number.longValue() : 0;
    }
}
