package org.standclear.people.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.PlainText;

/** What was typed into a form, read field by field; what cannot be read leaves a sentence under the field's name. */
final class Typed {

    private static final LocalDate FIRST_DAY = LocalDate.of(2000, 1, 1);
    private static final LocalDate LAST_DAY = LocalDate.of(2100, 12, 31);

    private final Map<String, String> values;
    private final Map<String, String> errors = new LinkedHashMap<>();

    Typed(Map<String, String> values) {
        this.values = values;
    }

    public String raw(String field) {
        return values.getOrDefault(field, "");
    }

    Map<String, String> values() {
        return values;
    }

    Map<String, String> errors() {
        return errors;
    }

    void refuse(String field, String says) {
        errors.putIfAbsent(field, says);
    }

    String text(String field, int max) {
        PlainText.Checked checked = PlainText.check(raw(field), max);
        if (checked instanceof PlainText.Fine fine) {
            return fine.text();
        }
        refuse(field, ((PlainText.Refused) checked).says());
        return "";
    }

    @Nullable
    LocalDate date(String field) {
        try {
            LocalDate date = LocalDate.parse(raw(field).strip());
            if (date.isBefore(FIRST_DAY) || date.isAfter(LAST_DAY)) {
                refuse(field, "Choose a day between 2000 and 2100.");
                return null;
            }
            return date;
        } catch (DateTimeParseException e) {
            refuse(field, raw(field).isBlank() ? "Choose a day." : "There is no such day. Write it as 2026-11-26.");
            return null;
        }
    }

    @Nullable
    LocalTime time(String field) {
        try {
            return LocalTime.parse(raw(field).strip());
        } catch (DateTimeParseException e) {
            refuse(field, raw(field).isBlank() ? "Choose a time." : "There is no such time. Write it as 14:07.");
            return null;
        }
    }

    /** A number; null when it is absent or cannot be read, and only the latter leaves a sentence. */
    @Nullable
    Double number(String field) {
        String text = raw(field).strip().replace(',', '.');
        if (text.isEmpty()) {
            return null;
        }
        // what Double.parseDouble takes beyond this (NaN, hexadecimal, a trailing d) nobody types on purpose
        if (!text.matches("[+-]?[0-9]{1,12}(\\.[0-9]{1,12})?")) {
            refuse(field, "Write a number, such as 50 or 37.5.");
            return null;
        }
        return Double.valueOf(text);
    }

    @Nullable
    Integer whole(String field) {
        String text = raw(field).strip();
        if (!text.matches("[0-9]{1,9}")) {
            refuse(field, "Write a whole number.");
            return null;
        }
        return Integer.valueOf(text);
    }
}
