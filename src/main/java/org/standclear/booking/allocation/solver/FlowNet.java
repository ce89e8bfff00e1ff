package org.standclear.booking.allocation.solver;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.standclear.booking.allocation.solver.FairRanges.Range;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Turn;

/**
 * Turns that flow to slots with some of the rules let go of, so that every plan is such a flow and none has more. Slots
 * fall into columns with one instant in common: at that instant a person is in one place, and as many turns without a
 * partner go on as there are attendants. A turn of two slots is two units that may come apart. What is let go of: rules
 * about other instants, and which attendant stands where.
 */
final class FlowNet {

    private static final int SOURCE = 0;
    private static final int SINK = 1;

    /** What a turn's cost and worth are counted in, so that its units each have a part of it. */
    private static final int WHOLE = 12;

    private static final int FORCE = 100_000;

    private final Problem problem;
    private final Places places;
    private final Arcs arcs = new Arcs();
    private final Map<Object, Integer> nodes = new HashMap<>();
    private final List<Kind> kinds = new ArrayList<>();
    private final Map<Asking, Integer> askings = new LinkedHashMap<>();
    private final Map<String, Integer> operators = new LinkedHashMap<>();
    private final Instant[] columns;

    /**
     * What an operator asks for: the turns of one slot, or the longer ones.
     *
     * @param units slots that one of them takes at least
     */
    record Asking(String operator, boolean longer, int turns, int units) {}

    private record Kind(Turn turn, int units, int arc) {}

    private record Slot(int slot) {}

    private record Asked(String operator, String what) {}

    private record At(Object what, Instant column, boolean out) {}

    FlowNet(Problem problem, Places places) {
        this.problem = problem;
        this.places = places;
        this.columns = columns(problem.slots());
        for (int slot = 0; slot < columns.length; slot++) {
            arcs.add(node(new Slot(slot)), SINK, 1);
        }
        Map<Turn, Integer> counted = new LinkedHashMap<>();
        problem.turns().stream()
                .filter(turn -> !places.of(turn).isEmpty())
                .forEach(turn -> counted.merge(turn.kind(), 1, Integer::sum));
        askings(counted);
        Map<Instant, Set<String>> attendants = new LinkedHashMap<>();
        counted.keySet().forEach(turn -> add(turn, attendants));
        attendants.forEach((column, people) ->
                arcs.add(node(new At("pool", column, false)), node(new At("pool", column, true)), people.size()));
    }

    private void askings(Map<Turn, Integer> counted) {
        Map<String, Map<Boolean, Asking>> all = new LinkedHashMap<>();
        counted.forEach((turn, count) -> {
            Asking one = new Asking(turn.operator(), units(turn) > 1, count, units(turn));
            all.computeIfAbsent(turn.operator(), key -> new LinkedHashMap<>())
                    .merge(
                            one.longer(),
                            one,
                            (first, second) -> new Asking(
                                    first.operator(),
                                    first.longer(),
                                    first.turns() + second.turns(),
                                    Math.min(first.units(), second.units())));
        });
        all.forEach((operator, both) -> {
            operators.put(operator, arcs.add(SOURCE, node(new Asked(operator, "all")), 0));
            both.forEach((longer, asking) -> askings.put(
                    asking,
                    arcs.add(
                            node(new Asked(operator, "all")),
                            node(new Asked(operator, longer ? "longer" : "one")),
                            0)));
        });
        counted.forEach((turn, count) -> {
            int units = count * units(turn);
            int from = node(new Asked(turn.operator(), units(turn) > 1 ? "longer" : "one"));
            kinds.add(new Kind(turn, units, arcs.add(from, node(turn), units)));
        });
    }

    private int units(Turn turn) {
        return places.of(turn).stream()
                .mapToInt(place -> place.slots().size())
                .min()
                .orElse(1);
    }

    /** What is asked for, of turns that have places at all. */
    Set<Asking> askings() {
        return askings.keySet();
    }

    /** The most that flows when each operator, and each of the two things it asks for, gives at most so many units. */
    long most(ToIntFunction<String> ofOperator, ToIntFunction<Asking> ofAsking) {
        operators.forEach((operator, arc) -> arcs.limit(arc, ofOperator.applyAsInt(operator)));
        askings.forEach((asking, arc) -> arcs.limit(arc, ofAsking.applyAsInt(asking)));
        return arcs.most(SOURCE, SINK);
    }

