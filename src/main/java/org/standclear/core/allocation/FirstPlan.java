package org.standclear.core.allocation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A quick plan for a solver to start from: make-ups first, then turn and turn about, those with the fewest places first;
 * then, as long as it helps, one turn makes room for another by moving. Keeps the rules, proves nothing.
 */
public final class FirstPlan {

    private static final int ROUNDS_OF_MOVING = 4;

    private final Problem problem;
    private final Places places;
    private final Map<String, List<Place>> could = new HashMap<>();
    private final Map<String, Turn> turns = new LinkedHashMap<>();
    private final Map<Integer, Turn> holders = new HashMap<>();
    private final Map<String, List<Span>> taken = new HashMap<>();
    private final Map<String, Held> held = new LinkedHashMap<>();
    private final int[] wanted;

    private record Held(Place place, String attendant) {}

    public FirstPlan(Problem problem) {
        this.problem = problem;
        this.places = new Places(problem);
        this.wanted = new int[problem.slots().size()];
        for (Turn turn : problem.turns()) {
            List<Place> found = places.of(turn);
            could.put(turn.id(), found);
            turns.put(turn.id(), turn);
            found.forEach(place -> place.slots().forEach(slot -> wanted[slot]++));
        }
        could.replaceAll((id, found) ->
                found.stream().sorted(Comparator.comparingInt(this::rush)).toList());
    }

    /** The plan. */
    public Plan find() {
        for (Turn turn : order()) {
            place(turn);
        }
        for (int round = 0; round < ROUNDS_OF_MOVING && makeRoom(); round++) {
            // as long as it helps
        }
        List<Placed> placed = new ArrayList<>();
        held.forEach((id, where) ->
                placed.add(new Placed(id, where.place().cell(), where.place().span(), where.attendant())));
        return new Plan(placed);
    }

    /** How many want the place's slots. */
    private int rush(Place place) {
        return place.slots().stream().mapToInt(slot -> wanted[slot]).sum();
    }

    private List<Turn> order() {
        Map<String, Integer> nth = new HashMap<>();
        Map<String, Integer> round = new HashMap<>();
        for (Turn turn : problem.turns()) {
            round.put(turn.id(), turn.makeUp() ? -1 : nth.merge(turn.operator(), 1, Integer::sum));
        }
        return problem.turns().stream()
                .sorted(Comparator.comparingInt((Turn turn) -> round.getOrDefault(turn.id(), 0))
                        .thenComparingInt(turn -> placesOf(turn).size()))
                .toList();
    }

    private List<Place> placesOf(Turn turn) {
        return could.getOrDefault(turn.id(), List.of());
    }

    private boolean place(Turn turn) {
        for (Place place : placesOf(turn)) {
            if (place.slots().stream().noneMatch(holders::containsKey)) {
                String attendant = attendant(turn, place);
                if (attendant != null) {
                    hold(turn, place, attendant);
                    return true;
                }
            }
        }
        return false;
    }

    /** Who could attend there now; null when nobody can, or when the operator is taken up. */
    private @Nullable String attendant(Turn turn, Place place) {
        if (isTaken(turn.operator(), place.span())) {
            return null;
        }
        String partner = turn.partner();
        if (partner != null) {
            return isTaken(partner, place.span()) ? null : partner;
        }
        return problem.attendants().stream()
                .filter(one -> places.mayAttend(one, turn, place) && !isTaken(one.person(), place.span()))
                .map(Attendant::person)
                .findFirst()
                .orElse(null);
    }

    private boolean isTaken(String person, Span span) {
        return taken.getOrDefault(person, List.of()).stream().anyMatch(span::overlaps);
    }

    private void hold(Turn turn, Place place, String attendant) {
        held.put(turn.id(), new Held(place, attendant));
        place.slots().forEach(slot -> holders.put(slot, turn));
        taken.computeIfAbsent(turn.operator(), key -> new ArrayList<>()).add(place.span());
        taken.computeIfAbsent(attendant, key -> new ArrayList<>()).add(place.span());
    }

    private @Nullable Held giveUp(Turn turn) {
        Held before = held.remove(turn.id());
        if (before != null) {
            before.place().slots().forEach(holders::remove);
            taken.getOrDefault(turn.operator(), new ArrayList<>())
                    .remove(before.place().span());
            taken.getOrDefault(before.attendant(), new ArrayList<>())
                    .remove(before.place().span());
        }
        return before;
    }

    private boolean makeRoom() {
        boolean helped = false;
        for (Turn turn : turns.values()) {
            if (!held.containsKey(turn.id()) && (place(turn) || makeRoomFor(turn))) {
                helped = true;
            }
        }
        return helped;
    }

    private boolean makeRoomFor(Turn turn) {
        for (Place place : placesOf(turn)) {
            Set<Turn> there = new HashSet<>();
            for (int slot : place.slots()) {
                Turn holder = holders.get(slot);
                if (holder != null) {
                    there.add(holder);
                }
            }
            if (there.size() == 1 && swap(turn, place, there.iterator().next())) {
                return true;
            }
        }
        return false;
    }

    private boolean swap(Turn turn, Place place, Turn other) {
        Held before = giveUp(other);
        if (before == null) {
            return false;
        }
        String attendant = attendant(turn, place);
        if (attendant != null) {
            hold(turn, place, attendant);
            if (place(other)) {
                return true;
            }
            giveUp(turn);
        }
        hold(other, before.place(), before.attendant());
        return false;
    }
}
