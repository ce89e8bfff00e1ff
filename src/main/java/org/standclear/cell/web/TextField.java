package org.standclear.cell.web;

import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.PlainText;

/** Reads text that a person typed into one field. */
final class TextField {

    private TextField() {}

    /** The text as it is kept; empty and an error when it cannot be. */
    static String read(FormErrors errors, String field, @Nullable String raw, int max, String ask) {
        if (raw == null || raw.isBlank()) {
            errors.add(field, ask);
            return "";
        }
        PlainText.Checked checked = PlainText.checkLines(raw, max);
        if (checked instanceof PlainText.Fine fine) {
            return fine.text();
        }
        errors.add(field, ((PlainText.Refused) checked).says());
        return "";
    }
}
