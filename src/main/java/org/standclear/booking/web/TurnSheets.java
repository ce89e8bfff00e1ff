package org.standclear.booking.web;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.allocation.PlannedTurn;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Search;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.TurnPartners;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.booking.allocation.TurnRequests;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.WindowClosing;
import org.standclear.cell.Cells;
import org.standclear.core.allocation.Span;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** A window's page: what the reader asks for and got; for instructors also all requests and searches. */
@Component
class TurnSheets {

    private static final int TIMES_SHOWN = 4;

    private final TurnRequests requests;
    private final TurnPartners partners;
    private final Searches searches;
    private final Plans plans;
    private final Bookings bookings;
    private final WindowClosing closing;
    private final TurnReader reader;
    private final WindowTimes times;
    private final Cells cells;
    private final Courses courses;
    private final People people;
    private final LabTime labTime;

    TurnSheets(
            TurnRequests requests,
            TurnPartners partners,
            Searches searches,
            Plans plans,
            Bookings bookings,
            WindowClosing closing,
            TurnReader reader,
            WindowTimes times,
            Cells cells,
            Courses courses,
            People people,
            LabTime labTime) {
        this.requests = requests;
        this.partners = partners;
        this.searches = searches;
        this.plans = plans;
        this.bookings = bookings;
        this.closing = closing;
        this.reader = reader;
        this.times = times;
        this.cells = cells;
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
        model.addAttribute("got", got(window, me.id()));
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
        model.addAttribute(
                "naming",
                window.isUndecided()
                        ? partners.naming(window.id(), me).stream()
                                .map(one -> new NamedLine(
                                        one.operator(),
                                        people.printedName(one.operator()),
                                        one.turns() + ", " + one.times()))
                                .toList()
                        : List.of());
        model.addAttribute(
                "declined",
                window.isUndecided()
                        ? partners.declinedBy(window.id(), me).stream()
                                .map(one -> new NamedLine(one, people.printedName(one), ""))
                                .toList()
                        : List.of());
        model.addAttribute(
                "decliners",
                partners.declinersOf(window.id(), me).stream()
                        .map(people::printedName)
                        .toList());
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
                .forEach(place -> lines.add(line(place, me)));
        plans.leftOut(accepted.search()).stream()
                .filter(one -> one.operator().equals(me))
                .forEach(one -> lines.add("Turn " + (one.turn() + 1) + " left out: " + one.says()));
        return lines;
    }

    /** As it stands now: since the plan was accepted staff may have moved it, and people may have given it up. */
    private String line(PlannedTurn place, PersonId me) {
        Booking booking =
                Optional.ofNullable(place.booking()).flatMap(bookings::find).orElse(null);
        boolean runs = place.operator().equals(me);
        String part = runs ? ": you run" : ": you stand at the e-stop";
        if (booking == null) {
            return slot(place.cell(), place.start(), place.end()) + part;
        }
        String slot = slot(booking.cell(), booking.start(), booking.end());
        if (!booking.state().holdsItsSlot()) {
            return slot + ": " + booking.state().words();
        }
        if (!runs && !me.equals(booking.attendant())) {
            return slot + ": you are not needed at the e-stop";
        }
        boolean moved = !booking.cell().equals(place.cell()) || !booking.start().equals(place.start());
        return slot + part + (moved ? ", moved by staff" : "");
    }

    private String slot(CellId cell, Instant start, Instant end) {
        return labTime.day(start) + ", " + labTime.time(start) + "-" + labTime.time(end) + ", "
                + cells.find(cell).map(found -> found.name()).orElse("a cell");
    }

    private List<RequestLine> lines(Window window) {
        return requests.of(window.id()).stream()
                .map(request -> new RequestLine(
                        people.printedName(request.operator()), partner(request), wants(request), times(request)))
                .toList();
    }

    private String partner(TurnRequest request) {
        if (request.turns() == 0) {
            return "";
        }
        return request.partner() == null ? "needs one" : people.printedName(request.partner());
    }

    private static String wants(TurnRequest request) {
        if (request.turns() == 0) {
            return "to stand at the e-stop of others";
        }
        return (request.turns() == 1 ? "1 turn" : request.turns() + " turns") + " with " + request.tool()
                + (request.attends() ? ", attends others" : "");
    }

    private String times(TurnRequest request) {
        List<Span> times = Span.joined(request.canCome());
        String first = times.stream()
                .limit(TIMES_SHOWN)
                .map(span -> labTime.datedSpan(span.from(), span.until()))
                .collect(Collectors.joining(", "));
        int more = times.size() - TIMES_SHOWN;
        return more > 0 ? first + " and " + more + " more" : first;
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
