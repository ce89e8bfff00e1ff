package org.standclear.booking.allocation.solver;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeSet;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Shares;

/**
 * How many turns each operator has at least and at most in any plan with as many turns, shares no further apart and, when
 * nobody is under the minimum, what is owed.
 */
final class FairRanges {

    private final Map<String, Range> ranges = new HashMap<>();

    /** At least so many turns and at most so many. */
    record Range(int least, int most) {

        private Range with(Range other) {
            return new Range(Math.min(least, other.least), Math.max(most, other.most));
        }
    }

    FairRanges(Problem problem, Score score) {
        Map<String, Integer> asked = problem.asked();
        Shares shares = Shares.of(asked.values());
        TreeSet<Long> smallest = new TreeSet<>();
        asked.values().forEach(one -> {
            for (int got = 0; got <= one; got++) {
                smallest.add(got * shares.oneOf(one));
            }
        });
        long placed = problem.turns().size() - score.at(Level.UNPLACED);
        boolean minimumKept = score.at(Level.UNDER_MINIMUM) == 0;
        for (long share : smallest) {
            Map<String, Range> these = new HashMap<>();
            asked.forEach((operator, all) -> {
                long each = shares.oneOf(all);
                int owed = minimumKept ? problem.owed().getOrDefault(operator, 0) : 0;
                int most = (int) Math.min(all, (share + score.at(Level.UNFAIRNESS)) / each);
                these.put(operator, new Range(Math.max(owed, (int) ((share + each - 1) / each)), most));
            });
            if (couldBe(these, placed)) {
                these.forEach((operator, range) -> ranges.merge(operator, range, Range::with));
            }
        }
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
}