    /**
     * The fewest wishes that are passed over with at least so many turns: what turns more than those are worth is taken
     * off, whatever they are said to be worth (Lagrange). Who is owed longer turns has them, and each operator at least and
     * at most so much.
     *
     * @param worth of a turn, in tenths of a wish
     */
    double fewestWishes(long turns, ToIntFunction<Asking> owedUnits, Function<String, Range> unitsOf, int worth) {
        long supply = 0;
        double forced = 0;
        for (Map.Entry<Asking, Integer> one : askings.entrySet()) {
            Asking asking = one.getKey();
            int units = asking.turns() * asking.units();
            supply += units;
            // rounded up, since what is taken off must not be too little
            int each = -(WHOLE * worth + 10 * asking.units() - 1) / (10 * asking.units());
            int first = owedUnits.applyAsInt(asking);
            forced += (double) first * FORCE;
            arcs.limit(one.getValue(), units - first);
            arcs.cost(one.getValue(), each);
            arcs.beside(one.getValue(), first, each - FORCE);
        }
        for (Map.Entry<String, Integer> one : operators.entrySet()) {
            Range units = unitsOf.apply(one.getKey());
            forced += (double) units.least() * FORCE;
            arcs.limit(one.getValue(), Math.min(units.most(), problem.slots().size()) - units.least());
            arcs.beside(one.getValue(), units.least(), -FORCE);
        }
        double least = arcs.leastCost(SOURCE, SINK, supply) + forced;
        return (least + WHOLE * worth / 10.0 * turns) / WHOLE;
    }

    /** How many units of the make-ups do not flow when nothing else does. */
    long makeUpsThatLack() {
        kinds.forEach(kind -> arcs.limit(kind.arc(), kind.turn().makeUp() ? kind.units() : 0));
        long flowing = most(operator -> problem.turns().size(), asking -> asking.turns() * asking.units());
        kinds.forEach(kind -> arcs.limit(kind.arc(), kind.units()));
        return kinds.stream()
                        .filter(kind -> kind.turn().makeUp())
                        .mapToLong(Kind::units)
                        .sum()
                - flowing;
    }

    /** For each slot the end of one that all of its column overlap just before it. */
    private static Instant[] columns(List<FreeSlot> slots) {
        Instant[] columns = new Instant[slots.size()];
        List<Integer> byEnd = new ArrayList<>();
        for (int slot = 0; slot < columns.length; slot++) {
            byEnd.add(slot);
        }
        byEnd.sort(Comparator.comparing(slot -> slots.get(slot).span().until()));
        Instant last = Instant.MIN;
        for (int slot : byEnd) {
            if (!slots.get(slot).span().from().isBefore(last)) {
                last = slots.get(slot).span().until();
            }
            columns[slot] = last;
        }
        return columns;
    }

    private void add(Turn turn, Map<Instant, Set<String>> attendants) {
        int kind = node(turn);
        for (Place place : places.of(turn)) {
            for (int slot : place.slots()) {
                Instant column = columns[slot];
                boolean isThen = place.span().from().isBefore(column)
                        && !place.span().until().isBefore(column);
                int cost = WHOLE * turn.times().wishesPassed(place.cell(), place.span()) / units(turn);
                int from = kind;
                if (isThen) {
                    from = through(turn, place, column, attendants);
                    arcs.one(kind, inTime(turn, column), cost);
                }
                arcs.one(from, node(new Slot(slot)), isThen ? 0 : cost);
            }
        }
    }

    /** The time of the turn's people in the column. */
    private int inTime(Turn turn, Instant column) {
        return node(new At(person(turn), column, false));
    }

    /** Either of a pair bounds the flow; the same one for the turns of both binds them together. */
    private static String person(Turn turn) {
        String partner = turn.partner();
        return partner == null || turn.operator().compareTo(partner) < 0 ? turn.operator() : partner;
    }

    /** Through the people's time in the column, and through the attendants' when it needs one of the pool. */
    private int through(Turn turn, Place place, Instant column, Map<Instant, Set<String>> attendants) {
        int out = node(new At(person(turn), column, true));
        arcs.one(inTime(turn, column), out, 0);
        if (turn.partner() != null) {
            return out;
        }
        Set<String> pool = attendants.computeIfAbsent(column, key -> new HashSet<>());
        places.pool(place.cell(), place.span(), turn.work().helper()).forEach(one -> pool.add(one.person()));
        arcs.one(out, node(new At("pool", column, false)), 0);
        return node(new At("pool", column, true));
    }

    private int node(Object what) {
        return nodes.computeIfAbsent(what, key -> nodes.size() + 2);
    }
}
