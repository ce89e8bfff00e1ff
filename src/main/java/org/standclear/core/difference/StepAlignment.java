package org.standclear.core.difference;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.standclear.core.program.Step;

/**
 * Lays two lists of steps beside each other so that as little as possible is put in, left out or changed (Needleman and
 * Wunsch, 1970). Equal beginnings and ends are taken off first.
 */
final class StepAlignment {

    /** More pairs than this are not compared: beyond two thousand steps that all differ, words help nobody. */
    private static final long MOST_PAIRS = 4_000_000;

    private final List<Step> before;
    private final List<Step> after;
    private final StepActs acts;

    StepAlignment(List<Step> before, List<Step> after, StepActs acts) {
        this.before = before;
        this.after = after;
        this.acts = acts;
    }

    /** The changes in the order of the steps. */
    List<Change> changes() {
        int head = 0;
        int shorter = Math.min(before.size(), after.size());
        while (head < shorter && acts.cost(before.get(head), after.get(head)) == 0) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head && acts.cost(fromEnd(before, tail), fromEnd(after, tail)) == 0) {
            tail++;
        }
        List<Step> old = before.subList(head, before.size() - tail);
        List<Step> now = after.subList(head, after.size() - tail);
        if ((long) old.size() * now.size() > MOST_PAIRS) {
            return List.of(new Change.StepsReplaced(old.size(), now.size()));
        }
        return aligned(old, now);
    }

    private static Step fromEnd(List<Step> steps, int back) {
        return steps.get(steps.size() - 1 - back);
    }

    private List<Change> aligned(List<Step> old, List<Step> now) {
        int[][] cost = costs(old, now);
        List<Change> changes = new ArrayList<>();
        int i = old.size();
        int j = now.size();
        while (i > 0 || j > 0) {
            if (i > 0 && j > 0 && cost[i][j] == cost[i - 1][j - 1] + acts.cost(old.get(i - 1), now.get(j - 1))) {
                i--;
                j--;
                List<String> what = acts.what(old.get(i), now.get(j));
                if (!what.isEmpty()) {
                    changes.add(new Change.StepChanged(old.get(i), now.get(j), what));
                }
            } else if (j > 0 && cost[i][j] == cost[i][j - 1] + StepActs.GAP) {
                changes.add(new Change.StepInserted(now.get(--j)));
            } else {
                changes.add(new Change.StepRemoved(old.get(--i)));
            }
        }
        Collections.reverse(changes);
        return changes;
    }

    /** The least cost of making the first i steps into the first j others. */
    private int[][] costs(List<Step> old, List<Step> now) {
        int[][] cost = new int[old.size() + 1][now.size() + 1];
        for (int i = 0; i <= old.size(); i++) {
            for (int j = 0; j <= now.size(); j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = (i + j) * StepActs.GAP;
                } else {
                    int changed = cost[i - 1][j - 1] + acts.cost(old.get(i - 1), now.get(j - 1));
                    int gap = Math.min(cost[i - 1][j], cost[i][j - 1]) + StepActs.GAP;
                    cost[i][j] = Math.min(changed, gap);
                }
            }
        }
        return cost;
    }
}
