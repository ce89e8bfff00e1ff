package org.standclear.booking.web;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.booking.CellFit;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Search;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.booking.allocation.TurnRequests;
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
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** A window's page: what the reader asks for and got; for instructors also all requests and searches. */
@Component
class TurnSheets {

    private final TurnRequests requests;
    private final Searches searches;
    private final Plans plans;
    private final WindowTimes times;
    private final Cells cells;
    private final Courses courses;
    private final People people;
    private final Authorisations authorisations;
    private final CellFit fit;
    private final LabTime labTime;

    TurnSheets(
            TurnRequests requests,
            Searches searches,
            Plans plans,
            WindowTimes times,
            Cells cells,
            Courses courses,
            People people,
            Authorisations authorisations,
            CellFit fit,
            LabTime labTime) {
        this.requests = requests;
        this.searches = searches;
        this.plans = plans;
        this.times = times;
        this.cells = cells;
        this.courses = courses;
        this.people = people;
        this.authorisations = authorisations;
        this.fit = fit;
        this.labTime = labTime;
    }

    /** One request, for instructors. */
    record RequestLine(String who, String partner, String wants, String times) {}

    /** One search, for instructors. */
    record SearchLine(UUID id, String begun, String by, String state, String words) {}

    TurnForm form(Window window, SignedInPerson me) {
        return requests.of(window.id(), me.id())
                .map(request -> TurnForm.of(request, login(request.partner()), times.pieces(window)))
                .orElse(TurnForm.EMPTY);
    }

    private @Nullable String login(@Nullable PersonId partner) {
        return partner == null ? null : people.find(partner).map(Person::login).orElse(null);
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
        PersonId partner = partner(form, me, errors);
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

    private @Nullable PersonId partner(TurnForm form, SignedInPerson me, Map<String, String> errors) {
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
        return partner.get().id();
    }

    private boolean hold(PersonId person, Duty duty) {
        return authorisations.of(person).stream()
                .filter(one -> one.duty() == duty)
                .map(Authorisation::validUntil)
                .anyMatch(until -> until.isAfter(labTime.now()));
    }

    private Map<String, String> tools() {
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

    String page(Window window, TurnForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        Map<String, Span> pieces = times.pieces(window);
        Optional<TurnRequest> own = requests.of(window.id(), me.id());
        model.addAttribute("window", window);
        model.addAttribute("days", labTime.day(window.firstDay()) + " to " + labTime.day(window.lastDay()));
        model.addAttribute("until", labTime.full(window.requestsUntil()));
        model.addAttribute("open", window.takesRequests(labTime.now()));
        model.addAttribute("asked", own.isPresent());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("timeDays", times.days(pieces));
        model.addAttribute("wishes", times.words(pieces));
        model.addAttribute("tools", tools());
        model.addAttribute("assignments", assignments(me));
        model.addAttribute("got", got(window, me.id()));
        model.addAttribute("leads", me.is(Role.INSTRUCTOR));
        if (me.is(Role.INSTRUCTOR)) {
            model.addAttribute("requests", lines(window));
            model.addAttribute("searches", searchLines(window));
        }
        return "booking/window";
    }

    private Map<String, String> assignments(SignedInPerson me) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("", "none");
        courses.assignmentsOf(me.id())
                .forEach(one -> words.put(one.id().toString(), one.title() + ", due " + labTime.full(one.due())));
        return words;
    }

    /** The reader's own places and why others are missing; nothing of anybody else. */
    private List<String> got(Window window, PersonId me) {
        Window.Accepted accepted = window.accepted();
        if (accepted == null) {
            return List.of();
        }
        List<String> lines = new java.util.ArrayList<>();
        plans.places(accepted.search()).stream()
                .filter(place ->
                        place.operator().equals(me) || place.attendant().equals(me))
                .forEach(place -> lines.add(labTime.span(place.start(), place.end()) + ", "
                        + cells.find(place.cell()).map(cell -> cell.name()).orElse("a cell")
                        + (place.operator().equals(me) ? ": you run" : ": you stand at the e-stop")));
        plans.leftOut(accepted.search()).stream()
                .filter(one -> one.operator().equals(me))
                .forEach(one -> lines.add("Turn " + (one.turn() + 1) + " left out: " + one.says()));
        return lines;
    }

    private List<RequestLine> lines(Window window) {
        return requests.of(window.id()).stream()
                .map(request -> new RequestLine(
                        people.printedName(request.operator()),
                        request.partner() == null ? "needs an attendant" : people.printedName(request.partner()),
                        (request.turns() == 1 ? "1 turn" : request.turns() + " turns") + " with " + request.tool()
                                + (request.attends() ? ", attends others" : ""),
                        request.canCome().size() == 1
                                ? "1 stretch"
                                : request.canCome().size() + " stretches"))
                .toList();
    }

    private List<SearchLine> searchLines(Window window) {
        return searches.of(window.id()).stream()
                .map(search -> new SearchLine(
                        search.id(),
                        labTime.full(search.begunAt()),
                        people.printedName(search.begunBy()),
                        mark(search.state()),
                        search.state().words()))
                .toList();
    }

    static String mark(Search.State state) {
        return switch (state) {
            case RUNNING -> "running";
            case FOUND -> "finished";
            case STOPPED -> "stopped";
            case FAILED -> "failed";
            case LOST -> "lapsed";
        };
    }
}
