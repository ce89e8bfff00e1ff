package org.standclear.core.allocation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Says whether a plan keeps every rule. Asks each rule straight of the plan and shares nothing with the search for
 * places or with any solver, so that a mistake there is found here.
 */
public final class PlanRules {

    private final Problem problem;
    private final Map<String, Turn> turns;
    private final Map<String, Bench> benches;
    private final Map<String, Attendant> attendants;

    public PlanRules(Problem problem) {
        this.problem = problem;
        this.turns = problem.turns().stream().collect(Collectors.toMap(Turn::id, Function.identity()));
        this.benches = problem.benches().stream().collect(Collectors.toMap(Bench::cell, Function.identity()));
        this.attendants =
                problem.attendants().stream().collect(Collectors.toMap(Attendant::person, Function.identity()));
    }

    /** Every rule that the plan breaks, in words; none when it keeps all. */
    public List<String> broken(Plan plan) {
        List<String> broken = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Placed placed : plan.placed()) {
            Turn turn = turns.get(placed.turn());
            if (turn == null) {
                broken.add(placed.turn() + " was not asked for");
                continue;
            }
            if (!seen.add(turn.id())) {
                broken.add(turn.id() + " has two places");
            }
            place(turn, placed, broken);
            attendant(turn, placed, broken);
        }
        twoPlaces(plan, broken);
        return broken;
    }

    private void place(Turn turn, Placed placed, List<String> broken) {
        Bench bench = benches.get(placed.cell());
        if (bench == null || !bench.tools().contains(turn.work().tool())) {
            broken.add(turn.id() + " is on a cell that has not its tool");
        } else if (!bench.features().containsAll(turn.work().needs())) {
            broken.add(turn.id() + " is on a cell that has not what it needs");
        }
        Span expected = Span.minutes(placed.span().from(), turn.work().minutes());
        if (!expected.equals(placed.span())) {
            broken.add(turn.id() + " is not as long as it takes");
        }
        if (!isOnFreeSlots(placed)) {
            broken.add(turn.id() + " is not on free slots of the cell");
        }
        if (!turn.times().window().holds(placed.span())) {
            broken.add(turn.id() + " is outside its window");
        }
        if (turn.times().canCome().stream().noneMatch(span -> span.holds(placed.span()))) {
            broken.add(turn.id() + " is when its people cannot come");
        }
        if (problem.closed().stream()
                .anyMatch(closed -> (closed.cell() == null || closed.cell().equals(placed.cell()))
                        && closed.span().overlaps(placed.span()))) {
            broken.add(turn.id() + " is when the cell is kept for something else");
        }
    }

    /** From a slot's start on, without a gap, until the end. */
    private boolean isOnFreeSlots(Placed placed) {
        TreeMap<Instant, Instant> slots = new TreeMap<>();
        problem.slots().stream()
                .filter(slot -> slot.cell().equals(placed.cell()))
                .forEach(slot -> slots.put(slot.span().from(), slot.span().until()));
        Instant at = placed.span().from();
        while (at.isBefore(placed.span().until())) {
            Instant next = slots.get(at);
            if (next == null) {
                return false;
            }
            at = next;
        }
        return true;
    }

    private void attendant(Turn turn, Placed placed, List<String> broken) {
        Attendant attendant = attendants.get(placed.attendant());
        if (placed.attendant().equals(turn.operator())) {
            broken.add(turn.id() + " is attended by its operator");
        }
        if (attendant == null || !attendant.cells().contains(placed.cell())) {
            broken.add(turn.id() + " is attended by somebody without the authorisation");
            return;
        }
        if (turn.work().helper() && !attendant.helper()) {
            broken.add(turn.id() + " is attended by somebody who is no helper");
        }
        if (turn.partner() != null) {
            if (!turn.partner().equals(placed.attendant())) {
                broken.add(turn.id() + " is attended by another than the partner");
            }
        } else if (attendant.free().stream().noneMatch(span -> span.holds(placed.span()))) {
            broken.add(turn.id() + " is attended by somebody who cannot come then");
        }
    }

    /** No cell and nobody in two places, nor where something else takes them up. */
    private void twoPlaces(Plan plan, List<String> broken) {
        Map<String, List<Span>> cells = new HashMap<>();
        Map<String, List<Span>> people = new HashMap<>();
        problem.busy().forEach((person, spans) -> people.put(person, new ArrayList<>(spans)));
        for (Placed placed : plan.placed()) {
            Turn turn = turns.get(placed.turn());
            take(cells, placed.cell(), wholeSlots(placed), broken);
            take(people, placed.attendant(), placed.span(), broken);
            if (turn != null && !turn.operator().equals(placed.attendant())) {
                take(people, turn.operator(), placed.span(), broken);
            }
        }
    }

    /** A turn that ends inside a slot keeps all of that slot. */
    private Span wholeSlots(Placed placed) {
        Instant end = problem.slots().stream()
                .filter(slot -> slot.cell().equals(placed.cell()) && slot.span().overlaps(placed.span()))
                .map(slot -> slot.span().until())
                .max(Instant::compareTo)
                .orElse(placed.span().until());
        return new Span(placed.span().from(), end);
    }

    private static void take(Map<String, List<Span>> taken, String what, Span span, List<String> broken) {
        List<Span> before = taken.computeIfAbsent(what, key -> new ArrayList<>());
        if (before.stream().anyMatch(span::overlaps)) {
            broken.add(what + " is in two places at " + span.from());
        }
        before.add(span);
    }
}
