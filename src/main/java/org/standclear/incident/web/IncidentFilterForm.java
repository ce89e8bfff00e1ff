package org.standclear.incident.web;

import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.incident.Incidents.Filter;
import org.standclear.incident.Incidents.Position;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.web.FilterFields;

/** The filter fields of the list of incidents; an empty field means any. */
record IncidentFilterForm(String cell, String state, String kind, String after) {

    static IncidentFilterForm of(Map<String, String> parameters) {
        return new IncidentFilterForm(
                FilterFields.tidy(parameters.get("cell")),
                FilterFields.tidy(parameters.get("state")),
                FilterFields.tidy(parameters.get("kind")),
                FilterFields.tidy(parameters.get("after")));
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
            errors.put("", FilterFields.NO_PLACE);
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
        return FilterFields.place(after, (at, id) -> new Position(Instant.parse(at), IncidentId.of(id)));
    }

    /** Where the list goes on. */
    String address(Position next) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("cell", cell);
        fields.put("state", state);
        fields.put("kind", kind);
        fields.put("after", next.reportedAt() + "_" + next.incident());
        return FilterFields.address("/incidents", fields);
    }
}
