package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.h2.tools.TriggerAdapter;
import org.jspecify.annotations.Nullable;

/** H2 trigger that lets a row be lifted once, and refuses every other change of it. */
public final class LiftedOnly extends TriggerAdapter {

    private static final Set<String> BY_LIFTING = Set.of("lifted_by", "lifted_at", "lift_reason");

    @Override
    public void fire(Connection connection, @Nullable ResultSet before, @Nullable ResultSet after) throws SQLException {
        if (before == null
                || after == null
                || before.getObject("lifted_at") != null
                || after.getObject("lifted_at") == null
                || isOtherwiseChanged(before, after)) {
            throw new SQLException("rows of " + tableName + " are lifted once and otherwise never changed", "23514");
        }
    }

    private static boolean isOtherwiseChanged(ResultSet before, ResultSet after) throws SQLException {
        ResultSetMetaData columns = before.getMetaData();
        for (int i = 1; i <= columns.getColumnCount(); i++) {
            boolean lifting = BY_LIFTING.contains(columns.getColumnName(i).toLowerCase(Locale.ROOT));
            if (!lifting && !Objects.equals(before.getObject(i), after.getObject(i))) {
                return true;
            }
        }
        return false;
    }
}
