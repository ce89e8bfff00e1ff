package org.standclear.incident.records;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.Cells;
import org.standclear.incident.Cause;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentOutcome.Done;
import org.standclear.incident.IncidentOutcome.Refused;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.IncidentStep.Kind;
import org.standclear.incident.Incidents;
import org.standclear.incident.ReviewLevel;
import org.standclear.incident.RiskReview;
import org.standclear.incident.rules.ReviewRules;
import org.standclear.people.People;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** The review in the database, one act at a time under the incident's row lock. */
@Service
@Transactional
class JdbcIncidentReviews implements IncidentReviews {

    private final IncidentRows rows;
    private final ReviewRows reviews;
    private final ActionRows actions;
    private final InvolvedRows involved;
    private final FormRows forms;
    private final ReviewGuard guard;
    private final Consequences consequences;
    private final Steps steps;
    private final Cells cells;
    private final People people;
    private final IncidentNumbers numbers;
    private final LabTime labTime;

    JdbcIncidentReviews(
            IncidentRows rows,
            ReviewRows reviews,
            ActionRows actions,
            InvolvedRows involved,
            FormRows forms,
            ReviewGuard guard,
            Consequences consequences,
            Steps steps,
            Cells cells,
            People people,
            IncidentNumbers numbers,
            LabTime labTime) {
        this.rows = rows;
        this.reviews = reviews;
        this.actions = actions;
        this.involved = involved;
        this.forms = forms;
        this.guard = guard;
        this.consequences = consequences;
        this.steps = steps;
        this.cells = cells;
        this.people = people;
        this.numbers = numbers;
        this.labTime = labTime;
    }

    @Override
    public Optional<String> whyNot(Incident incident, PersonId by) {
        return guard.whyNot(incident, by);
    }

    @Override
    public ReviewLevel level(Incident incident) {
        Incident.Form form = incident.form();
        return form == null ? ReviewRules.level(incident.kind()) : ReviewRules.level(incident.kind(), form);
    }

    @Override
    public IncidentOutcome take(IncidentId id, PersonId by) {
        return guard.open(id, by, incident -> {
            rows.change(Changes.reviewedBy(incident, by));
            String who = people.printedName(by);
            return step(incident, Kind.REVIEW_TAKEN, who + " reviews it.", who + " reviews your report.", by);
        });
    }

    @Override
    public IncidentOutcome classify(IncidentId id, Classification as, PersonId by) {
        return guard.open(id, by, before -> {
            Incident.Form old = before.form();
            Incident.Form form = new Incident.Form(
                    old == null ? "" : old.story(),
                    old == null ? "" : old.doneAtOnce(),
                    as.actual(),
                    as.foreseeable(),
                    old == null ? Set.of() : old.outcomes());
            Optional<String> tooLow = form.outcomes().stream()
                    .filter(outcome -> as.kind().compareTo(outcome.atLeast()) < 0)
                    .map(outcome -> "The form says: " + outcome.words() + ". That is "
                            + outcome.atLeast().label() + " at least.")
                    .findFirst();
            if (tooLow.isPresent()) {
                return new Refused("kind", tooLow.get());
            }
            DueTimes times = new DueTimes(labTime.zone(), numbers.inForce());
            Incident after = Changes.classed(before, as.kind(), form, steps.now(), times);
            rows.change(after);
            forms.keep(after, by, steps.now());
            String words = after.kind().label() + "; it was: " + as.actual().words() + "; it could have been: "
                    + as.foreseeable().words() + ". " + as.because();
            IncidentOutcome done = step(
                    after,
                    Kind.CLASSIFIED,
                    words,
                    "It is counted as: " + after.kind().words() + ".",
                    by);
            consequences.rise(before, after, by);
            return done;
        });
    }

    @Override
    public IncidentOutcome name(IncidentId id, PersonId person, String part, PersonId by) {
        return guard.open(id, by, incident -> {
            if (!involved.add(id, person, part, steps.now())) {
                return new Refused("person", people.printedName(person) + " is named already.");
            }
            String words = people.printedName(person) + " had a part in it: " + part + ".";
            return step(incident, Kind.PERSON_NAMED, words, "", by);
        });
    }

    @Override
    public IncidentOutcome addCause(IncidentId id, NewCause cause, PersonId by) {
        return guard.open(id, by, incident -> {
            UUID parent = cause.parent();
            Optional<Cause> above = parent == null ? Optional.empty() : cause(id, parent);
            if (parent != null && above.filter(one -> !one.struck()).isEmpty()) {
                return new Refused("parent", "That cause is not in the tree any more. Choose another one.");
            }
            if (above.filter(one -> one.branch() != cause.branch()).isPresent()) {
                return new Refused("parent", "A cause stands in the branch of the one that it explains.");
            }
            reviews.add(id, new Cause(Id.newValue(), parent, cause.branch(), cause.words(), by, steps.now(), false));
            return step(incident, Kind.CAUSE_ADDED, cause.branch().words() + ": " + cause.words(), "", by);
        });
    }

