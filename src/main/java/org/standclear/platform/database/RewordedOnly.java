package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import org.h2.api.Trigger;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger that refuses to delete a step of an incident, and to change it unless the same transaction has written down
 * that the incident's story, or what the step tells of, is disposed of; its id, incident, kind and time, the columns around
 * its words, stay.
 */
public final class RewordedOnly implements Trigger {

    private static final int INCIDENT = 1;
    private static final int KIND = 2;
    private static final int TIME = 6;

    /** Steps that tell what has a time of its own. */
    private static final Map<String, String> TOLD =
            Map.of("CLOSED", "CLOSINGS", "RESTART_APPROVED", "RESTARTS", "RISK_ASSESSMENT", "RISK_REVIEWS");

    @Override
    public void fire(Connection connection, Object @Nullable [] before, Object @Nullable [] after) throws SQLException {
        boolean staysItself = before != null
                && after != null
                && before[0].equals(after[0])
                && before[INCIDENT].equals(after[INCIDENT])
                && before[KIND].equals(after[KIND])
                && before[TIME].equals(after[TIME]);
        if (before == null || !staysItself || !mayGo(connection, before)) {
            throw new SQLException(
                    "rows of incident_steps are never changed but by a disposal that is written down, and never deleted",
                    "23514");
        }
    }

    private static boolean mayGo(Connection connection, Object[] step) throws SQLException {
        String own = TOLD.get(String.valueOf(step[KIND]));
        return DisposedOnly.isWrittenDown(connection, step[INCIDENT], "INCIDENTS")
                || (own != null && DisposedOnly.isWrittenDown(connection, step[INCIDENT], own));
    }
}
