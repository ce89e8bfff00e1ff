package org.standclear.report.web;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One part of everything about a run: a table with its heads.
 *
 * @param none what is said when there is no row
 * @param href where each row leads, in the order of the rows; empty when none leads anywhere
 */
record RunPart(String title, String none, List<String> heads, List<List<String>> rows, List<String> href) {

    private static final Pattern FINGERPRINT = Pattern.compile("[0-9a-f]{64}( [0-9a-f]{64})?");

    /** A date with its time has 21 letters, the longest name of a rule 22. */
    private static final int LONGEST_WORD = 24;

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

    /** How a value is set: a fingerprint may break anywhere, a time or a word stays on one line; null for the rest. */
    public @Nullable String setAs(String value) {
        if (FINGERPRINT.matcher(value).matches()) {
            return "mono";
        }
        return value.length() <= LONGEST_WORD ? "nobr" : null;
    }

    /** For the address of the part within its page. */
    public String key() {
        return title.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
    }
}
