package org.standclear.platform.lab;

import java.util.List;

/**
 * Says for each of a feature's tables of things with an id whose they are, so that a request for a thing of another lab can
 * be told from one's own before any page looks at it. A test sees to it that no table is forgotten.
 */
public interface LabThings {

    /** The feature's tables of things. */
    List<Kind> kinds();

    /**
     * A table whose rows belong to labs.
     *
     * @param table its rows have an {@code id}; called {@code t} in the rest
     * @param join how to come from {@code t} to what knows the lab; empty when the row knows it itself
     * @param lab the column of the lab's id
     * @param forGood whether it never changes whose they are
     */
    record Kind(String table, String join, String lab, boolean forGood) {

        /** Rows that belong to a lab for good. */
        public Kind(String table, String join, String lab) {
            this(table, join, lab, true);
        }

        /** Rows that know their lab themselves. */
        public static Kind own(String table) {
            return new Kind(table, "", "t.lab_id");
        }

        /** Rows that belong to something that knows its lab. */
        public static Kind of(String table, String column, String owner) {
            return new Kind(table, "join " + owner + " o on o.id = t." + column, "o.lab_id");
        }

        /** Rows that belong to something that belongs to something that knows its lab. */
        public static Kind of(String table, String column, String middle, String middleColumn, String owner) {
            return new Kind(
                    table,
                    "join " + middle + " m on m.id = t." + column + " join " + owner + " o on o.id = m." + middleColumn,
                    "o.lab_id");
        }

        /** The ids among {@code :ids} that the table has, each with its lab. */
        public String sql() {
            return "select t.id, " + lab + " as lab_id from " + table + " t " + join + " where t.id in (:ids)";
        }
    }
}
