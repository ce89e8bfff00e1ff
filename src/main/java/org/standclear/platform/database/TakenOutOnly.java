package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger that refuses to delete a program's content, and to change it unless the same transaction has written down
 * that it is disposed of; id and SHA-256, its first two columns, stay in any case.
 */
public final class TakenOutOnly implements Trigger {

    @Override
    public void fire(Connection connection, Object @Nullable [] before, Object @Nullable [] after) throws SQLException {
        boolean staysItself = before != null
                && after != null
                && before[0].equals(after[0])
                && before[1].equals(after[1])
                && before[before.length - 1] == null
                && after[after.length - 1] != null;
        if (before == null || !staysItself || !DisposedOnly.isWrittenDown(connection, before[0], "PROGRAMS")) {
            throw new SQLException(
                    "rows of program_contents are never changed but by a disposal that is written down, and never deleted",
                    "23514");
        }
    }
}
