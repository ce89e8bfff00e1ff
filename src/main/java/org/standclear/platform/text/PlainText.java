package org.standclear.platform.text;

import java.text.Normalizer;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * Names, titles and reasons as they are kept: trimmed, in Unicode normalisation form C (UAX 15), without characters that
 * steer instead of being read. Markup is ordinary text here; pages escape it.
 */
public final class PlainText {

    private PlainText() {}

    /** Checks one line of text that has to be there and may have so many characters at most. */
    public static Checked check(@Nullable String raw, int max) {
        return checked(raw, max, false);
    }

    /** The same for text of several lines; line ends become single line feeds. */
    public static Checked checkLines(@Nullable String raw, int max) {
        return checked(raw == null ? null : raw.replace("\r\n", "\n").replace('\r', '\n'), max, true);
    }

    /**
     * One line of text that comes from a machine and not from somebody who could mend it, such as a file's name: what the
     * checks above refuse is replaced by spaces, and what is too long is cut between two characters.
     */
    public static String mended(@Nullable String raw, int max) {
        StringBuilder legible = new StringBuilder();
        (raw == null ? "" : raw).codePoints().forEach(c -> legible.appendCodePoint(steers(c) ? ' ' : c));
        String text = Normalizer.normalize(legible.toString().strip(), Normalizer.Form.NFC);
        if (text.length() <= max) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(max - 2)) ? max - 2 : max - 1;
        return text.substring(0, end) + "\u2026";
    }

    private static Checked checked(@Nullable String raw, int max, boolean lines) {
        String text = raw == null ? "" : Normalizer.normalize(raw.strip(), Normalizer.Form.NFC);
        if (text.isBlank()) {
            return new Refused("Write something here.");
        }
        if (text.length() > max) {
            return new Refused("Use " + max + " characters at most; this has " + text.length() + ".");
        }
        OptionalInt steering = text.codePoints()
                .filter(c -> steers(c) && !(lines && c == '\n'))
                .findFirst();
        if (steering.isPresent()) {
            int c = steering.getAsInt();
            return new Refused(String.format(
                    "Leave out character %d: U+%04X cannot be read on paper.",
                    text.indexOf(Character.toString(c)) + 1, c));
        }
        return new Fine(text);
    }

    /** Control characters, halves of characters, non-characters, and marks that turn the reading direction around. */
    private static boolean steers(int c) {
        int type = Character.getType(c);
        return type == Character.CONTROL
                || type == Character.SURROGATE
                || type == Character.PRIVATE_USE
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR
                || (c & 0xFFFE) == 0xFFFE
                || (c >= 0xFDD0 && c <= 0xFDEF)
                || (c >= 0xFFF9 && c <= 0xFFFD)
                || c == 0x200B
                || c == 0x200E
                || c == 0x200F
                || c == 0xFEFF
                || (c >= 0x202A && c <= 0x202E)
                || (c >= 0x2066 && c <= 0x2069);
    }

    /** What came of looking at a text. */
    public sealed interface Checked {}

    /** It can be kept, in this form. */
    public record Fine(String text) implements Checked {}

    /** It cannot; a sentence to show beside the field. */
    public record Refused(String says) implements Checked {}
}
