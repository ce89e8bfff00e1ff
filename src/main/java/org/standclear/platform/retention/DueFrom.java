package org.standclear.platform.retention;

/**
 * Where a room's records of one kind stand, so that they can be asked for by their age where they are stored.
 *
 * @param id the column of the id, with its table
 * @param clock the column that the clock starts with; an index of the table begins with what the condition names, then with
 *     it, then with the id
 * @param columns {@code person} (may be null), {@code kept_back} (may be empty) and {@code said}, which one it is as people
 *     know it
 * @param from the tables, with at least one condition and no grouping
 */
public record DueFrom(String id, String clock, String columns, String from) {

    public DueFrom {
        if (!from.contains(" where ")) {
            throw new IllegalArgumentException("no condition to add another to: " + from);
        }
    }

    String select() {
        return "select " + id + " as id, " + clock + " as clock_start, " + columns + " from " + from;
    }
}
