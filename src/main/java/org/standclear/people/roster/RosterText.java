package org.standclear.people.roster;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** The text of a roster file; anything but UTF-8 is refused with the place, since guessing would misspell names. */
final class RosterText {

    private RosterText() {}

    /** The text, without a byte order mark. */
    static String of(byte[] file) {
        if (file.length >= 2
                && (at(file, 0) == 0xFF && at(file, 1) == 0xFE || at(file, 0) == 0xFE && at(file, 1) == 0xFF)) {
            throw new RosterException("The file is UTF-16. Save it as \"CSV UTF-8\" and send it again.");
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer bytes = ByteBuffer.wrap(file);
        CharBuffer text = CharBuffer.allocate(file.length + 1);
        CoderResult result = decoder.decode(bytes, text, true);
        if (result.isError()) {
            text.flip();
            long line = 1 + text.chars().filter(c -> c == '\n').count();
            throw new RosterException(String.format(
                    "Line %d is not UTF-8: byte %02X cannot be read as a letter. Save the file as \"CSV UTF-8\" and send it again.",
                    line, at(file, bytes.position())));
        }
        text.flip();
        String whole = text.toString();
        if (whole.indexOf('\0') >= 0) {
            throw new RosterException(
                    "The file is UTF-16 without a mark, or no text. Save it as \"CSV UTF-8\" and send it again.");
        }
        return whole.startsWith("\uFEFF") ? whole.substring(1) : whole;
    }

    private static int at(byte[] file, int index) {
        return file[index] & 0xFF;
    }
}
