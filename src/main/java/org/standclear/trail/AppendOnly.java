package org.standclear.trail;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/** Makes H2 refuse every change of a stored entry; public only because the database creates it by name. */
public final class AppendOnly implements Trigger {

    @Override
    public void fire(Connection connection, Object @Nullable [] oldRow, Object @Nullable [] newRow)
            throws SQLException {
        throw new SQLException("the record is append-only: changing or deleting an entry is refused", "23000");
    }
}
