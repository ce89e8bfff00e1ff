package org.standclear.signoff.records;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.h2.tools.TriggerAdapter;

/**
 * H2 trigger of the releases: what a release is about never changes, what happened to it is written once, and its e-stop
 * changes hands only while it has neither lapsed nor ended. Why it lapsed may go at the end of its time, in the transaction
 * that says so. PostgreSQL has the same in a function beside it.
 */
public final class ReleaseGuard extends TriggerAdapter {

    /** What may change; every other column, a new one too, never does. */
    private static final Set<String> MAY_CHANGE = Set.of("live", "attendant_id", "suspended_because", "words_out_at");

    private static final List<String> ONCE =
            List.of("used_at", "run_through_at", "lapsed_at", "lapse_rule", "because", "ended_at");

    /** What a disposal takes out, and when it did. */
    private static final Set<String> WORDS = Set.of("because", "suspended_because", "words_out_at");

    private static final String DISPOSED_OF = """
            select count(*) from retention_items i join signoff_lapses l on l.id = i.record_id
            where l.release_id = ? and i.kind = 'LAPSES' and i.state = 'DONE' and i.transaction_mark = transaction_id()""";

    @Override
    public void fire(Connection connection, ResultSet before, ResultSet after) throws SQLException {
        if (changed(before, after, "words_out_at")) {
            refuseIf(!takesWordsOut(connection, before, after), "its words go only by a disposal that is written down");
            return;
        }
        for (String column : columns(before)) {
            boolean fixed = !MAY_CHANGE.contains(column) && !ONCE.contains(column);
            refuseIf(fixed && changed(before, after, column), column + " never changes");
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

    private static boolean takesWordsOut(Connection connection, ResultSet before, ResultSet after) throws SQLException {
        if (before.getObject("words_out_at") != null) {
            return false;
        }
        for (String column : columns(before)) {
            if (!WORDS.contains(column) && changed(before, after, column)) {
                return false;
            }
        }
        try (PreparedStatement query = connection.prepareStatement(DISPOSED_OF)) {
            query.setObject(1, before.getObject("id"));
            try (ResultSet found = query.executeQuery()) {
                return found.next() && found.getInt(1) > 0;
            }
        }
    }

    private static List<String> columns(ResultSet row) throws SQLException {
        List<String> columns = new ArrayList<>();
        for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
            columns.add(row.getMetaData().getColumnName(i).toLowerCase(Locale.ROOT));
        }
        return columns;
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
