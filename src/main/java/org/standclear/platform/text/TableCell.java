package org.standclear.platform.text;

import org.jspecify.annotations.Nullable;

/** Text for a cell of a table program, which must not take it for a formula (OWASP, CSV injection). */
public final class TableCell {

    /** With the full-width forms, which some programs take for the same signs. */
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private TableCell() {}

    /** The text, with an apostrophe before it where it begins like a formula; empty for null. */
    public static String plain(@Nullable String text) {
        String cell = text == null ? "" : text;
        return beginsLikeFormula(cell) ? "'" + cell : cell;
    }

    /** Whether a table program would take it for a formula. */
    public static boolean beginsLikeFormula(String cell) {
        return !cell.isEmpty() && FORMULA_STARTS.indexOf(cell.charAt(0)) >= 0;
    }
}
