package org.standclear.incident.records;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentOutcome.Done;
import org.standclear.incident.IncidentOutcome.Refused;
import org.standclear.incident.IncidentState;
import org.standclear.incident.IncidentStep.Kind;
import org.standclear.people.People;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Corrective actions in the database; an incident whose action did not help is opened again. */
@Service
@Transactional
class JdbcCorrectiveActions implements CorrectiveActions {

    private final ActionRows rows;
    private final IncidentRows incidents;
    private final ReviewGuard guard;
    private final Steps steps;
    private final People people;
    private final IncidentNumbers numbers;
    private final LabTime labTime;

    JdbcCorrectiveActions(
            ActionRows rows,
            IncidentRows incidents,
            ReviewGuard guard,
            Steps steps,
            People people,
            IncidentNumbers numbers,
            LabTime labTime) {
        this.rows = rows;
        this.incidents = incidents;
        this.guard = guard;
        this.steps = steps;
        this.people = people;
        this.numbers = numbers;
        this.labTime = labTime;
    }

    @Override
    @Transactional(readOnly = true)
    public List<CorrectiveAction> of(IncidentId incident) {
        return rows.of(incident);
    }

    @Override
    @Transactional(readOnly = true)
    public Page unsettled(Whose whose, @Nullable Position after, int size) {
        List<CorrectiveAction> found = rows.unsettled(whose, after, size + 1);
        if (found.size() <= size) {
            return new Page(found, null);
        }
        CorrectiveAction last = found.get(size - 1);
        return new Page(found.subList(0, size), new Position(last.nextDate(), last.id()));
    }

    @Override
    @Transactional(readOnly = true)
    public Counted counted(PersonId owner) {
        return rows.counted(owner, labTime.date(steps.now()));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<CorrectiveAction> find(UUID id) {
        return rows.find(id);
    }

    @Override
    public IncidentOutcome done(UUID id, String words, PersonId by) {
        CorrectiveAction action = rows.find(id).orElseThrow();
        Incident incident = incidents.lock(action.incident()).orElseThrow();
        if (!by.equals(action.owner()) && !guard.isInstructor(by)) {
            return new Refused(
                    "", people.printedName(action.owner()) + " owns this action; an instructor may note it too.");
        }
        CorrectiveAction.Done done = new CorrectiveAction.Done(
                by,
                steps.now(),
                words,
                labTime.date(steps.now()).plusDays(numbers.inForce().effectCheckDays()));
        if (!rows.done(id, done)) {
            return new Refused("", "The action is done already.");
        }
        steps.take(
                incident,
                new Steps.Taken(Kind.ACTION_DONE, action.words() + ": " + words, "Done: " + action.words(), by));
        return new Done(incident.id());
    }

    @Override
    public IncidentOutcome check(UUID id, boolean effective, String words, PersonId by) {
        CorrectiveAction seen = rows.find(id).orElseThrow();
        Incident incident = incidents.lock(seen.incident()).orElseThrow();
        CorrectiveAction action = rows.find(id).orElseThrow();
        Optional<String> no = whyNotChecked(action, incident, by);
        if (no.isPresent()) {
            return new Refused("", no.get());
        }
        if (!rows.checked(id, new CorrectiveAction.Checked(by, steps.now(), effective, words))) {
            return new Refused("", "Somebody has looked at it already.");
        }
        String found = effective ? "It helped: " : "It did not help: ";
        steps.take(
                incident,
                new Steps.Taken(
                        Kind.ACTION_CHECKED, action.words() + ". " + found + words, found + action.words(), by));
        if (!effective && incident.state() == IncidentState.CLOSED) {
            incidents.change(Changes.openedAgain(incident));
            steps.take(
                    incident,
                    new Steps.Taken(
                            Kind.OPENED_AGAIN,
                            "An action did not help; another one is needed.",
                            "It is open again: what was done did not help.",
                            by));
        }
        return new Done(incident.id());
    }

    private Optional<String> whyNotChecked(CorrectiveAction action, Incident incident, PersonId by) {
        CorrectiveAction.Done done = action.done();
        if (done == null) {
            return Optional.of("The action is not done yet.");
        }
        if (by.equals(action.owner())) {
            return Optional.of("Somebody other than the owner looks whether it helped.");
        }
        if (labTime.date(steps.now()).isBefore(done.checkDueOn())) {
            return Optional.of("Whether it helped shows with time: look again on " + labTime.day(done.checkDueOn())
                    + " or later.");
        }
        return guard.whyNot(incident, by);
    }
}
