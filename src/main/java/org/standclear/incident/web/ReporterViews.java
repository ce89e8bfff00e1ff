package org.standclear.incident.web;

import java.time.Clock;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.Incidents;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.time.LabTime;

/** An incident as its reporter sees it: what was told, and what was done about it. */
@Component
class ReporterViews {

    private final Incidents incidents;
    private final CellNames cellNames;
    private final LabTime labTime;
    private final Clock clock;

    ReporterViews(Incidents incidents, CellNames cellNames, LabTime labTime, Clock clock) {
        this.incidents = incidents;
        this.cellNames = cellNames;
        this.labTime = labTime;
        this.clock = clock;
    }

    /**
     * What the reporter sees.
     *
     * @param form whether the full form is due, or late, in words; empty when nothing is due
     */
    record ReporterView(
            String id,
            String headline,
            String kicker,
            String sentence,
            String state,
            String stateWords,
            FormView form,
            boolean toldAtOnce,
            List<Heard> heard) {}

    /**
     * The state of the full form.
     *
     * @param open whether it can be filled in
     */
    record FormView(boolean open, String state, String words) {}

    /** Something the reporter gets to hear. */
    record Heard(String at, String words) {}

    /** As whoever reported it reads it. */
    ReporterView of(Incident incident) {
        return view(incident, "Your report ");
    }

    /** As anybody reads it who fills in its form: lab staff do that for what others reported too. */
    ReporterView of(Incident incident, PersonId reader) {
        return view(incident, reader.equals(incident.reporter()) ? "Your report " : "Incident ");
    }

    private ReporterView view(Incident incident, String called) {
        return new ReporterView(
                incident.id().toString(),
                called + incident.number() + ": " + incident.kind().words() + " on " + cell(incident),
                "Reported " + labTime.full(incident.reportedAt()),
                incident.sentence(),
                mark(incident),
                incident.state().words(),
                form(incident),
                incident.kind().isToldAtOnce(),
                incidents.steps(incident.id()).stream()
                        .filter(step -> !step.forReporter().isEmpty())
                        .map(step -> new Heard(labTime.full(step.at()), step.forReporter()))
                        .toList());
    }

    String cell(Incident incident) {
        return cellNames.all().getOrDefault(incident.cell(), "a cell");
    }

    static String mark(Incident incident) {
        return switch (incident.state()) {
            case OPEN -> "open";
            case IN_REVIEW -> "checked";
            case CLOSED -> "done";
        };
    }

    /** When the form is due, as due or overdue; a form that is done says when, and whether that was late. */
    FormView form(Incident incident) {
        if (incident.formDueAt() == null) {
            return new FormView(false, "none", "no form is due");
        }
        boolean late = incident.formIsLate(clock.instant());
        if (incident.formDoneAt() != null) {
            boolean brief = incident.form() == null || !incident.form().isFilledIn();
            String words =
                    brief ? "short form, enough for this class" : "filled in " + labTime.full(incident.formDoneAt());
            return new FormView(brief, "done", late && !brief ? words + ", late" : words);
        }
        if (incident.kind().formDue() == IncidentClass.FormDue.AT_ONCE) {
            return new FormView(true, "due", "due at once");
        }
        String until = labTime.full(incident.formDueAt());
        return new FormView(true, "due", late ? "overdue since " + until : "due until " + until);
    }
}
