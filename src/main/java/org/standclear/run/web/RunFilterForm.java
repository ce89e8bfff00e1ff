package org.standclear.run.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.web.FilterFields;
import org.standclear.run.Runs;

/** The filter fields of the list of runs; an empty field means any. */
record RunFilterForm(String cell, String day, String person, String after) {

    static RunFilterForm of(Map<String, String> parameters) {
        return new RunFilterForm(
                FilterFields.tidy(parameters.get("cell")),
                FilterFields.tidy(parameters.get("day")),
                FilterFields.tidy(parameters.get("person")),
                FilterFields.tidy(parameters.get("after")));
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
            errors.put("", FilterFields.NO_PLACE);
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
        return FilterFields.place(after, (at, id) -> new Runs.Position(Instant.parse(at), RunId.of(id)));
    }

    /** Where the list goes on. */
    String address(Runs.Position next) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("cell", cell);
        fields.put("day", day);
        fields.put("person", person);
        fields.put("after", next.startedAt() + "_" + next.run());
        return FilterFields.address("/runs", fields);
    }

    private static <T> @Nullable T parse(java.util.function.Supplier<T> reading) {
        try {
            return reading.get();
        } catch (DateTimeException | IllegalArgumentException notReadable) {
            return null;
        }
    }
}
