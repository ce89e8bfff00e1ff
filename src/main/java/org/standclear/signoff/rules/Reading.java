package org.standclear.signoff.rules;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.standclear.platform.text.PlainText;
import org.standclear.signoff.ItemField;
import org.standclear.signoff.ItemField.Choice;
import org.standclear.signoff.ListItem;

/** Reads what was typed for an item: tidied values, or the first field that cannot be taken. */
public sealed interface Reading {

    /** The longest text an answer may have. */
    int LONGEST = 60;

    /** Tidied values by field name. */
    record Read(SortedMap<String, String> values) implements Reading {}

    /** A field that is missing or cannot be read, or an answer that stops the list. */
    record Unread(String field, String says) implements Reading {}

    /** Reads the fields of an item; what was sent beside them is not looked at. */
    static Reading of(ListItem item, Map<String, String> typed) {
        SortedMap<String, String> values = new TreeMap<>();
        for (ItemField field : item.fields()) {
            if (isNotAsked(field, values)) {
                continue;
            }
            String value = tidy(typed.getOrDefault(field.name(), ""));
            String fault = fault(field, value);
            if (!fault.isEmpty()) {
                return new Unread(field.name(), fault);
            }
            values.put(field.name(), field.kind() == ItemField.Kind.NUMBER ? Numbers.plain(value) : value);
        }
        return new Read(values);
    }

    private static boolean isNotAsked(ItemField field, SortedMap<String, String> before) {
        return field.name().equals("passes") && "forever".equals(before.get("ends"));
    }

    private static String tidy(String typed) {
        return Normalizer.normalize(typed.strip(), Normalizer.Form.NFC);
    }

    private static String fault(ItemField field, String value) {
        if (value.isEmpty()) {
            return field.kind() == ItemField.Kind.CHOICE
                    ? "Choose one of the answers to \"" + field.label() + "\"."
                    : "Type the answer to \"" + field.label() + "\".";
        }
        if (PlainText.check(value, LONGEST) instanceof PlainText.Refused refused) {
            return refused.says();
        }
        return switch (field.kind()) {
            case TEXT -> textFault(field, value);
            case NUMBER -> numberFault(field, value);
            case CHOICE ->
                field.choices().stream()
                        .filter(choice -> choice.value().equals(value))
                        .map(Choice::stops)
                        .findFirst()
                        .orElse("Choose one of the answers to \"" + field.label() + "\".");
        };
    }

    private static String textFault(ItemField field, String value) {
        boolean fingerprint = field.name().equals("fingerprint");
        if (fingerprint && !FourHex.PATTERN.matcher(value).matches()) {
            return "Four characters, 0 to 9 and a to f: the end of the program's fingerprint.";
        }
        return "";
    }

    private static String numberFault(ItemField field, String value) {
        if (!Numbers.isPlain(value)) {
            return "A number, for example " + (field.name().equals("passes") ? "5" : "50") + ".";
        }
        double number = Numbers.value(value);
        if (field.name().equals("override")) {
            return number > 0 && number <= 100 ? "" : "An override is above 0 and at most 100 %.";
        }
        boolean whole = number >= 1 && number <= 1_000_000 && number == Math.rint(number);
        return whole ? "" : "A whole number of passes, at least 1.";
    }

    /** The end of a fingerprint. */
    final class FourHex {
        private static final Pattern PATTERN = Pattern.compile("[0-9a-fA-F]{4}");

        private FourHex() {}

        static boolean same(String one, String other) {
            return one.toLowerCase(Locale.ROOT).equals(other.toLowerCase(Locale.ROOT));
        }
    }
}
