package org.standclear.core.text;

/**
 * A line of an uploaded file as it may be shown to somebody who judges by reading it. Characters that show nothing, turn the
 * order of others, or look like a plain space are written by their code point, as in {@code <U+202E>}; nothing is left out.
 * Which characters these are is the Unicode general category: Cc, Cf, Cn, Zl, Zp, and Zs but for the space itself (Unicode
 * Standard, table 4-4); the danger of the ones that turn the order is described in Unicode Technical Report 36.
 */
public final class VisibleLine {

    private static final int LONGEST_GAP = 40;

    private VisibleLine() {}

    /** The line with everything in it to be seen; a tab stays, for it moves what follows. */
    public static String of(String line) {
        StringBuilder seen = new StringBuilder(line.length());
        line.codePoints().forEach(one -> {
            if (hides(one)) {
                seen.append(String.format("<U+%04X>", one));
            } else {
                seen.appendCodePoint(one);
            }
        });
        return seen.toString();
    }

    /**
     * The same as {@link #of}, with a long run of spaces or tabs written by its length, so that nothing stands beyond the edge of a box
     * after an empty stretch.
     */
    public static String packed(String line) {
        StringBuilder packed = new StringBuilder(line.length());
        String seen = of(line);
        int from = 0;
        while (from < seen.length()) {
            int to = from;
            while (to < seen.length() && isBlank(seen.charAt(to))) {
                to++;
            }
            if (to - from > LONGEST_GAP) {
                packed.append("<").append(to - from).append(" blanks>");
            } else {
                packed.append(seen, from, to);
            }
            if (to < seen.length()) {
                packed.append(seen.charAt(to));
            }
            from = to + 1;
        }
        return packed.toString();
    }

    private static boolean isBlank(char one) {
        return one == ' ' || one == '\t';
    }

    private static boolean hides(int one) {
        return switch (Character.getType(one)) {
            case Character.CONTROL -> one != '\t';
            case Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR, Character.UNASSIGNED ->
                true;
            case Character.SPACE_SEPARATOR -> one != ' ';
            default -> false;
        };
    }
}
