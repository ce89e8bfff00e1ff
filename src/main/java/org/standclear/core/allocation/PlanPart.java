package org.standclear.core.allocation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Some turns of a plan that look for places again while all others keep theirs: a problem of its own, whose plans fit into
 * the rest. Make-ups, minimum and turns left out count in it as they do in the whole; shares do not.
 */
public final class PlanPart {

    private final List<Placed> rest;
    private final Plan now;
    private final Problem problem;

    /** Takes the turns that move; those that the plan leaves out may be among them. */
    public PlanPart(Problem whole, Plan plan, Set<String> turns) {
        rest = plan.placed().stream()
                .filter(placed -> !turns.contains(placed.turn()))
                .toList();
        now = new Plan(plan.placed().stream()
                .filter(placed -> turns.contains(placed.turn()))
                .toList());
        Map<String, Turn> byId = new HashMap<>();
        whole.turns().forEach(turn -> byId.put(turn.id(), turn));
        Map<String, List<Span>> busy = new HashMap<>();
        whole.busy().forEach((person, spans) -> busy.put(person, new ArrayList<>(spans)));
        Map<String, Integer> owed = new HashMap<>(whole.owed());
        Map<String, List<Span>> taken = new HashMap<>();
        for (Placed placed : rest) {
            Turn turn = byId.get(placed.turn());
            taken.computeIfAbsent(placed.cell(), cell -> new ArrayList<>()).add(placed.span());
            if (turn != null) {
                owed.computeIfPresent(turn.operator(), (operator, left) -> Math.max(0, left - 1));
                Set<String> people = new HashSet<>(List.of(placed.attendant()));
                people.add(turn.operator());
                people.forEach(person ->
                        busy.computeIfAbsent(person, key -> new ArrayList<>()).add(placed.span()));
            }
        }
        List<Turn> moving =
                whole.turns().stream().filter(turn -> turns.contains(turn.id())).toList();
        owed.keySet().retainAll(moving.stream().map(Turn::operator).toList());
        problem = new Problem(
                whole.benches(),
                whole.slots().stream()
                        .filter(slot -> taken.getOrDefault(slot.cell(), List.of()).stream()
                                .noneMatch(slot.span()::overlaps))
                        .toList(),
                whole.attendants(),
                moving,
                owed,
                busy,
                whole.closed());
    }

    /** What the part looks for by itself. */
    public Problem problem() {
        return problem;
    }

    /** The places that its turns have now. */
    public Plan now() {
        return now;
    }

    /** The whole plan with the part's places instead of those before. */
    public Plan with(Plan part) {
        return new Plan(Stream.concat(rest.stream(), part.placed().stream()).toList());
    }
}
