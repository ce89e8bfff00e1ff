package org.standclear.run.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.run.Runs;

/** The filter fields of the list of runs; an empty field means any. */
record RunFilterForm(String cell, String day, String person, String after) {

    static RunFilterForm of(Map<String, String> parameters) {
        return new RunFilterForm(
                tidy(parameters.get("cell")),
                tidy(parameters.get("day")),
                tidy(parameters.get("person")),
                tidy(parameters.get("after")));
    }

    private static String tidy(@Nullable String raw) {
        String text = raw == null ? "" : raw.strip();
        return text.length() > 100 ? text.substring(0, 100) : text;
    }

    /** What is wrong, by field. */
    Map<String, String> errors() {
        Map<String, String> errors = new LinkedHashMap<>();
        if (!day.isEmpty() && parse(() -> LocalDate.parse(day)) == null) {
            errors.put("day", "That is no date. Write it as 2026-03-11, or leave it empty.");
        }
        if (!cell.isEmpty() && parse(() -> CellId.of(cell)) == null) {
            errors.put("cell", "Choose a cell from the list.");
        }
        if (!person.isEmpty() && parse(() -> PersonId.of(person)) == null) {
            errors.put("person", "That is not the id of a person.");
        }
        if (!after.isEmpty() && position() == null) {
            errors.put("", "The list cannot go on from there. Begin at its top.");
        }
        return errors;
    }

    /** The filter; {@code only} is the person whose runs a student may see. */
    Runs.Filter filter(@Nullable PersonId only) {
        return new Runs.Filter(
                cell.isEmpty() ? null : CellId.of(cell),
                day.isEmpty() ? null : LocalDate.parse(day),
                only != null ? only : person.isEmpty() ? null : PersonId.of(person));
    }

    Runs.@Nullable Position position() {
        int split = after.indexOf('_');
        return split < 0
                ? null
                : parse(() -> new Runs.Position(
                        Instant.parse(after.substring(0, split)), RunId.of(after.substring(split + 1))));
    }

    /** Where the list goes on. */
    String address(Runs.Position next) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath("/runs");
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("cell", cell);
        fields.put("day", day);
        fields.put("person", person);
        fields.put("after", next.startedAt() + "_" + next.run());
        fields.values().removeIf(String::isEmpty);
        fields.keySet().forEach(name -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(fields).toUriString();
    }

    private static <T> @Nullable T parse(java.util.function.Supplier<T> reading) {
        try {
            return reading.get();
        } catch (DateTimeException | IllegalArgumentException notReadable) {
            return null;
        }
    }
}
