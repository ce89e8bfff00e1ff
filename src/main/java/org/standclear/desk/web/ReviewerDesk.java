package org.standclear.desk.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.cell.RecurringDuty;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.IncidentState;
import org.standclear.incident.Incidents;
import org.standclear.incident.ReviewLevel;
import org.standclear.people.People;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** The safety reviewer's start page: incidents that wait for a review, reviews of risk assessments, actions that are open or late. */
@Controller
class ReviewerDesk {

    private static final int MOST = 100;
    private static final int MOST_ACTIONS = 20;

    private final Incidents incidents;
    private final IncidentReviews reviews;
    private final CorrectiveActions actions;
    private final DatedDuties duties;
    private final People people;
    private final CellNames cellNames;
    private final LabTime labTime;
    private final Clock clock;

    ReviewerDesk(
            Incidents incidents,
            IncidentReviews reviews,
            CorrectiveActions actions,
            DatedDuties duties,
            People people,
            CellNames cellNames,
            LabTime labTime,
            Clock clock) {
        this.incidents = incidents;
        this.reviews = reviews;
        this.actions = actions;
        this.duties = duties;
        this.people = people;
        this.cellNames = cellNames;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** An incident that is not closed. */
    record Open(String href, String what, String sentence, String state, String words, String waits, String run) {}

    /** An action that is not settled. */
    record ToDo(String href, String what, String who, String state, String words) {}

    @GetMapping("/reviewer")
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        List<Incident> open = Stream.of(IncidentState.OPEN, IncidentState.IN_REVIEW)
                .flatMap(state ->
                        incidents.page(new Incidents.Filter(null, state, null, null), null, MOST).incidents().stream())
                .toList();
        CorrectiveActions.Page unsettled =
                actions.unsettled(new CorrectiveActions.Whose.Everybody(), null, MOST_ACTIONS);
        LocalDate today = labTime.today();
        int late = actions.counted(me.id()).overdue();
        model.addAttribute("headline", headline(open, late));
        model.addAttribute("open", open.stream().map(this::open).toList());
        model.addAttribute(
                "actions",
                unsettled.actions().stream().map(action -> toDo(action, today)).toList());
        model.addAttribute(
                "assessments",
                duties.all().stream()
                        .filter(one -> one.due().duty() == RecurringDuty.RISK_ASSESSMENT)
                        .map(duties::line)
                        .toList());
        model.addAttribute("moreActions", unsettled.next() != null);
        return "desk/reviewer";
    }

    private static String headline(List<Incident> open, long late) {
        long waiting = open.stream()
                .filter(incident -> incident.state() == IncidentState.OPEN)
                .count();
        String reviewsDue = waiting == 0
                ? "No incident waits for a review"
                : waiting == 1 ? "One incident waits for a review" : waiting + " incidents wait for a review";
        return reviewsDue + (late == 0 ? "; no action is overdue." : "; actions overdue: " + late + ".");
    }

    private Open open(Incident incident) {
        boolean restart =
                incident.holdsCell() && incidents.restart(incident.id()).isEmpty();
        String waits = incident.formIsDue()
                ? "The full form is " + (incident.formIsLate(clock.instant()) ? "overdue." : "due.")
                : restart ? "The cell waits for the restart." : "";
        String full = reviews.level(incident) == ReviewLevel.FULL_REVIEW
                ? " You close it: what could have happened is grave."
                : "";
        return new Open(
                "/incidents/" + incident.id(),
                "Incident " + incident.number() + ": " + incident.kind().words() + " on "
                        + cellNames.all().getOrDefault(incident.cell(), "a cell"),
                incident.sentence(),
                incident.state() == IncidentState.OPEN ? "due" : "checked",
                incident.state().words(),
                (waits + full).strip(),
                incident.run() == null ? "" : "/report/runs/" + incident.run());
    }

    private ToDo toDo(CorrectiveAction action, LocalDate today) {
        CorrectiveAction.Done done = action.done();
        String over = action.isOverdue(today) ? "overdue since " : "";
        String words = done == null
                ? (over.isEmpty() ? "due " : over) + labTime.day(action.dueOn())
                : "did it help? " + (over.isEmpty() ? "look on " : over) + labTime.day(done.checkDueOn());
        return new ToDo(
                "/incidents/" + action.incident(),
                action.words(),
                people.printedName(action.owner()) + " · " + action.level().words(),
                action.isOverdue(today) ? "due" : done == null ? "open" : "checked",
                words);
    }
}
