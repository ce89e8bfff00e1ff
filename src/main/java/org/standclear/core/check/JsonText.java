package org.standclear.core.check;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes nested maps, lists, texts, numbers and truth values as JSON (RFC 8259), indented by two spaces. */
public final class JsonText {

    private static final int FIRST_PRINTED = 0x20;

    private final StringBuilder text = new StringBuilder();

    private JsonText() {}

    /** The document as JSON, with a line break at its end. */
    public static String of(@Nullable Object document) {
        JsonText json = new JsonText();
        json.write(document, 0);
        return json.text.append('\n').toString();
    }

    private void write(@Nullable Object value, int level) {
        if (value instanceof Map<?, ?> map) {
            writeMap(map, level);
        } else if (value instanceof List<?> list) {
            writeList(list, level);
        } else if (value instanceof Double number && !Double.isFinite(number)) {
            throw new IllegalArgumentException("JSON has no " + number);
        } else if (value == null || value instanceof Number || value instanceof Boolean) {
            text.append(value);
        } else {
            quote(value.toString());
        }
    }

    private void writeMap(Map<?, ?> map, int level) {
        text.append('{');
        boolean first = true;
        for (Map.Entry<?, ?> entry : map.entrySet()) {
            separate(first, level + 1);
            quote(String.valueOf(entry.getKey()));
            text.append(": ");
            write(entry.getValue(), level + 1);
            first = false;
        }
        end(first, level, '}');
    }

    private void writeList(List<?> list, int level) {
        text.append('[');
        boolean first = true;
        for (Object item : list) {
            separate(first, level + 1);
            write(item, level + 1);
            first = false;
        }
        end(first, level, ']');
    }

    private void separate(boolean first, int level) {
        text.append(first ? "\n" : ",\n").append("  ".repeat(level));
    }

    private void end(boolean empty, int level, char bracket) {
        if (!empty) {
            text.append('\n').append("  ".repeat(level));
        }
        text.append(bracket);
    }

    private void quote(String value) {
        text.append('"');
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            if (c == '"' || c == '\\') {
                text.append('\\').append(c);
            } else if (c < FIRST_PRINTED || Character.isSurrogate(c) || c == '\u2028' || c == '\u2029') {
                text.append(String.format("\\u%04x", (int) c));
            } else {
                text.append(c);
            }
        }
        text.append('"');
    }
}
