package org.standclear.incident.web;

import java.time.LocalDate;
import org.springframework.stereotype.Component;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.Incidents;
import org.standclear.people.People;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Corrective actions as lists show them: open, due, overdue, done, looked at again. */
@Component
class ActionViews {

    private final Incidents incidents;
    private final IncidentReviews reviews;
    private final People people;
    private final CellNames cellNames;
    private final LabTime labTime;

    ActionViews(Incidents incidents, IncidentReviews reviews, People people, CellNames cellNames, LabTime labTime) {
        this.incidents = incidents;
        this.reviews = reviews;
        this.people = people;
        this.cellNames = cellNames;
        this.labTime = labTime;
    }

    /**
     * An action.
     *
     * @param about the incident it comes from
     * @param mayDo whether the reader may note that it is done
     * @param mayCheck whether the reader may say whether it helped, today
     */
    record ActionView(
            String id,
            String words,
            String level,
            String owner,
            String state,
            String stateWords,
            String history,
            String about,
            String href,
            boolean mayDo,
            boolean mayCheck) {}

    ActionView of(CorrectiveAction action, SignedInPerson me) {
        var incident = incidents.find(action.incident()).orElseThrow();
        CorrectiveAction.Done done = action.done();
        LocalDate today = labTime.today();
        return new ActionView(
                action.id().toString(),
                action.words(),
                action.level().words(),
                people.printedName(action.owner()),
                state(action, today),
                stateWords(action, today),
                history(action),
                "incident " + incident.number() + ", " + incident.kind().words() + " on "
                        + cellNames.all().getOrDefault(incident.cell(), "a cell"),
                "/incidents/" + incident.id(),
                done == null && (me.id().equals(action.owner()) || me.is(Role.INSTRUCTOR)),
                done != null
                        && action.checked() == null
                        && !me.id().equals(action.owner())
                        && !today.isBefore(done.checkDueOn())
                        && reviews.whyNot(incident, me.id()).isEmpty());
    }

    private static String state(CorrectiveAction action, LocalDate today) {
        CorrectiveAction.Checked checked = action.checked();
        if (checked != null) {
            return checked.effective() ? "done" : "failed";
        }
        return action.isOverdue(today) ? "due" : action.done() == null ? "open" : "checked";
    }

    private String stateWords(CorrectiveAction action, LocalDate today) {
        CorrectiveAction.Checked checked = action.checked();
        if (checked != null) {
            return checked.effective() ? "done, it helped" : "done, it did not help";
        }
        CorrectiveAction.Done done = action.done();
        String over = action.isOverdue(today) ? "overdue since " : "";
        return done == null
                ? (over.isEmpty() ? "due " : over) + labTime.day(action.dueOn())
                : "done; did it help? " + (over.isEmpty() ? "look on " : over) + labTime.day(done.checkDueOn());
    }

    private String history(CorrectiveAction action) {
        StringBuilder history = new StringBuilder();
        CorrectiveAction.Done done = action.done();
        if (done != null) {
            history.append("Done ")
                    .append(labTime.full(done.at()))
                    .append(" by ")
                    .append(people.printedName(done.by()))
                    .append(": ")
                    .append(done.words());
        }
        CorrectiveAction.Checked checked = action.checked();
        if (checked != null) {
            history.append(" · Looked at ")
                    .append(labTime.full(checked.at()))
                    .append(" by ")
                    .append(people.printedName(checked.by()))
                    .append(": ")
                    .append(checked.words());
        }
        return history.toString();
    }
}
