package org.standclear.core.allocation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.allocation.LeftOut.Rule;
import org.standclear.core.allocation.Places.Hindrance;

/** Says for each turn that a plan leaves out why, by our own rules. */
public final class Reasons {

    private final Problem problem;
    private final Places places;

    public Reasons(Problem problem) {
        this.problem = problem;
        this.places = new Places(problem);
    }

    /** In the order of the problem's turns. */
    public List<LeftOut> of(Plan plan) {
        Map<String, Placed> placed = plan.byTurn();
        Taken taken = taken(plan, placed);
        return problem.turns().stream()
                .filter(turn -> !placed.containsKey(turn.id()))
                .map(turn -> reason(turn, taken))
                .toList();
    }

    /** What the plan's places take up. */
    private record Taken(Map<String, List<Span>> cells, Map<String, List<Span>> people) {

        boolean cell(Place place, Span whole) {
            return cells.getOrDefault(place.cell(), List.of()).stream().anyMatch(whole::overlaps);
        }

        boolean person(@Nullable String person, Span span) {
            return person != null
                    && people.getOrDefault(person, List.of()).stream().anyMatch(span::overlaps);
        }
    }

    private Taken taken(Plan plan, Map<String, Placed> placed) {
        Taken taken = new Taken(new HashMap<>(), new HashMap<>());
        for (Placed one : plan.placed()) {
            taken.cells().computeIfAbsent(one.cell(), key -> new ArrayList<>()).add(one.span());
            taken.people()
                    .computeIfAbsent(one.attendant(), key -> new ArrayList<>())
                    .add(one.span());
        }
        for (Turn turn : problem.turns()) {
            Placed one = placed.get(turn.id());
            if (one != null) {
                taken.people()
                        .computeIfAbsent(turn.operator(), key -> new ArrayList<>())
                        .add(one.span());
            }
        }
        return taken;
    }

    private LeftOut reason(Turn turn, Taken taken) {
        Hindrance hindrance = places.lastHindrance(turn);
        if (hindrance != null) {
            return new LeftOut(turn.id(), rule(hindrance), says(hindrance, turn));
        }
        List<Place> could = places.of(turn);
        List<Place> cellFree =
                could.stream().filter(place -> !taken.cell(place, whole(place))).toList();
        if (cellFree.isEmpty()) {
            return allTaken(turn, could, taken);
        }
        return cellIsFree(turn, cellFree, taken);
    }

    /** Who asked for several turns may have the places themselves: then it is not others who are in the way. */
    private static LeftOut allTaken(Turn turn, List<Place> could, Taken taken) {
        long own = could.stream()
                .filter(place ->
                        taken.person(turn.operator(), place.span()) || taken.person(turn.partner(), place.span()))
                .count();
        String fit = could.size() + (could.size() == 1 ? " place fits" : " places fit") + " these times, and ";
        String more = " More times to come would help.";
        if (own == could.size()) {
            return new LeftOut(
                    turn.id(),
                    Rule.OWN_TURNS,
                    fit + "the same people have another turn or stand at an e-stop then." + more);
        }
        return new LeftOut(
                turn.id(),
                Rule.TAKEN,
                fit
                        + (own > 0
                                ? "others have them or the same people have another turn then"
                                : "others have " + (could.size() == 1 ? "it" : "all of them"))
                        + ": there are more turns than slots." + more);
    }

    private LeftOut cellIsFree(Turn turn, List<Place> cellFree, Taken taken) {
        List<Place> peopleFree = cellFree.stream()
                .filter(place ->
                        !taken.person(turn.operator(), place.span()) && !taken.person(turn.partner(), place.span()))
                .toList();
        if (peopleFree.isEmpty()) {
            return new LeftOut(
                    turn.id(),
                    Rule.OWN_TURNS,
                    "At the times that are still free the same people have another turn or stand at an e-stop.");
        }
        boolean attended = turn.partner() != null
                || peopleFree.stream()
                        .anyMatch(place -> problem.attendants().stream()
                                .anyMatch(one -> places.mayAttend(one, turn, place)
                                        && !taken.person(one.person(), place.span())));
        return attended
                ? new LeftOut(
                        turn.id(),
                        Rule.NOT_FOUND,
                        "A place was still free when the search ended. Search again: the next search begins from another number.")
                : new LeftOut(
                        turn.id(),
                        Rule.ATTENDANTS_TAKEN,
                        "A cell is free at these times, but every e-stop attendant who could come stands at another."
                                + " One more attendant would help.");
    }

    private Span whole(Place place) {
        FreeSlot last = problem.slots().get(place.slots().get(place.slots().size() - 1));
        return new Span(place.span().from(), last.span().until());
    }

    private static Rule rule(Hindrance hindrance) {
        return switch (hindrance) {
            case TOOL -> Rule.TOOL;
            case FEATURES -> Rule.NEEDS;
            case LENGTH -> Rule.LENGTH;
            case WINDOW -> Rule.WINDOW;
            case TIMES -> Rule.TIMES;
            case CLOSED -> Rule.CLOSED;
            case BUSY -> Rule.BUSY;
            case PARTNER -> Rule.PARTNER;
            case ATTENDANT -> Rule.ATTENDANT;
        };
    }

    /** The partner's time and authorisation would do, but the lab keeps somebody else for the turn. */
    private boolean isNoHelper(Turn turn) {
        return turn.work().helper()
                && problem.attendants().stream().noneMatch(one -> one.person().equals(turn.partner()) && one.helper());
    }

    private String says(Hindrance hindrance, Turn turn) {
        return switch (hindrance) {
            case TOOL ->
                "No cell in this window carries the tool " + turn.work().tool() + ".";
            case FEATURES -> "No cell in this window has what this turn needs.";
            case LENGTH -> "No cell has " + turn.work().minutes() + " minutes free without a gap.";
            case WINDOW -> "No free slot lies before the due date.";
            case TIMES -> "No free slot lies within the times given; more times to come would help.";
            case CLOSED -> "The lab or the cell is kept for something else at all times given.";
            case BUSY -> "The operator has another booking at all times given.";
            case PARTNER ->
                isNoHelper(turn)
                        ? "The partner cannot be who attends this turn. Ask without a partner, and the plan finds"
                                + " somebody who can; or ask lab staff."
                        : "The partner has another booking at all times given, or is not authorised as e-stop"
                                + " attendant there. Ask for other times, or without a partner.";
            case ATTENDANT -> "No e-stop attendant can come at any of the times given.";
        };
    }
}
