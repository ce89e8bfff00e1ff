package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/** H2 trigger that refuses to change or delete a row; migrations name it for tables that keep history. */
public final class RefuseChange implements Trigger {

    private String table = "?";

    @Override
    public void init(
            Connection connection, String schema, String trigger, String tableName, boolean before, int operations) {
        table = tableName;
    }

    @Override
    public void fire(Connection connection, Object @Nullable [] before, Object @Nullable [] after) throws SQLException {
        throw new SQLException("rows of " + table + " are never changed or deleted", "23514");
    }
}
