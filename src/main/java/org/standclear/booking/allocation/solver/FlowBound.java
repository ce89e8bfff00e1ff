package org.standclear.booking.allocation.solver;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.standclear.booking.allocation.solver.FairRanges.Range;
import org.standclear.booking.allocation.solver.FlowNet.Asking;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Shares;

/**
 * What no plan can do better than, by maximum flows. Each bound holds for all plans that are as good on the earlier levels
 * as the one it is asked for.
 */
final class FlowBound {

    /** Tenths of a wish. */
    private static final int[] WORTHS = {0, 5, 10, 15, 20};

    private static final double ROUNDING = 1e-6;

    private final Problem problem;
    private final FlowNet net;
    private final Map<String, Asking> shorter = new HashMap<>();
    private final Map<String, Asking> longer = new HashMap<>();
    private final Map<String, Integer> asked;
    private final long makeUps;
    private final long underMinimum;
    private final Map<Long, Long> most = new HashMap<>();
    private final Map<List<Long>, Long> smallest = new HashMap<>();
    private final Map<List<Long>, Long> wishes = new HashMap<>();

    FlowBound(Problem problem, Places places) {
        this.problem = problem;
        this.net = new FlowNet(problem, places);
        this.asked = problem.asked();
        net.askings().forEach(asking -> (asking.longer() ? longer : shorter).put(asking.operator(), asking));
        makeUps = makeUps();
        underMinimum = underMinimum();
    }

    /** For make-ups, people under their minimum, turns left out and fairness. */
    Map<Level, Long> of(Score score) {
        long turns = problem.turns().size();
        long leftOut = turns - most(score);
        Map<Level, Long> bounds = new EnumMap<>(Level.class);
        bounds.put(Level.MAKE_UPS, makeUps);
        bounds.put(Level.UNDER_MINIMUM, underMinimum);
        bounds.put(Level.UNPLACED, leftOut);
        bounds.put(Level.UNFAIRNESS, Math.max(0, largest(turns - score.at(Level.UNPLACED)) - smallest(score)));
        return bounds;
    }

    /**
     * How many turns each operator has in any plan that is as good as one with that score up to the shares, less those whose
     * smallest share the flows refute. Where no more people are under the minimum than cannot reach it at all, all others
     * have what they are owed.
     */
    FairRanges ranges(Score score) {
        Map<String, Integer> kept = new HashMap<>(problem.owed());
        kept.keySet().removeIf(operator -> kept.getOrDefault(operator, 0) > couldHave(operator));
        boolean known = score.at(Level.UNDER_MINIMUM) <= problem.owed().size() - kept.size();
        long most = smallest(score);
        return new FairRanges(problem, score, known ? kept : Map.of(), known, share -> share <= most);
    }

    private long makeUps() {
        long hopeless = problem.turns().stream()
                .filter(turn -> turn.makeUp() && couldHave(turn.operator()) == 0)
                .count();
        long longest = longer.values().stream().mapToLong(Asking::units).max().orElse(1);
        return hopeless + up(net.makeUpsThatLack(), longest);
    }

    /** Units that are lacking are shared by as few people as can be. */
    private long underMinimum() {
        Map<String, Integer> needs = new HashMap<>();
        long hopeless = 0;
        for (var owed : problem.owed().entrySet()) {
            if (owed.getValue() > couldHave(owed.getKey())) {
                hopeless++;
            } else if (owed.getValue() > 0) {
                needs.put(owed.getKey(), owed.getValue());
            }
        }
        long lack = wanted(needs) - flow(needs);
        long most = needs.keySet().stream()
                .mapToLong(operator -> units(operator, needs))
                .max()
                .orElse(1);
        return hopeless + up(lack, most);
    }

    private int couldHave(String operator) {
        return turns(shorter, operator) + turns(longer, operator);
    }

    private static int turns(Map<String, Asking> askings, String operator) {
        Asking asking = askings.get(operator);
        return asking == null ? 0 : asking.turns();
    }

    private long most(Score score) {
        return most.computeIfAbsent(score.at(Level.UNDER_MINIMUM), this::mostTurns);
    }

    /**
     * A longer turn gives at most half a turn for each slot that it takes, so slots go to it last; but who is owed longer
     * turns has them first when nobody may be under the minimum. Greedy is best here: what can flow out of a source is a
     * polymatroid (theory of flows).
     */
    private long mostTurns(long under) {
        Map<String, Integer> owed = new HashMap<>(problem.owed());
        // who cannot have what is owed is under the minimum in every plan
        owed.keySet().removeIf(operator -> owed.getOrDefault(operator, 0) > couldHave(operator));
        long hopeless = problem.owed().size() - owed.size();
        // turns of one slot have what they want before any longer one anyway
        owed.keySet().retainAll(longer.keySet());
        if (flow(owed) < wanted(owed)) {
            return mostTurns(Map.of());
        }
        // each of the others that may be under it gives back two slots for a turn: at most a turn for each that is owed
        long given = owed.values().stream()
                .sorted(Comparator.reverseOrder())
                .limit(Math.max(0, under - hopeless))
                .mapToLong(Integer::longValue)
                .sum();
        return mostTurns(owed) + given;
    }

