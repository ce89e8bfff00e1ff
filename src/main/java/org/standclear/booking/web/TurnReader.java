package org.standclear.booking.web;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.CellFit;
import org.standclear.booking.allocation.TurnPartners;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.booking.allocation.Window;
import org.standclear.cell.Cells;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Reads what somebody asks for in a window from the form, or says of each field why it cannot be. */
@Component
class TurnReader {

    private final WindowTimes times;
    private final Cells cells;
    private final Courses courses;
    private final People people;
    private final Authorisations authorisations;
    private final CellFit fit;
    private final TurnPartners partners;
    private final LabTime labTime;

    TurnReader(
            WindowTimes times,
            Cells cells,
            Courses courses,
            People people,
            Authorisations authorisations,
            CellFit fit,
            TurnPartners partners,
            LabTime labTime) {
        this.times = times;
        this.cells = cells;
        this.courses = courses;
        this.people = people;
        this.authorisations = authorisations;
        this.fit = fit;
        this.partners = partners;
        this.labTime = labTime;
    }

    /** The request; empty when a field cannot be, which then stands in the errors. */
    Optional<TurnRequest> read(Window window, TurnForm form, SignedInPerson me, Map<String, String> errors) {
        if (!window.takesRequests(labTime.now())) {
            errors.put("", "Requests for this window have ended; nothing was changed.");
            return Optional.empty();
        }
        Map<String, Span> pieces = times.pieces(window);
        int turns = form.turns(Problem.MOST_TURNS_EACH, errors);
        if (turns == 0 && !form.offers()) {
            errors.putIfAbsent("turns", "Ask for at least one turn, or offer to stand at the e-stop for others.");
        }
        List<Span> canCome = form.canCome(pieces, errors);
        List<Span> wishes = form.wishes(pieces, errors);
        AssignmentId assignment = assignment(form, me, errors);
        String tool = tool(form, assignment, errors);
        if (turns > 0 && !hold(me.id(), Duty.OPERATOR)) {
            errors.put("turns", "You are not authorised as operator. Lab staff enter that after the induction.");
        }
        if (form.offers() && !hold(me.id(), Duty.ATTENDANT)) {
            errors.put(
                    "attends", "You are not authorised as e-stop attendant. Lab staff enter that after the induction.");
        }
        PersonId partner = partner(window, form, me, errors);
        return errors.isEmpty()
                ? Optional.of(new TurnRequest(
                        Id.newValue(),
                        window.id(),
                        me.id(),
                        partner,
                        assignment,
                        tool,
                        turns,
                        form.offers(),
                        false,
                        canCome,
                        wishes))
                : Optional.empty();
    }

    private String tool(TurnForm form, @Nullable AssignmentId assignment, Map<String, String> errors) {
        String tool = form.tool() == null ? "" : form.tool();
        if (!tools().containsKey(tool)) {
            errors.put("tool", "Choose a tool that a cell has.");
        }
        fit.toolOf(assignment)
                .filter(needed -> !needed.equals(tool))
                .ifPresent(needed -> errors.putIfAbsent("tool", "This assignment needs the tool " + needed + "."));
        return tool;
    }

    private @Nullable AssignmentId assignment(TurnForm form, SignedInPerson me, Map<String, String> errors) {
        String text = form.assignment() == null ? "" : form.assignment();
        if (text.isBlank()) {
            return null;
        }
        return courses.assignmentsOf(me.id()).stream()
                .map(one -> one.id())
                .filter(id -> id.toString().equals(text))
                .findFirst()
                .orElseGet(() -> {
                    errors.put("assignment", "Choose an assignment of yours.");
                    return null;
                });
    }

    private @Nullable PersonId partner(Window window, TurnForm form, SignedInPerson me, Map<String, String> errors) {
        String login = form.partner() == null ? "" : form.partner().strip();
        if (login.isEmpty()) {
            return null;
        }
        Optional<Person> partner = people.byLogin(login).filter(Person::active);
        if (partner.isEmpty() || !hold(partner.get().id(), Duty.ATTENDANT)) {
            errors.put(
                    "partner",
                    "Nobody of that sign-in name is authorised as e-stop attendant. Empty: somebody else attends.");
            return null;
        }
        if (partner.get().id().equals(me.id())) {
            errors.put("partner", "The partner is another person: nobody attends the own run.");
            return null;
        }
        if (partners.declinersOf(window.id(), me.id()).contains(partner.get().id())) {
            errors.put(
                    "partner",
                    partner.get().printedName() + " has declined to be your partner in this window. Name somebody else,"
                            + " or leave it empty: then the plan finds an attendant.");
            return null;
        }
        return partner.get().id();
    }

    private boolean hold(PersonId person, Duty duty) {
        return authorisations.of(person).stream()
                .filter(one -> one.duty() == duty)
                .map(Authorisation::validUntil)
                .anyMatch(until -> until.isAfter(labTime.now()));
    }

    /** The tools that cells have. */
    Map<String, String> tools() {
        Set<String> fitted = new LinkedHashSet<>();
        Map<org.standclear.platform.ids.CellId, String> tools = cells.fittedTools();
        cells.all().stream()
                .map(cell -> tools.get(cell.id()))
                .filter(tool -> tool != null)
                .forEach(fitted::add);
        Map<String, String> words = new LinkedHashMap<>();
        fitted.forEach(tool -> words.put(tool, tool));
        return words;
    }
}
