package org.standclear.booking.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.RequestWords;
import org.standclear.booking.allocation.Search;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.TurnPartners;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.booking.allocation.TurnRequests;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.WindowClosing;
import org.standclear.core.allocation.Span;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** A window's page: what the reader asks for and got; for instructors also all requests and searches. */
@Component
class TurnSheets {

    private final TurnRequests requests;
    private final TurnPartners partners;
    private final Searches searches;
    private final Plans plans;
    private final OwnPlaces places;
    private final WindowClosing closing;
    private final TurnReader reader;
    private final WindowTimes times;
    private final Courses courses;
    private final People people;
    private final LabTime labTime;

    TurnSheets(
            TurnRequests requests,
            TurnPartners partners,
            Searches searches,
            Plans plans,
            OwnPlaces places,
            WindowClosing closing,
            TurnReader reader,
            WindowTimes times,
            Courses courses,
            People people,
            LabTime labTime) {
        this.requests = requests;
        this.partners = partners;
        this.searches = searches;
        this.plans = plans;
        this.places = places;
        this.closing = closing;
        this.reader = reader;
        this.times = times;
        this.courses = courses;
        this.people = people;
        this.labTime = labTime;
    }

    /** One request, for instructors. */
    record RequestLine(String who, String partner, String wants, String times) {}

    /** Somebody who names the reader as partner, or did. */
    record NamedLine(PersonId operator, String who, String wants) {}

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

    String page(Window window, TurnForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        Map<String, Span> pieces = times.pieces(window);
        Optional<TurnRequest> own = requests.of(window.id(), me.id());
        model.addAttribute("window", window);
        model.addAttribute("days", days(window, labTime));
        model.addAttribute("firstDayWords", labTime.day(window.firstDay()));
        model.addAttribute("acceptedSays", accepted(window));
        model.addAttribute("firstDay", window.firstDay().toString());
        model.addAttribute("leftOut", isLeftOut(window, me.id()));
        model.addAttribute("headline", headline(window));
        model.addAttribute("closed", closed(window));
        model.addAttribute("begun", closing.isBegun(window));
        model.addAttribute("open", window.takesRequests(labTime.now()));
        model.addAttribute("asked", own.isPresent());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("timeDays", times.days(pieces));
        model.addAttribute("wishes", times.words(pieces));
        model.addAttribute("tools", reader.tools());
        model.addAttribute("assignments", assignments(me));
        model.addAttribute("got", places.got(window, me.id()));
        partners(window, me.id(), model);
        model.addAttribute("leads", me.is(Role.INSTRUCTOR));
        if (me.is(Role.INSTRUCTOR)) {
            model.addAttribute("requests", lines(window));
            model.addAttribute("searches", searchLines(window));
        }
        return "booking/window";
    }

    /** Who counts on the reader at the e-stop, and who does not count on whom any more. */
    private void partners(Window window, PersonId me, Model model) {
        List<TurnPartners.Asked> naming = window.isUndecided() ? partners.naming(window.id(), me) : List.of();
        List<PersonId> declined = window.isUndecided() ? partners.declinedBy(window.id(), me) : List.of();
        List<PersonId> decliners = partners.declinersOf(window.id(), me);
        Map<PersonId, String> names = people.printedNames(
                Stream.of(naming.stream().map(TurnPartners.Asked::operator), declined.stream(), decliners.stream())
                        .flatMap(those -> those)
                        .toList());
        model.addAttribute(
                "naming",
                naming.stream()
                        .map(one -> new NamedLine(
                                one.operator(),
                                names.getOrDefault(one.operator(), People.UNKNOWN),
                                one.turns() + ", " + one.times()))
                        .toList());
        model.addAttribute(
                "declined",
                declined.stream()
                        .map(one -> new NamedLine(one, names.getOrDefault(one, People.UNKNOWN), ""))
                        .toList());
        model.addAttribute("decliners", decliners.stream().map(names::get).toList());
    }

    /** "Mon 23 Nov to Fri 27 Nov", or the one day. */
    static String days(Window window, LabTime labTime) {
        String first = labTime.day(window.firstDay());
        return window.firstDay().equals(window.lastDay()) ? first : first + " to " + labTime.day(window.lastDay());
    }

    private boolean isLeftOut(Window window, PersonId me) {
        Window.Accepted accepted = window.accepted();
        return accepted != null
                && plans.leftOut(accepted.search()).stream()
                        .anyMatch(one -> one.operator().equals(me));
    }

    private String headline(Window window) {
        if (window.accepted() != null) {
            return "The slots are shared out";
        }
        if (window.closed() != null) {
            return "Closed without a plan";
        }
        if (closing.isBegun(window)) {
            return "No plan was made; book single slots";
        }
        return window.takesRequests(labTime.now())
                ? "Say by " + labTime.full(window.requestsUntil()) + " when you can come"
                : "Requests have ended; a plan is being made";
    }

    private String closed(Window window) {
        Window.Closed closed = window.closed();
        return closed == null
                ? ""
                : "By " + people.printedName(closed.by()) + ", " + labTime.full(closed.at()) + ": " + closed.reason();
    }

    private String accepted(Window window) {
        Window.Accepted accepted = window.accepted();
        return accepted == null
                ? ""
                : "Accepted by " + people.printedName(accepted.by()) + ", " + labTime.full(accepted.at()) + ".";
    }

    private Map<String, String> assignments(SignedInPerson me) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("", "none");
        courses.assignmentsOf(me.id())
                .forEach(one -> words.put(one.id().toString(), one.title() + ", due " + labTime.full(one.due())));
        return words;
    }

    private List<RequestLine> lines(Window window) {
        List<TurnRequest> asked = requests.of(window.id());
        Map<PersonId, String> names = people.printedNames(asked.stream()
                .flatMap(request -> Stream.of(request.operator(), request.partner()))
                .filter(Objects::nonNull)
                .toList());
        return asked.stream()
                .map(request -> new RequestLine(
                        names.getOrDefault(request.operator(), People.UNKNOWN),
                        partner(request, names),
                        wants(request),
                        RequestWords.times(request, labTime)))
                .toList();
    }

    private static String partner(TurnRequest request, Map<PersonId, String> names) {
        if (request.turns() == 0) {
            return "";
        }
        PersonId partner = request.partner();
        return partner == null ? "needs one" : names.getOrDefault(partner, People.UNKNOWN);
    }

    private static String wants(TurnRequest request) {
        if (request.turns() == 0) {
            return "to stand at the e-stop of others";
        }
        return RequestWords.turns(request) + (request.attends() ? ", attends others" : "");
    }

    private List<SearchLine> searchLines(Window window) {
        List<Search> begun = searches.of(window.id());
        Map<PersonId, String> names =
                people.printedNames(begun.stream().map(Search::begunBy).toList());
        return begun.stream()
                .map(search -> new SearchLine(
                        search.id(),
                        labTime.full(search.begunAt()),
                        names.getOrDefault(search.begunBy(), People.UNKNOWN),
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
