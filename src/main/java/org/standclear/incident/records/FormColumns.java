package org.standclear.incident.records;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.Incident;
import org.standclear.incident.RecordableOutcome;
import org.standclear.platform.time.SqlTime;

/** The columns that the full form fills. */
final class FormColumns {

    private FormColumns() {}

    static Map<String, @Nullable Object> of(Incident incident) {
        Incident.Form form = incident.form();
        Map<String, @Nullable Object> columns = new LinkedHashMap<>();
        columns.put("due", SqlTime.toSql(incident.formDueAt()));
        columns.put("done", SqlTime.toSql(incident.formDoneAt()));
        columns.put("story", form == null ? "" : form.story());
        columns.put("atOnce", form == null ? "" : form.doneAtOnce());
        columns.put("actual", form == null ? null : form.actual().name());
        columns.put("foreseeable", form == null ? null : form.foreseeable().name());
        columns.put("outcomes", form == null ? "" : outcomes(form.outcomes()));
        return columns;
    }

    static String outcomes(Set<RecordableOutcome> outcomes) {
        return outcomes.stream().sorted().map(RecordableOutcome::name).collect(Collectors.joining(" "));
    }

    static Set<RecordableOutcome> outcomes(String stored) {
        return Arrays.stream(stored.split(" "))
                .filter(name -> !name.isEmpty())
                .map(RecordableOutcome::valueOf)
                .collect(Collectors.toUnmodifiableSet());
    }
}
