package org.standclear.core.check;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.blocks.BlockReader;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.program.phrases.PhrasebookReader;

/**
 * Chooses the reader of a program by its content: the field {@code motion-sheet} makes it a motion sheet; else a first
 * line that the phrasebook, if there is one, understands makes it a program of that language; else a first line of a
 * letter and a number makes it blocks of ISO 6983; what is left goes to the phrasebook, or to the motion sheet's reader.
 */
public final class ReaderChoice {

    private static final Pattern SHEET = Pattern.compile("(?m)^[{\"' \\t\\uFEFF]{0,9}motion-sheet[\"' \\t]{0,9}:");

    private ReaderChoice() {}

    /** Whether the text is a motion sheet, which no phrasebook reads. */
    public static boolean isSheet(String text) {
        return SHEET.matcher(text).find();
    }

    /** The reader of a text. */
    public static ProgramReader of(String text, @Nullable Phrasebook book) {
        return of(text, book == null ? null : new PhrasebookReader(book));
    }

    /** The reader of a text, that one by a phrasebook among them. */
    public static ProgramReader of(String text, @Nullable PhrasebookReader phrases) {
        if (isSheet(text)) {
            return new MotionSheetReader();
        }
        if (phrases != null && phrases.understandsTheFirstLine(text)) {
            return phrases;
        }
        if (BlockReader.isMeantBy(text)) {
            return new BlockReader();
        }
        return phrases == null ? new MotionSheetReader() : phrases;
    }
}
