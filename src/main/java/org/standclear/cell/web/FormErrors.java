package org.standclear.cell.web;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What is wrong with a form, by field, in the order of the fields. */
final class FormErrors {

    private final Map<String, String> byField = new LinkedHashMap<>();

    void add(String field, String says) {
        byField.putIfAbsent(field, says);
    }

    boolean any() {
        return !byField.isEmpty();
    }

    boolean has(String field) {
        return byField.containsKey(field);
    }

    @Nullable
    String of(String field) {
        return byField.get(field);
    }

    Map<String, String> all() {
        return byField;
    }
}
