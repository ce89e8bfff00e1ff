package org.standclear.simulation;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.IncidentReviews.Classification;
import org.standclear.incident.IncidentReviews.Closing;
import org.standclear.incident.IncidentReviews.NewAction;
import org.standclear.incident.IncidentReviews.NewCause;
import org.standclear.incident.IncidentState;
import org.standclear.incident.Incidents.Filter;
import org.standclear.incident.ReporterPart;
import org.standclear.incident.Severity;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** What is reported, and the way from there to a closed incident; each step may be taken by the wrong person, or forgotten. */
final class IncidentActs {

    private static final List<CauseBranch> BRANCHES = List.of(CauseBranch.values());

    private final Lab lab;

    IncidentActs(Lab lab) {
        this.lab = lab;
    }

    /** Of any class, by anybody, with a name or without. */
    String report(CellId cell) {
        IncidentClass kind = lab.chance.one(List.of(IncidentClass.values()));
        Person who = lab.chance.one(lab.cast.everybody());
        Teller teller = switch (lab.chance.between(0, 5)) {
            case 0 -> new Teller.Anonymous();
            case 1 -> new Teller.AtScreen(lab.cast.screen.id());
            default -> new Teller.Named(who.id(), lab.chance.one(List.of(ReporterPart.values())));
        };
        Report told = Report.brief(cell, kind, "Something was odd at the arm", teller);
        if (teller instanceof Teller.Named && lab.chance.percent(30)) {
            told = new Report(cell, kind, told.sentence(), lab.clock.instant(), teller, null, form());
        }
        return kind + " on " + lab.cast.name(cell) + " "
                + Lab.word(lab.doors.reports().report(told));
    }

    private Incident.Form form() {
        List<Severity> all = List.of(Severity.values());
        return new Incident.Form(
                "It came to a stop by itself.", "", lab.chance.one(all), lab.chance.one(all), Set.of());
    }

    /** The incidents on the cell that are not closed, the first of them first. */
    List<Incident> open(CellId cell) {
        List<Incident> found = new ArrayList<>();
        for (IncidentState state : List.of(IncidentState.OPEN, IncidentState.IN_REVIEW)) {
            found.addAll(lab.doors
                    .incidents()
                    .page(new Filter(cell, state, null, null), null, 20)
                    .incidents());
        }
        return found;
    }

    /** Whether an incident keeps the cell from coming back. */
    boolean waits(CellId cell) {
        return open(cell).stream()
                .anyMatch(one -> one.holdsCell()
                        && lab.doors.incidents().restart(one.id()).isEmpty());
    }

    /** One step on with one of the cell's incidents; with one that keeps the cell if there is any. */
    String goOn(CellId cell) {
        List<Incident> open = open(cell);
        if (open.isEmpty()) {
            return lookAgain();
        }
        Incident one = open.stream()
                .filter(incident -> incident.holdsCell()
                        && lab.doors.incidents().restart(incident.id()).isEmpty())
                .findFirst()
                .orElseGet(() -> lab.chance.one(open));
        PersonId by = lab.chance.percent(60) ? lab.cast.reviewer.id() : lab.cast.instructor.id();
        if (lab.chance.percent(10)) {
            return "states " + Lab.word(lab.doors.reports().state(one.id(), "I saw it stop.", by));
        }
        return lab.chance.percent(8) ? odd(one, by) : "no. " + one.number() + " " + due(one, by);
    }

    private String due(Incident one, PersonId by) {
        IncidentId id = one.id();
        if (one.formIsDue()) {
            PersonId filler = lab.chance.percent(50)
                    ? by
                    : lab.chance.one(lab.cast.staff()).id();
            return "form " + Lab.word(lab.doors.reports().fill(id, one.kind(), form(), filler));
        }
        if (one.state() == IncidentState.OPEN) {
            return "take " + Lab.word(lab.doors.reviews().take(id, by));
        }
        long causes = lab.doors.incidents().causes(id).stream()
                .map(cause -> cause.branch())
                .distinct()
                .count();
        if (causes < 3) {
            CauseBranch branch = BRANCHES.get((int) causes);
            return "cause " + Lab.word(lab.doors.reviews().addCause(id, new NewCause(branch, null, "Because"), by));
        }
        return one.kind().holdsCell() ? held(one, by) : actions(one, by);
    }

    private String held(Incident one, PersonId by) {
        IncidentId id = one.id();
        if (lab.doors.incidents().restart(id).isEmpty()) {
            return "restart " + Lab.word(lab.doors.reviews().approveRestart(id, "Looked over and tried", by));
        }
        if (lab.doors.incidents().riskReviews(id).isEmpty()) {
            return "risk review "
                    + Lab.word(lab.doors.reviews().riskReviewed(id, lab.today(), "Looked at, stays", null, by));
        }
        return actions(one, by);
    }

    private String actions(Incident one, PersonId by) {
        List<CorrectiveAction> all = lab.doors.actions().of(one.id());
        if (all.isEmpty()) {
            NewAction action = new NewAction(
                    "Put a cover on it",
                    lab.chance.one(List.of(ControlLevel.values())),
                    lab.chance.one(lab.cast.staff()).id(),
                    lab.today().plusDays(7));
            return "action " + Lab.word(lab.doors.reviews().agree(one.id(), action, by));
        }
        for (CorrectiveAction action : all) {
            if (action.done() == null) {
                return "done " + Lab.word(lab.doors.actions().done(action.id(), "Done and tried", action.owner()));
            }
        }
        return "close "
                + Lab.word(
                        lab.doors.reviews().close(one.id(), new Closing("Learned", "Nothing stronger fits here"), by));
    }

    /** What people also do: out of turn, of another class, by somebody who had a part in it. */
    private String odd(Incident one, PersonId by) {
        List<Supplier<String>> acts = List.of(
                () -> "class "
                        + Lab.word(lab.doors
                                .reviews()
                                .classify(
                                        one.id(),
                                        new Classification(
                                                lab.chance.one(List.of(IncidentClass.values())),
                                                Severity.NONE,
                                                Severity.TREATMENT,
                                                "On a second look"),
                                        by)),
                () -> "restart too soon "
                        + Lab.word(lab.doors
                                .reviews()
                                .approveRestart(
                                        one.id(),
                                        "Looks fine",
                                        lab.chance.one(lab.cast.staff()).id())),
                () -> "form again "
                        + Lab.word(lab.doors
                                .reports()
                                .fill(
                                        one.id(),
                                        IncidentClass.REPORTABLE,
                                        form(),
                                        lab.chance.one(lab.cast.everybody()).id())),
                () -> "close too soon "
                        + Lab.word(lab.doors.reviews().close(one.id(), new Closing("Nothing", ""), by)));
        return lab.chance.one(acts).get();
    }

    /** Whether what was done helped; what did not opens its incident again. */
    private String lookAgain() {
        List<CorrectiveAction> waiting =
                lab.doors.actions().unsettled(new CorrectiveActions.Whose.Everybody(), null, 50).actions().stream()
                        .filter(one -> one.done() != null
                                && one.done().at().plus(Duration.ofDays(30)).isBefore(lab.clock.instant()))
                        .toList();
        return waiting.isEmpty()
                ? "nothing to look at"
                : "helped "
                        + Lab.word(lab.doors
                                .actions()
                                .check(
                                        waiting.get(0).id(),
                                        lab.chance.percent(80),
                                        "Looked at it",
                                        lab.cast.reviewer.id()));
    }
}
