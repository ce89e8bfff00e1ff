package org.standclear.core.text;

/**
 * What is wrong with a text somebody brought, and what to write instead.
 *
 * @param line counted from 1; 0 when it concerns the text as a whole
 * @param says one sentence for a person, without the line
 */
public record BadInput(int line, String says) {

    /** The sentence with its line. */
    public String sentence() {
        return line > 0 ? "line " + line + ": " + says : says;
    }
}