    private long mostTurns(Map<String, Integer> needs) {
        Map<String, Integer> owedLonger = new HashMap<>();
        longer.forEach((operator, asking) -> owedLonger.put(operator, owedLonger(asking, needs)));
        long turns = owedLonger.values().stream().mapToLong(Integer::longValue).sum();
        long first = net.askings().stream()
                .filter(Asking::longer)
                .mapToLong(asking -> (long) owedLonger.getOrDefault(asking.operator(), 0) * asking.units())
                .sum();
        int any = problem.slots().size();
        long then = net.most(
                operator -> any,
                asking -> asking.longer()
                        ? owedLonger.getOrDefault(asking.operator(), 0) * asking.units()
                        : asking.turns());
        long all = net.most(operator -> any, asking -> any);
        return then - first + turns + (all - then) / 2;
    }

    /** Of plans with as many turns: the fewest wishes that are passed over, for the best of some worths of a turn. */
    long wishes(Score score) {
        return wishes.computeIfAbsent(
                List.of(score.at(Level.UNDER_MINIMUM), score.at(Level.UNPLACED), score.at(Level.UNFAIRNESS)),
                key -> fewestWishes(score));
    }

    private long fewestWishes(Score score) {
        long placed = problem.turns().size() - score.at(Level.UNPLACED);
        FairRanges ranges = ranges(score);
        double best = 0;
        for (int worth : WORTHS) {
            best = Math.max(
                    best,
                    net.fewestWishes(
                            placed,
                            asking -> longerAtLeast(asking, ranges) * asking.units(),
                            operator -> units(operator, ranges.of(operator)),
                            worth));
        }
        return (long) Math.ceil(best - ROUNDING);
    }

    /** The fewest units that so few turns take, and the most that so many do; of longer ones there may be any. */
    private Range units(String operator, Range turns) {
        int could = couldHave(operator);
        int least = units(operator, Map.of(operator, Math.min(turns.least(), could)));
        int most = longer.containsKey(operator) ? Integer.MAX_VALUE : Math.min(turns.most(), could);
        return new Range(least, Math.max(least, most));
    }

    /** How many longer turns somebody has at least, whose shorter ones are not enough. */
    private int longerAtLeast(Asking asking, FairRanges ranges) {
        String operator = asking.operator();
        return asking.longer()
                ? owedLonger(asking, Map.of(operator, ranges.of(operator).least()))
                : 0;
    }

    private int owedLonger(Asking asking, Map<String, Integer> needs) {
        int owed = needs.getOrDefault(asking.operator(), 0);
        return Math.max(0, Math.min(asking.turns(), owed - turns(shorter, asking.operator())));
    }

    /** The largest share is at least what shares out so many turns. */
    private long largest(long placed) {
        Shares shares = Shares.of(asked.values());
        return FairRanges.shares(asked, shares).stream()
                .filter(share -> asked.values().stream()
                                .mapToLong(one -> share / shares.oneOf(one))
                                .sum()
                        >= placed)
                .findFirst()
                .orElse(0L);
    }

    /** The smallest share is at most what everybody can have while as many turns find a place. */
    private long smallest(Score score) {
        long placed = problem.turns().size() - score.at(Level.UNPLACED);
        return smallest.computeIfAbsent(List.of(score.at(Level.UNDER_MINIMUM), score.at(Level.UNPLACED)), key -> {
            Shares shares = Shares.of(asked.values());
            return FairRanges.shares(asked, shares).descendingSet().stream()
                    .filter(share -> allCanHave(share, shares, placed, most(score)))
                    .findFirst()
                    .orElse(0L);
        });
    }

    private boolean allCanHave(long share, Shares shares, long placed, long most) {
        Map<String, Integer> needs = new HashMap<>();
        asked.forEach((operator, one) -> needs.put(operator, (int) up(share, shares.oneOf(one))));
        return needs.values().stream().mapToLong(Integer::longValue).sum() <= most
                && needs.entrySet().stream().allMatch(one -> one.getValue() <= couldHave(one.getKey()))
                && flow(needs) == wanted(needs)
                && mostTurns(needs) >= placed;
    }

    private long wanted(Map<String, Integer> needs) {
        return needs.keySet().stream()
                .mapToLong(operator -> units(operator, needs))
                .sum();
    }

    private long flow(Map<String, Integer> needs) {
        return net.most(operator -> units(operator, needs), asking -> asking.turns() * asking.units());
    }

    /** Who has only longer turns takes that many slots for each; of who has both, one slot a turn is asked, which is less. */
    private int units(String operator, Map<String, Integer> needs) {
        Asking only = shorter.containsKey(operator) ? null : longer.get(operator);
        return needs.getOrDefault(operator, 0) * (only == null ? 1 : only.units());
    }

    private static long up(long what, long by) {
        return (what + by - 1) / by;
    }
}
