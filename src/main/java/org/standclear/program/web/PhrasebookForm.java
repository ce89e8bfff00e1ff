package org.standclear.program.web;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;
import org.standclear.platform.text.PlainText;

/**
 * A phrasebook as it was typed, with a program to try it on.
 *
 * @param act {@code try} to see what the lines of the program mean, else the book is kept
 */
record PhrasebookForm(
        @Nullable String formToken,
        @Nullable String book,
        @Nullable String reason,
        @Nullable String program,
        @Nullable Integer basedOn,
        @Nullable String act) {

    private static final int LONGEST_TRIED = 256 * 1024;

    static PhrasebookForm of(String book, int basedOn) {
        return new PhrasebookForm(null, book, null, null, basedOn, null);
    }

    boolean tries() {
        return "try".equals(act);
    }

    public int base() {
        return basedOn == null ? 0 : basedOn;
    }

    public String bookText() {
        return plain(book);
    }

    public String programText() {
        return plain(program);
    }

    private static String plain(@Nullable String text) {
        return text == null ? "" : text.replace("\r\n", "\n");
    }

    /** The reason as it is kept; an error when there is none. */
    String reasonRead(Map<String, String> errors) {
        if (reason == null || reason.isBlank()) {
            errors.put("reason", "Say why the book changes: what was added, or which phrase was wrong.");
            return "";
        }
        PlainText.Checked checked = PlainText.checkLines(reason, 1000);
        if (checked instanceof PlainText.Fine fine) {
            return fine.text();
        }
        errors.put("reason", ((PlainText.Refused) checked).says());
        return "";
    }

    /** What the lines of the program mean by a book. */
    @Nullable
    TriedView tried(String bookText, Map<String, String> errors) {
        if (programText().isBlank() || programText().length() > LONGEST_TRIED) {
            errors.put("program", programText().isBlank() ? "Paste a program to try." : "Paste 256 KiB at most.");
            return null;
        }
        Reading<Phrasebook> read =
                InputText.ofOther(bookText.getBytes(StandardCharsets.UTF_8)).then(Phrasebook::read);
        if (read.badInput().isPresent()) {
            errors.put("book", TriedView.sentence(read.badInput().get()));
            return null;
        }
        return TriedView.of(read.value(), programText(), errors);
    }
}
