package org.standclear.incident.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.incident.FilledForm;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentState;
import org.standclear.incident.Incidents;
import org.standclear.incident.RecordableOutcome;
import org.standclear.incident.Statement;
import org.standclear.incident.rules.WordChanges;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Who told what about an incident, and how its form came to say what it says. */
@Component
class TellingViews {

    private final Incidents incidents;
    private final People people;
    private final LabTime labTime;

    TellingViews(Incidents incidents, People people, LabTime labTime) {
        this.incidents = incidents;
        this.people = people;
        this.labTime = labTime;
    }

    /** What somebody said in their own words. */
    record StatementView(String who, String at, String words) {}

    /**
     * One state of the form.
     *
     * @param changes what is different from the state before, in words; empty for the first
     * @param story word by word against the state before
     */
    record FormState(int number, String who, String at, List<String> changes, List<Piece> story, List<Piece> atOnce) {}

    /** Words with what became of them: stayed, removed, added. */
    record Piece(String fate, String words) {}

    /**
     * What was told.
     *
     * @param mayState whether a statement can still be added
     * @param mayFill whether the reader may fill in or mend the form
     * @param whyNotFill why not; empty when they may, or when nobody may any more
     */
    record Telling(
            List<StatementView> statements,
            List<FormState> states,
            boolean mayState,
            boolean mayFill,
            String whyNotFill) {}

    /** What the person may read: of a reporter who does not work on it, their own statements only. */
    Telling of(Incident incident, PersonId reader, boolean all) {
        List<StatementView> statements = incidents.statements(incident.id()).stream()
                .filter(one -> all || one.by().equals(reader))
                .map(this::view)
                .toList();
        boolean open = incident.state() != IncidentState.CLOSED;
        boolean toFill = open && (incident.form() == null || incident.state() == IncidentState.OPEN);
        return new Telling(
                statements,
                all ? states(incidents.forms(incident.id())) : List.of(),
                open,
                toFill && !incident.involves(reader),
                toFill && incident.involves(reader)
                        ? "Who had a part in it, or did not say that they had none, tells it as a statement; the form and"
                                + " its class are filled in by somebody else."
                        : "");
    }

    private StatementView view(Statement one) {
        return new StatementView(people.printedName(one.by()), labTime.full(one.at()), one.words());
    }

    private List<FormState> states(List<FilledForm> forms) {
        List<FormState> states = new ArrayList<>();
        FilledForm before = null;
        for (FilledForm one : forms) {
            PersonId by = one.by();
            states.add(new FormState(
                    one.number(),
                    by == null ? "" : people.printedName(by),
                    labTime.full(one.at()),
                    changes(before, one),
                    pieces(
                            before == null ? "" : before.form().story(),
                            one.form().story()),
                    pieces(
                            before == null ? "" : before.form().doneAtOnce(),
                            one.form().doneAtOnce())));
            before = one;
        }
        return states;
    }

    private static List<String> changes(@Nullable FilledForm before, FilledForm now) {
        List<String> changes = new ArrayList<>();
        changed(
                changes,
                "Class",
                before == null ? null : before.kind().label(),
                now.kind().label());
        changed(
                changes,
                "It was",
                before == null ? null : before.form().actual().words(),
                now.form().actual().words());
        changed(
                changes,
                "It could have been",
                before == null ? null : before.form().foreseeable().words(),
                now.form().foreseeable().words());
        changed(changes, "After 29 CFR 1904", before == null ? null : outcomes(before.form()), outcomes(now.form()));
        return changes;
    }

    private static String outcomes(Incident.Form form) {
        return form.outcomes().isEmpty()
                ? "none of them"
                : form.outcomes().stream()
                        .sorted()
                        .map(RecordableOutcome::words)
                        .collect(Collectors.joining(", "));
    }

    private static void changed(List<String> changes, String what, @Nullable String before, String now) {
        if (before == null) {
            changes.add(what + ": " + now);
        } else if (!before.equals(now)) {
            changes.add(what + ": " + now + ", before: " + before);
        }
    }

    private static List<Piece> pieces(String before, String after) {
        return WordChanges.between(before, after).stream()
                .map(piece -> new Piece(piece.fate().name().toLowerCase(java.util.Locale.ROOT), piece.words()))
                .toList();
    }
}
