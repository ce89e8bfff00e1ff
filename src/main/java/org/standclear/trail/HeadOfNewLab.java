package org.standclear.trail;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/** Gives a new lab its head on H2, so that two first entries cannot race; public only because the database creates it. */
public final class HeadOfNewLab implements Trigger {

    private static final int ID = 0;

    @Override
    public void fire(Connection connection, Object @Nullable [] oldRow, Object @Nullable [] newRow)
            throws SQLException {
        if (newRow == null) {
            return;
        }
        try (PreparedStatement insert =
                connection.prepareStatement("insert into trail_heads (lab, hash) values (?, ?)")) {
            insert.setObject(1, newRow[ID]);
            insert.setString(2, EntryHash.NONE);
            insert.executeUpdate();
        }
    }
}
