package org.standclear.core.allocation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the places that each turn could have by itself, and counts what is in the way of the others. Two threads of a
 * search may ask at a time.
 */
public final class Places {

    private final Problem problem;
    private final Map<String, Bench> benches = new HashMap<>();
    private final Map<String, Attendant> attendants;
    private final Map<FreeSlotStart, Integer> starts = new HashMap<>();
    private final Map<Turn, List<Place>> found = new ConcurrentHashMap<>();
    private final Map<Stop, List<Attendant>> pools = new ConcurrentHashMap<>();
    private final Map<Integer, List<@Nullable Place>> byLength = new ConcurrentHashMap<>();

    private record FreeSlotStart(String cell, Instant start) {}

    /** An e-stop that somebody of the pool stands at. */
    private record Stop(String cell, Span span, boolean helper) {}

    public Places(Problem problem) {
        this.problem = problem;
        this.attendants = problem.attendantsByPerson();
        problem.benches().forEach(bench -> benches.put(bench.cell(), bench));
        for (int slot = 0; slot < problem.slots().size(); slot++) {
            FreeSlot one = problem.slots().get(slot);
            starts.put(new FreeSlotStart(one.cell(), one.span().from()), slot);
        }
    }

    /** What is in the way of a place, in the order in which it is asked. */
    enum Hindrance {
        TOOL,
        FEATURES,
        LENGTH,
        WINDOW,
        TIMES,
        CLOSED,
        BUSY,
        PARTNER,
        ATTENDANT
    }

    /** Places of the turn; looked for once for all turns of a kind. */
    public List<Place> of(Turn turn) {
        return found.computeIfAbsent(turn.kind(), this::look);
    }

    private List<Place> look(Turn turn) {
        List<Place> places = new ArrayList<>();
        for (int slot = 0; slot < problem.slots().size(); slot++) {
            Place place = place(turn, slot);
            if (place != null && hindrance(turn, place) == null) {
                places.add(place);
            }
        }
        return List.copyOf(places);
    }

    /** Who could stand there for somebody who is not the own partner, the operator perhaps among them. */
    public List<Attendant> pool(String cell, Span span, boolean helper) {
        return pools.computeIfAbsent(
                new Stop(cell, span, helper),
                stop -> problem.attendants().stream()
                        .filter(one -> one.canAttend(cell, span, helper) && !problem.isBusy(one.person(), span))
                        .toList());
    }

    /** The furthest that any slot came: what is in the way of the best of them. Null when one has nothing in its way. */
    @Nullable
    Hindrance lastHindrance(Turn turn) {
        Hindrance last = Hindrance.TOOL;
        for (int slot = 0; slot < problem.slots().size(); slot++) {
            Place place = place(turn, slot);
            Hindrance one = place == null ? lengthOrBefore(turn, slot) : hindrance(turn, place);
            if (one == null) {
                return null;
            }
            last = one.compareTo(last) > 0 ? one : last;
        }
        return last;
    }

    private Hindrance lengthOrBefore(Turn turn, int slot) {
        Bench bench = benches.get(problem.slots().get(slot).cell());
        Hindrance first = bench == null ? Hindrance.TOOL : atBench(turn, bench);
        return first == null ? Hindrance.LENGTH : first;
    }

    /** The slots from that one on that the turn would take; null when the cell has not so many without a gap. */
    private @Nullable Place place(Turn turn, int slot) {
        return byLength.computeIfAbsent(
                        turn.work().minutes(),
                        minutes -> IntStream.range(0, problem.slots().size())
                                .mapToObj(from -> place(minutes, from))
                                .collect(Collectors.toCollection(ArrayList::new)))
                .get(slot);
    }

    private @Nullable Place place(int minutes, int slot) {
        FreeSlot first = problem.slots().get(slot);
        Span span = Span.minutes(first.span().from(), minutes);
        List<Integer> taken = new ArrayList<>(List.of(slot));
        FreeSlot last = first;
        while (last.span().until().isBefore(span.until())) {
            Integer next = starts.get(new FreeSlotStart(last.cell(), last.span().until()));
            if (next == null) {
                return null;
            }
            taken.add(next);
            last = problem.slots().get(next);
        }
        return new Place(first.cell(), taken, span);
    }

    private @Nullable Hindrance hindrance(Turn turn, Place place) {
        Bench bench = benches.get(place.cell());
        Hindrance atBench = bench == null ? Hindrance.TOOL : atBench(turn, bench);
        if (atBench != null) {
            return atBench;
        }
        if (!turn.times().window().holds(place.span())) {
            return Hindrance.WINDOW;
        }
        if (!turn.times().allow(place.span())) {
            return Hindrance.TIMES;
        }
        if (problem.isClosed(place.cell(), place.span())) {
            return Hindrance.CLOSED;
        }
        return people(turn, place);
    }

    private static @Nullable Hindrance atBench(Turn turn, Bench bench) {
        if (!bench.tools().contains(turn.work().tool())) {
            return Hindrance.TOOL;
        }
        return bench.fits(turn.work()) ? null : Hindrance.FEATURES;
    }

    private @Nullable Hindrance people(Turn turn, Place place) {
        if (problem.isBusy(turn.operator(), place.span())) {
            return Hindrance.BUSY;
        }
        String partner = turn.partner();
        if (partner == null) {
            return anybodyAttends(turn, place) ? null : Hindrance.ATTENDANT;
        }
        Attendant attends = attendants.get(partner);
        boolean may = attends != null
                && attends.cells().contains(place.cell())
                && (attends.helper() || !turn.work().helper())
                && !problem.isBusy(partner, place.span());
        return may ? null : Hindrance.PARTNER;
    }

    private boolean anybodyAttends(Turn turn, Place place) {
        return pool(place.cell(), place.span(), turn.work().helper()).stream()
                .anyMatch(one -> !one.person().equals(turn.operator()));
    }

    /** Whether the person, who is not the turn's partner, could stand at its e-stop there. */
    public boolean mayAttend(Attendant attendant, Turn turn, Place place) {
        return !attendant.person().equals(turn.operator())
                && attendant.canAttend(place.cell(), place.span(), turn.work().helper())
                && !problem.isBusy(attendant.person(), place.span());
    }
}
