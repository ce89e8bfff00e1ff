package org.standclear.incident.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.incident.Incidents.Filter;
import org.standclear.incident.Incidents.Position;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** The filter fields of the list of incidents; an empty field means any. */
record IncidentFilterForm(String cell, String state, String kind, String after) {

    private static final int LONGEST = 100;

    static IncidentFilterForm of(Map<String, String> parameters) {
        return new IncidentFilterForm(
                tidy(parameters.get("cell")),
                tidy(parameters.get("state")),
                tidy(parameters.get("kind")),
                tidy(parameters.get("after")));
    }

    private static String tidy(@Nullable String raw) {
        String text = raw == null ? "" : raw.strip();
        return text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    }

    /** What is wrong, by field. */
    Map<String, String> errors() {
        Map<String, String> errors = new LinkedHashMap<>();
        if (!cell.isEmpty() && cellId() == null) {
            errors.put("cell", "Choose a cell from the list.");
        }
        if (!state.isEmpty() && stateRead().isEmpty()) {
            errors.put("state", "Choose a state from the list.");
        }
        if (!kind.isEmpty() && IncidentClass.of(kind).isEmpty()) {
            errors.put("kind", "Choose a class from the list.");
        }
        if (!after.isEmpty() && position() == null) {
            errors.put("", "The list cannot go on from there. Begin at its top.");
        }
        return errors;
    }

    /** The filter; {@code only} is the person whose reports may be seen, null for everybody's. */
    Filter filter(@Nullable PersonId only) {
        return new Filter(
                cellId(), stateRead().orElse(null), IncidentClass.of(kind).orElse(null), only);
    }

    private @Nullable CellId cellId() {
        try {
            return cell.isEmpty() ? null : CellId.of(cell);
        } catch (IllegalArgumentException notAnId) {
            return null;
        }
    }

    private Optional<IncidentState> stateRead() {
        return Arrays.stream(IncidentState.values())
                .filter(one -> one.code().equals(state))
                .findFirst();
    }

    @Nullable
    Position position() {
        int split = after.indexOf('_');
        try {
            return split < 0
                    ? null
                    : new Position(Instant.parse(after.substring(0, split)), IncidentId.of(after.substring(split + 1)));
        } catch (DateTimeException | IllegalArgumentException notAPlace) {
            return null;
        }
    }

    /** Where the list goes on. */
    String address(Position next) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath("/incidents");
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("cell", cell);
        fields.put("state", state);
        fields.put("kind", kind);
        fields.put("after", next.reportedAt() + "_" + next.incident());
        fields.values().removeIf(String::isEmpty);
        fields.keySet().forEach(name -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(fields).toUriString();
    }
}
