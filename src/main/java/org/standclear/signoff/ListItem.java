package org.standclear.signoff;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * One item of a list: a challenge, and what answers it.
 *
 * @param number as printed on the card
 * @param challenge the question as it is read out
 * @param hint a few more words, or empty
 */
public record ListItem(int number, String challenge, String hint, List<ItemField> fields) {

    public ListItem {
        fields = List.copyOf(fields);
    }

    /** The given values in words, in the order of the fields: "reduced, 50 %". */
    public String inWords(Map<String, String> values) {
        return fields.stream()
                .filter(field -> !values.getOrDefault(field.name(), "").isEmpty())
                .map(field -> inWords(field, values.getOrDefault(field.name(), "")))
                .collect(Collectors.joining(", "));
    }

    private static String inWords(ItemField field, String value) {
        String words = field.choices().stream()
                .filter(choice -> choice.value().equals(value))
                .map(ItemField.Choice::words)
                .findFirst()
                .orElse(value);
        return field.unit().isEmpty() ? words : words + " " + field.unit();
    }
}
