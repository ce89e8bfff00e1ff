package org.standclear.platform.numbers.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.platform.numbers.LabNumber;
import org.standclear.platform.numbers.LabNumber.Range;
import org.standclear.platform.numbers.NumberSet;
import org.standclear.platform.text.PlainText;

/** A room's numbers as they were sent, or as the form is first shown. */
final class NumbersForm<T> {

    private static final int LONGEST_REASON = 400;

    private final NumberSet<T> set;
    private final Map<String, String> fields;
    private final Map<String, String> errors = new LinkedHashMap<>();

    NumbersForm(NumberSet<T> set, Map<String, String> fields) {
        this.set = set;
        this.fields = Map.copyOf(fields);
    }

    /** With what holds. */
    static <T> NumbersForm<T> of(NumberSet<T> set, T now) {
        Map<String, String> fields = new HashMap<>(Map.of("seen", set.line(now)));
        List<Integer> values = set.values().apply(now);
        for (int i = 0; i < values.size(); i++) {
            fields.put(set.numbers().get(i).name(), String.valueOf(values.get(i)));
        }
        return new NumbersForm<>(set, fields);
    }

    String field(String name) {
        return fields.getOrDefault(name, "");
    }

    Map<String, String> errors() {
        return errors;
    }

    /** Says something of the form as a whole. */
    void refuse(String says) {
        errors.put("", says);
    }

    /** The numbers; empty when one cannot be, which then stands in the errors by field. */
    Optional<T> read() {
        Map<String, Integer> read = new HashMap<>();
        List<Integer> values = new ArrayList<>();
        for (LabNumber number : set.numbers()) {
            int value = number(number, mostOf(number.range(), read));
            read.put(number.name(), value);
            values.add(value);
        }
        if (PlainText.check(field("reason"), LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        return errors.isEmpty() ? Optional.of(set.made().apply(values)) : Optional.empty();
    }

    /** The other number counts only where it was read. */
    private int mostOf(Range range, Map<String, Integer> read) {
        String other = range.notOver();
        return other == null || errors.containsKey(other)
                ? range.most()
                : Math.min(range.most(), read.getOrDefault(other, range.most()));
    }

    private int number(LabNumber number, int most) {
        int least = number.range().least();
        String plain = field(number.name()).strip();
        if (plain.matches("[0-9]{1,5}")) {
            int read = Integer.parseInt(plain);
            if (read >= least && read <= most) {
                return read;
            }
        }
        errors.put(number.name(), "Write a whole number from " + least + " to " + most + "; \"" + plain + "\" is not.");
        return least;
    }

    /** The reason as it is kept; only after it was read without an error. */
    String reasonKept() {
        return ((PlainText.Fine) PlainText.check(field("reason"), LONGEST_REASON)).text();
    }
}
