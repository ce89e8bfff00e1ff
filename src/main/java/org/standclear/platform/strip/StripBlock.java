package org.standclear.platform.strip;

import org.jspecify.annotations.Nullable;

/**
 * One stretch on a strip: a slot, a booking, a closure.
 *
 * @param x its left edge in percent of the strip's width
 * @param width its width in percent of the strip's width
 * @param time its times in words, for the table beside the strip
 * @param first the first line: the operator, or what the stretch is
 * @param second the second line: the attendant, or what else; empty when there is none
 * @param state the state's key, as in the list of states
 * @param words the state in words
 * @param href where a tap on it goes, or null
 * @param mine whether it is the reader's own
 */
public record StripBlock(
        String x,
        String width,
        String time,
        String first,
        String second,
        String state,
        String words,
        @Nullable String href,
        boolean mine) {

    /** The least width at which a strip is drawn, in pixels, and what a letter and the margins take of it. */
    private static final double STRIP = 1152;

    private static final double LETTER = 6.8;
    private static final double MARGINS = 10;

    /** The first line as far as the block has room: a narrow one shows the given name, or its beginning. */
    public String firstShown() {
        return shown(first);
    }

    /** The second line as far as the block has room. */
    public String secondShown() {
        return shown(second);
    }

    /** Everything about the block in one sentence, for those who listen. */
    public String says() {
        String who = second.isEmpty() ? first : first + ", " + second;
        return time + ": " + (who.isEmpty() ? words : who + ", " + words);
    }

    private String shown(String line) {
        double share = Double.parseDouble(width.substring(0, width.length() - 1)) / 100;
        int room = Math.max(2, (int) ((share * STRIP - MARGINS) / LETTER));
        int space = line.indexOf(' ');
        if (line.length() <= room) {
            return line;
        }
        String given = space < 0 ? line : line.substring(0, space);
        return given.length() <= room ? given : given.substring(0, room - 1) + "\u2026";
    }
}
