package org.standclear.booking.allocation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What people are told about a window, in the transaction of the act; each reads of their own part only. */
@Component
class WindowLetters {

    private final Messages messages;
    private final TurnRequests requests;
    private final Plans plans;
    private final Cells cells;
    private final LabTime labTime;

    WindowLetters(Messages messages, TurnRequests requests, Plans plans, Cells cells, LabTime labTime) {
        this.messages = messages;
        this.requests = requests;
        this.plans = plans;
        this.cells = cells;
        this.labTime = labTime;
    }

    /** A plan was accepted: who runs when, who stands at which e-stop, who is left out and why. */
    void accepted(Window window, Window.Accepted plan) {
        Map<PersonId, List<String>> lines = new LinkedHashMap<>();
        for (PlannedTurn place : plans.places(plan.search())) {
            String where = labTime.day(place.start()) + ", " + labTime.times(place.start(), place.end()) + ", "
                    + name(place.cell());
            line(lines, place.operator(), where + ": you run");
            line(lines, place.attendant(), where + ": you stand at the e-stop");
        }
        plans.leftOut(plan.search())
                .forEach(one ->
                        line(lines, one.operator(), "Turn " + (one.turn() + 1) + " has no place: " + one.says()));
        lines.forEach((person, own) ->
                tell(window, person, "plan-accepted", "\"" + window.title() + "\" is shared out", own));
    }

    /** The accepted plan was taken back: those who were left out have to hear of it too. */
    void undone(Window window, Window.Accepted plan) {
        List<String> lines =
                new ArrayList<>(List.of("What you were told of your turns holds no more. What you asked for"
                        + " still counts, and you are told when there is another plan."));
        if (window.requestsUntil().isAfter(labTime.now())) {
            lines.add("It can be changed until " + labTime.full(window.requestsUntil()) + ".");
        }
        Set<PersonId> told = new LinkedHashSet<>();
        for (PlannedTurn place : plans.places(plan.search())) {
            told.add(place.operator());
            told.add(place.attendant());
        }
        plans.leftOut(plan.search()).forEach(one -> told.add(one.operator()));
        told.forEach(person ->
                tell(window, person, "plan-undone", "The plan for \"" + window.title() + "\" was taken back", lines));
    }

    /** It ends without a plan. */
    void closed(Window window, String reason) {
        everybody(
                window,
                "window-closed",
                "\"" + window.title() + "\" was closed without a plan",
                List.of(
                        "Why: " + reason,
                        "Nobody gets turns through it, and nothing is counted. Book single slots instead."));
    }

    /** It goes on after all. */
    void reopened(Window window) {
        List<String> lines = new ArrayList<>(List.of("What you asked for counts again."));
        if (window.takesRequests(labTime.now())) {
            lines.add("It can be changed until " + labTime.full(window.requestsUntil()) + ".");
        }
        everybody(window, "window-reopened", "\"" + window.title() + "\" is open again", lines);
    }

    private static void line(Map<PersonId, List<String>> lines, PersonId person, String line) {
        lines.computeIfAbsent(person, key -> new ArrayList<>()).add(line);
    }

    /** Who asked, and who was named as a partner. */
    private void everybody(Window window, String kind, String subject, List<String> lines) {
        Set<PersonId> asked = new LinkedHashSet<>();
        requests.of(window.id()).stream()
                .flatMap(request -> Stream.concat(Stream.of(request.operator()), Stream.ofNullable(request.partner())))
                .forEach(asked::add);
        asked.forEach(person -> tell(window, person, kind, subject, lines));
    }

    private void tell(Window window, PersonId person, String kind, String subject, List<String> lines) {
        messages.tell(Message.of(person, kind, subject, lines, "/windows/" + window.id()));
    }

    private String name(CellId cell) {
        return cells.find(cell).map(Cell::name).orElse("a cell");
    }
}
