package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.h2.tools.TriggerAdapter;
import org.jspecify.annotations.Nullable;

/**
 * H2 trigger that refuses to delete a row, and to change it but for its words, once, while the same transaction has written
 * down that they are disposed of; a column {@code words_out_at} says when they went.
 */
public abstract class WordsOutOnly extends TriggerAdapter {

    private static final String WHEN = "words_out_at";

    private final String kind;
    private final String record;
    private final Set<String> words;
    private final Set<String> later;

    /**
     * For one table.
     *
     * @param kind the kind of record that has to be written down
     * @param record the column with the id of that record
     * @param words columns whose words may go
     * @param later columns that may be filled in, together and once, after the row was written
     */
    protected WordsOutOnly(String kind, String record, Set<String> words, Set<String> later) {
        this.kind = kind;
        this.record = record;
        this.words = with(words, WHEN);
        this.later = Set.copyOf(later);
    }

    @Override
    public void fire(Connection connection, @Nullable ResultSet before, @Nullable ResultSet after) throws SQLException {
        if (before == null) {
            return;
        }
        if (after == null || !(fillsIn(before, after) || takesOut(connection, before, after))) {
            throw new SQLException(
                    "such rows are never changed but by a disposal that is written down, and never deleted", "23514");
        }
    }

    private boolean fillsIn(ResultSet before, ResultSet after) throws SQLException {
        for (String column : later) {
            if (before.getObject(column) != null) {
                return false;
            }
        }
        return !later.isEmpty() && isTheSameBut(later, before, after);
    }

    private boolean takesOut(Connection connection, ResultSet before, ResultSet after) throws SQLException {
        return before.getObject(WHEN) == null
                && after.getObject(WHEN) != null
                && isTheSameBut(words, before, after)
                && DisposedOnly.isWrittenDown(connection, before.getObject(record), kind);
    }

    private static Set<String> with(Set<String> columns, String one) {
        Set<String> all = new HashSet<>(columns);
        all.add(one);
        return Set.copyOf(all);
    }

    private static boolean isTheSameBut(Set<String> columns, ResultSet before, ResultSet after) throws SQLException {
        for (int i = 1; i <= before.getMetaData().getColumnCount(); i++) {
            String name = before.getMetaData().getColumnName(i).toLowerCase(Locale.ROOT);
            boolean mayChange = columns.contains(name);
            if (!mayChange && !Objects.equals(before.getObject(i), after.getObject(i))) {
                return false;
            }
        }
        return true;
    }
}
