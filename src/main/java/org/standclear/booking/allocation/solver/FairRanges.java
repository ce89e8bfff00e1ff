package org.standclear.booking.allocation.solver;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.LongPredicate;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Shares;

/**
 * How many turns each operator has at least and at most in any plan with as many turns, shares no further apart and, where
 * it is known who can be under the minimum, what is owed. Where the smallest share could be one of several, an operator's
 * range joins those of all of them: every plan is in the ranges, but not all that is in them is as fair.
 */
final class FairRanges {

    private final Problem problem;
    private final TreeMap<Long, Map<String, Range>> bySmallest;
    private final Map<String, Range> ranges = new HashMap<>();
    private final boolean keepTheMinimum;

    /** At least so many turns and at most so many. */
    record Range(int least, int most) {

        private Range with(Range other) {
            return new Range(Math.min(least, other.least), Math.max(most, other.most));
        }
    }

    /** Any smallest share could be that leaves room for as many turns; nobody is let off what is owed. */
    FairRanges(Problem problem, Score score) {
        this(
                problem,
                score,
                score.at(Level.UNDER_MINIMUM) == 0 ? problem.owed() : Map.of(),
                score.at(Level.UNDER_MINIMUM) == 0,
                share -> true);
    }

    /**
     * The ranges of those smallest shares that could be.
     *
     * @param kept what operators get in any plan that is as good
     * @param keepTheMinimum whether with these no more people are under the minimum than in the known plan
     */
    FairRanges(
            Problem problem,
            Score score,
            Map<String, Integer> kept,
            boolean keepTheMinimum,
            LongPredicate couldBeSmallest) {
        this(problem, new TreeMap<>(), keepTheMinimum);
        Map<String, Integer> asked = problem.asked();
        Shares shares = Shares.of(asked.values());
        long placed = problem.turns().size() - score.at(Level.UNPLACED);
        for (long share : shares(asked, shares)) {
            Map<String, Range> these = new HashMap<>();
            asked.forEach((operator, all) -> {
                long each = shares.oneOf(all);
                int most = (int) Math.min(all, (share + score.at(Level.UNFAIRNESS)) / each);
                int least = Math.max(kept.getOrDefault(operator, 0), (int) ((share + each - 1) / each));
                these.put(operator, new Range(least, most));
            });
            if (couldBe(these, placed) && couldBeSmallest.test(share)) {
                bySmallest.put(share, these);
                join(these);
            }
        }
    }

    private FairRanges(Problem problem, TreeMap<Long, Map<String, Range>> bySmallest, boolean keepTheMinimum) {
        this.problem = problem;
        this.bySmallest = bySmallest;
        this.keepTheMinimum = keepTheMinimum;
    }

    private void join(Map<String, Range> these) {
        these.forEach((operator, range) -> ranges.merge(operator, range, Range::with));
    }

    /** What shares there can be of what is asked for. */
    static TreeSet<Long> shares(Map<String, Integer> asked, Shares shares) {
        TreeSet<Long> all = new TreeSet<>();
        asked.values().forEach(one -> {
            for (int got = 0; got <= one; got++) {
                all.add(got * shares.oneOf(one));
            }
        });
        return all;
    }

    private static boolean couldBe(Map<String, Range> ranges, long placed) {
        return ranges.values().stream().allMatch(range -> range.least() <= range.most())
                && ranges.values().stream().mapToLong(Range::least).sum() <= placed
                && ranges.values().stream().mapToLong(Range::most).sum() >= placed;
    }

    /** The operator's range. */
    Range of(String operator) {
        return ranges.getOrDefault(operator, new Range(0, Integer.MAX_VALUE));
    }

    /** Whether all that is in the ranges is as fair, and not only all that is as fair in them. */
    boolean areExact() {
        return bySmallest.size() == 1;
    }

    /** Whether no more people are under the minimum in anything that is in the ranges. */
    boolean keepTheMinimum() {
        return keepTheMinimum;
    }

    /** Those of the plan's own smallest share: all that is in them is as fair, but not all that is as fair is in them. */
    FairRanges around(Plan plan) {
        Map<String, Integer> asked = problem.asked();
        Shares shares = Shares.of(asked.values());
        Map<String, Integer> got = DayModel.got(problem, plan);
        long smallest = asked.entrySet().stream()
                .mapToLong(one -> got.getOrDefault(one.getKey(), 0) * shares.oneOf(one.getValue()))
                .min()
                .orElse(0);
        Map<String, Range> own = bySmallest.get(smallest);
        if (own == null || areExact()) {
            return this;
        }
        FairRanges around = new FairRanges(problem, new TreeMap<>(Map.of(smallest, own)), keepTheMinimum);
        around.join(own);
        return around;
    }
}
