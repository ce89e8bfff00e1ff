package org.standclear.signoff.records;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import org.h2.tools.TriggerAdapter;

/**
 * H2 trigger of the releases: what a release is about never changes, what happened to it is written once, and its e-stop
 * changes hands only while it has neither lapsed nor ended. PostgreSQL has the same in a function beside it.
 */
public final class ReleaseGuard extends TriggerAdapter {

    private static final List<String> FIXED = List.of(
            "id",
            "booking_id",
            "sheet_id",
            "cell_id",
            "cell_version",
            "revision_id",
            "program_sha256",
            "declaration_sha256",
            "tool",
            "payload_kg",
            "operator_id",
            "releaser_id",
            "code",
            "first_run",
            "pass_limit",
            "issued_at",
            "start_by",
            "window_end",
            "last_revision");

    private static final List<String> ONCE =
            List.of("used_at", "run_through_at", "lapsed_at", "lapse_rule", "because", "ended_at");

    @Override
    public void fire(Connection connection, ResultSet before, ResultSet after) throws SQLException {
        for (String column : FIXED) {
            refuseIf(changed(before, after, column), column + " never changes");
        }
        for (String column : ONCE) {
            refuseIf(before.getObject(column) != null && changed(before, after, column), column + " is written once");
        }
        boolean over = before.getObject("lapsed_at") != null || before.getObject("ended_at") != null;
        refuseIf(over && changed(before, after, "attendant_id"), "it is over, and nobody takes its e-stop");
        refuseIf(over && changed(before, after, "suspended_because"), "it is over, and not suspended any more");
        boolean revived = before.getObject("live") == null && after.getObject("live") != null;
        refuseIf(
                revived && (over || before.getObject("suspended_because") == null), "only a suspended one holds again");
    }

    private static boolean changed(ResultSet before, ResultSet after, String column) throws SQLException {
        return !Objects.equals(before.getObject(column), after.getObject(column));
    }

    private static void refuseIf(boolean wrong, String says) throws SQLException {
        if (wrong) {
            throw new SQLException("a release: " + says, "23514");
        }
    }
}
