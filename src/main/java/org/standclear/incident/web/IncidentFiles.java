package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Instant;
import java.util.Comparator;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.incident.Incidents.Position;
import org.standclear.incident.RecordableOutcome;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.TableFile;

/** The list of incidents as a table to take away: what is counted, and nobody's words or name. */
@Controller
class IncidentFiles {

    private static final int AT_ONCE = 200;

    private static final String[] COLUMNS = {
        "number",
        "cell",
        "class",
        "class_number",
        "happened_at",
        "reported_at",
        "without_name",
        "state",
        "closed_at",
        "actual",
        "foreseeable",
        "recordable",
        "form_due_at",
        "form_done_at",
        "cell_held"
    };

    private final Incidents incidents;
    private final ReporterViews views;
    private final LabTime labTime;

    IncidentFiles(Incidents incidents, ReporterViews views, LabTime labTime) {
        this.incidents = incidents;
        this.views = views;
        this.labTime = labTime;
    }

    @GetMapping("/incidents.csv")
    void csv(@RequestParam Map<String, String> parameters, HttpServletResponse response) throws IOException {
        IncidentFilterForm form = IncidentFilterForm.of(parameters);
        if (!form.errors().isEmpty()) {
            throw new NotFoundException("list");
        }
        try (CSVPrinter csv = new CSVPrinter(TableFile.begin(response, "incidents.csv"), CSVFormat.RFC4180)) {
            csv.printRecord((Object[]) COLUMNS);
            Position after = null;
            do {
                Incidents.Page page = incidents.page(form.filter(null), after, AT_ONCE);
                for (Incident incident : page.incidents()) {
                    csv.printRecord(columns(incident));
                }
                after = page.next();
            } while (after != null);
        }
    }

    private Object[] columns(Incident incident) {
        Incident.Form form = incident.form();
        return new Object[] {
            incident.number(),
            TableCell.plain(views.cell(incident)),
            incident.kind().code(),
            incident.kind().number(),
            iso(incident.happenedAt()),
            iso(incident.reportedAt()),
            incident.anonymous(),
            incident.state().code(),
            iso(incident.closedAt()),
            form == null ? "" : form.actual().code(),
            form == null ? "" : form.foreseeable().code(),
            form == null ? "" : recordable(form),
            iso(incident.formDueAt()),
            iso(incident.formDoneAt()),
            incident.kind().holdsCell()
        };
    }

    private static String recordable(Incident.Form form) {
        return form.outcomes().stream()
                .sorted(Comparator.naturalOrder())
                .map(RecordableOutcome::words)
                .collect(Collectors.joining("; "));
    }

    private String iso(@Nullable Instant at) {
        return at == null ? "" : labTime.iso(at);
    }
}
