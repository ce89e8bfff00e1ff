package org.standclear.core.text;

import java.nio.charset.StandardCharsets;

/** From bytes to characters, strictly: the right size, UTF-8 and nothing but text. */
public final class InputText {

    /** The largest program file. */
    public static final int PROGRAM_BYTES = 8 * 1024 * 1024;

    /** The largest file of any other kind. */
    public static final int OTHER_BYTES = 1024 * 1024;

    /** The longest line, in characters: readers look ahead in a line, so that one endless line would keep them for minutes. */
    public static final int LONGEST_LINE = 10_000;

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private InputText() {}

    /** The text of a program file. */
    public static Reading<String> ofProgram(byte[] bytes) {
        return of(bytes, PROGRAM_BYTES);
    }

    /** The text of a cell file, a declaration or any other file that is not a program. */
    public static Reading<String> ofOther(byte[] bytes) {
        return of(bytes, OTHER_BYTES);
    }

    /** The text of a program in lines: of the right size, without a leading byte-order mark, nothing but text. */
    public static String plain(String text) {
        requireSize(text.length(), PROGRAM_BYTES);
        return withoutControls(text);
    }

    private static Reading<String> of(byte[] bytes, int largest) {
        return Reading.of(() -> {
            requireSize(bytes.length, largest);
            return decoded(bytes);
        });
    }

    /** Refuses a size over the limit, in bytes. */
    static void requireSize(long size, int largest) {
        if (size > largest) {
            throw new BadInputException(
                    0, "the file has " + size + " bytes; " + largest / 1024 / 1024 + " MiB is the most that is read");
        }
    }

    private static String decoded(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        byte[] again = text.getBytes(StandardCharsets.UTF_8);
        int same = 0;
        while (same < bytes.length && same < again.length && bytes[same] == again[same]) {
            same++;
        }
        if (same < bytes.length || again.length != bytes.length) {
            throw new BadInputException(
                    lineOf(bytes, same), "the file is not UTF-8 text; save it with the encoding UTF-8");
        }
        return text;
    }

    private static int lineOf(byte[] bytes, int position) {
        int line = 1;
        for (int i = 0; i < position && i < bytes.length; i++) {
            if (bytes[i] == '\n') {
                line++;
            }
        }
        return line;
    }

    /** The text without a leading byte-order mark; refuses control characters and halves of characters. */
    static String withoutControls(String text) {
        int start = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
        int line = 1;
        int lineStart = start;
        for (int i = start; i < text.length(); i++) {
            char c = text.charAt(i);
            if (i - lineStart >= LONGEST_LINE && c != '\n' && c != '\r') {
                throw new BadInputException(
                        line, "the line is longer than " + LONGEST_LINE + " characters; break it into shorter ones");
            }
            if (c == '\n' || c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n')) {
                line++;
                lineStart = i + 1;
            } else if (isPairAt(text, i)) {
                i++;
            } else if (!isText(c)) {
                throw new BadInputException(
                        line, "the character U+" + String.format("%04X", (int) c) + " is not text; take it out");
            }
        }
        return text.substring(start);
    }

    private static boolean isPairAt(String text, int i) {
        return Character.isHighSurrogate(text.charAt(i))
                && i + 1 < text.length()
                && Character.isLowSurrogate(text.charAt(i + 1));
    }

    private static boolean isText(char c) {
        return c == '\t'
                || c == '\r'
                || !Character.isISOControl(c)
                        && !Character.isSurrogate(c)
                        && c != BYTE_ORDER_MARK
                        && c != '\uFFFE'
                        && c != '\uFFFF';
    }
}
