package org.standclear.core.program;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Power;
import org.standclear.core.quantity.ShownNumber;

/** Writes a declaration as YAML: equal declarations give equal texts, and the reader reads them back. */
public final class DeclarationWriter {

    /** Texts that mean nothing else in YAML. */
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z][A-Za-z0-9]*(-[A-Za-z0-9]+)+|[A-Z]-?[0-9]+");

    private DeclarationWriter() {}

    /** The text; empty when nothing is declared. */
    public static String write(Declaration declaration) {
        StringBuilder text = new StringBuilder();
        for (DeclarationField field : DeclarationField.values()) {
            @Nullable Object value = field.in(declaration);
            if (value != null) {
                text.append(field.word()).append(": ").append(written(value)).append('\n');
            }
        }
        return text.toString();
    }

    private static String written(Object value) {
        if (value instanceof Power power) {
            return power.word();
        }
        if (value instanceof Loop loop) {
            return loop.word();
        }
        if (value instanceof Double number) {
            return ShownNumber.plain(number);
        }
        String text = value.toString();
        return PLAIN.matcher(text).matches() ? text : quoted(text);
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
