package org.standclear.trail.web;

/** Text for a cell of a table program, which must not take it for a formula. */
final class CsvCell {

    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private CsvCell() {}

    /** The text, with an apostrophe before it where it begins like a formula. */
    static String plain(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
