package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger that refuses to delete a step of an incident, and to change it unless the same transaction has written down
 * that the incident's story is disposed of; its id, incident, kind and time, the columns around its words, stay.
 */
public final class RewordedOnly implements Trigger {

    private static final int INCIDENT = 1;
    private static final int TIME = 6;

    @Override
    public void fire(Connection connection, Object @Nullable [] before, Object @Nullable [] after) throws SQLException {
        boolean staysItself = before != null
                && after != null
                && before[0].equals(after[0])
                && before[INCIDENT].equals(after[INCIDENT])
                && before[2].equals(after[2])
                && before[TIME].equals(after[TIME]);
        if (before == null || !staysItself || !DisposedOnly.isWrittenDown(connection, before[INCIDENT], "INCIDENTS")) {
            throw new SQLException(
                    "rows of incident_steps are never changed but by a disposal that is written down, and never deleted",
                    "23514");
        }
    }
}
