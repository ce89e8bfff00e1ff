package org.standclear.incident.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.PlainText;

/** The fields of a form as they were typed, and what is wrong with them. */
final class IncidentFields {

    private final Map<String, String> typed;
    private final Map<String, String> errors = new LinkedHashMap<>();

    IncidentFields(Map<String, String> typed) {
        this.typed = typed;
    }

    Map<String, String> errors() {
        return errors;
    }

    boolean fit() {
        return errors.isEmpty();
    }

    void refuse(String field, String says) {
        errors.putIfAbsent(field, says);
    }

    /** The raw value, or empty. */
    String raw(String name) {
        String value = typed.get(name);
        return value == null ? "" : value.strip();
    }

    /** One line that has to be there. */
    String line(String name, int max, String ask) {
        return text(name, ask, PlainText.check(typed.get(name), max));
    }

    /** Several lines that have to be there. */
    String lines(String name, int max, String ask) {
        return text(name, ask, PlainText.checkLines(typed.get(name), max));
    }

    /** Several lines that may be missing. */
    String linesOrNone(String name, int max) {
        return raw(name).isEmpty() ? "" : lines(name, max, "");
    }

    private String text(String name, String ask, PlainText.Checked checked) {
        if (checked instanceof PlainText.Fine fine) {
            return fine.text();
        }
        String says = raw(name).isEmpty() ? ask : ((PlainText.Refused) checked).says();
        refuse(name, says);
        return "";
    }

    /** A value out of a list. */
    <T> Optional<T> choice(String name, Function<@Nullable String, Optional<T>> reading, String ask) {
        Optional<T> value = reading.apply(typed.get(name));
        if (value.isEmpty()) {
            refuse(name, ask);
        }
        return value;
    }

    /** A date. */
    Optional<LocalDate> date(String name) {
        return parsed(name, LocalDate::parse, "Write a date, as 2026-03-11.");
    }

    /** A date and a time of the lab, out of two fields; a time that a clock change leaves out is moved on. */
    Optional<Instant> instant(String date, String time, ZoneId zone) {
        Optional<LocalDate> day = date(date);
        Optional<LocalTime> hour = parsed(time, LocalTime::parse, "Write a time, as 14:07.");
        return day.isEmpty() || hour.isEmpty()
                ? Optional.empty()
                : Optional.of(day.get().atTime(hour.get()).atZone(zone).toInstant());
    }

    /** An id. */
    Optional<UUID> id(String name, String ask) {
        return parsed(name, UUID::fromString, ask);
    }

    private <T> Optional<T> parsed(String name, Function<String, T> reading, String ask) {
        try {
            return Optional.of(reading.apply(raw(name)));
        } catch (DateTimeException | IllegalArgumentException notReadable) {
            refuse(name, ask);
            return Optional.empty();
        }
    }
}