    private Optional<Cause> cause(IncidentId id, UUID cause) {
        return reviews.causes(id).stream().filter(one -> one.id().equals(cause)).findFirst();
    }

    @Override
    public IncidentOutcome strikeCause(IncidentId id, UUID cause, PersonId by) {
        return guard.open(id, by, incident -> {
            Cause found = cause(id, cause).filter(one -> !one.struck()).orElse(null);
            if (found == null) {
                return new Refused("", "That cause is crossed out already.");
            }
            if (reviews.causes(id).stream().anyMatch(one -> !one.struck() && cause.equals(one.parent()))) {
                return new Refused("", "Other causes explain this one. Cross them out first.");
            }
            reviews.strike(cause, by, steps.now());
            return step(incident, Kind.CAUSE_STRUCK, found.branch().words() + ": " + found.words(), "", by);
        });
    }

    @Override
    public IncidentOutcome agree(IncidentId id, NewAction action, PersonId by) {
        return guard.open(id, by, incident -> {
            if (action.dueOn().isBefore(labTime.date(steps.now()))) {
                return new Refused("dueOn", "That day is over. Choose one that is ahead.");
            }
            actions.add(new CorrectiveAction(
                    Id.newValue(),
                    id,
                    action.words(),
                    action.level(),
                    action.owner(),
                    action.dueOn(),
                    by,
                    steps.now(),
                    null,
                    null));
            String words = action.words() + " (" + action.level().words() + "; " + people.printedName(action.owner())
                    + ", due " + labTime.day(action.dueOn()) + ")";
            return step(incident, Kind.ACTION_AGREED, words, "To be done: " + action.words(), by);
        });
    }

    @Override
    public IncidentOutcome answer(IncidentId id, String words, PersonId by) {
        return guard.open(id, by, incident -> step(incident, Kind.ANSWERED, words, words, by));
    }

    @Override
    public IncidentOutcome riskReviewed(
            IncidentId id, LocalDate on, String outcome, @Nullable Integer cellVersion, PersonId by) {
        return guard.open(id, by, incident -> {
            if (on.isAfter(labTime.date(steps.now()))) {
                return new Refused("reviewedOn", "That day has not come yet.");
            }
            if (cellVersion != null
                    && cells.version(incident.cell(), cellVersion).isEmpty()) {
                return new Refused("cellVersion", "The cell has no version " + cellVersion + ".");
            }
            reviews.add(id, new RiskReview(on, outcome, cellVersion, by, steps.now()));
            String version = cellVersion == null ? "the cell stays as it is" : "version " + cellVersion;
            return step(
                    incident,
                    Kind.RISK_ASSESSMENT,
                    "Reviewed " + labTime.day(on) + ": " + outcome + " (" + version + ")",
                    "The cell's risk assessment was reviewed.",
                    by);
        });
    }

    @Override
    public IncidentOutcome approveRestart(IncidentId id, String words, PersonId by) {
        return guard.open(id, by, incident -> {
            if (!incident.kind().holdsCell()) {
                return new Refused("", "This class holds no cell; there is no restart to approve.");
            }
            if (reviews.restart(id).isPresent()) {
                return new Refused("", "The restart is approved already.");
            }
            reviews.add(id, new Incidents.Restart(by, steps.now(), words));
            return step(
                    incident,
                    Kind.RESTART_APPROVED,
                    words,
                    "The restart is approved. Staff put the cell back after the test list.",
                    by);
        });
    }

    @Override
    public List<String> missing(Incident incident, PersonId by) {
        return missing(incident, "", by);
    }

    private List<String> missing(Incident incident, String whyOnlyWeak, PersonId by) {
        IncidentId id = incident.id();
        return ReviewRules.missing(new ReviewRules.ClosingQuestion(
                incident,
                level(incident),
                reviews.causes(id),
                actions.of(id),
                reviews.restart(id).isPresent(),
                !reviews.riskReviews(id).isEmpty(),
                guard.isSafetyReviewer(by),
                guard.isInstructor(by) ? whyOnlyWeak : ""));
    }

    @Override
    public IncidentOutcome close(IncidentId id, Closing closing, PersonId by) {
        return guard.open(id, by, incident -> {
            List<String> missing = missing(incident, closing.whyOnlyWeak(), by);
            if (!missing.isEmpty()) {
                return new Refused("", "Not closed. " + String.join(" ", missing));
            }
            rows.change(Changes.closed(incident, steps.now()));
            String weak = closing.whyOnlyWeak().isBlank()
                    ? ""
                    : " Closed on rules and equipment alone, because: " + closing.whyOnlyWeak();
            return step(
                    incident,
                    Kind.CLOSED,
                    closing.words() + weak,
                    "It is closed. What was learned: " + closing.words(),
                    by);
        });
    }

    private IncidentOutcome step(Incident incident, Kind kind, String words, String forReporter, PersonId by) {
        steps.take(incident, new Steps.Taken(kind, words, forReporter, by));
        return new Done(incident.id());
    }
}
