package org.standclear.report.web;

import java.util.List;

/**
 * One part of everything about a run: a table with its heads.
 *
 * @param none what is said when there is no row
 * @param href where each row leads, in the order of the rows; empty when none leads anywhere
 */
record RunPart(String title, String none, List<String> heads, List<List<String>> rows, List<String> href) {

    RunPart {
        heads = List.copyOf(heads);
        rows = List.copyOf(rows);
        href = List.copyOf(href);
    }

    static RunPart of(String title, String none, List<String> heads, List<List<String>> rows) {
        return new RunPart(title, none, heads, rows, List.of());
    }

    /** Where the row leads; empty when nowhere. */
    public String leads(int row) {
        return row < href.size() ? href.get(row) : "";
    }

    /** For the address of the part within its page. */
    public String key() {
        return title.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z]+", "-");
    }
}
