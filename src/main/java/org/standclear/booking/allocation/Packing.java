package org.standclear.booking.allocation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which numbers of spans of some sorts one person can have part in, none overlapping another; and weighted sums that tell
 * these numbers from others. The most of a weighted sum is found exactly, span by span in order of their ends (weighted
 * interval scheduling).
 */
final class Packing {

    /** Numbers beyond this are not tried one by one. */
    static final int MOST_TRIED = 6_000;

    private static final int MOST_STEPS = 200;

    private final int sorts;
    private final int[] sizes;
    private final int[] sortOf;
    private final int[] before;

    /** A weighted sum of numbers, and what it comes to at most. */
    record Sum(int[] weights, int most) {

        int of(int[] numbers) {
            int sum = 0;
            for (int sort = 0; sort < numbers.length; sort++) {
                sum += weights[sort] * numbers[sort];
            }
            return sum;
        }
    }

    private record One(int sort, long from, long until) {}

    /** Spans of each sort, by their starts and ends. */
    Packing(List<long[]> from, List<long[]> until) {
        sorts = from.size();
        sizes = from.stream().mapToInt(one -> one.length).toArray();
        List<One> all = new ArrayList<>();
        for (int sort = 0; sort < sorts; sort++) {
            for (int span = 0; span < sizes[sort]; span++) {
                all.add(new One(sort, from.get(sort)[span], until.get(sort)[span]));
            }
        }
        all.sort(Comparator.comparingLong(One::until));
        sortOf = all.stream().mapToInt(One::sort).toArray();
        before = new int[all.size()];
        for (int span = 0; span < before.length; span++) {
            int last = span - 1;
            while (last >= 0 && all.get(last).until() > all.get(span).from()) {
                last--;
            }
            before[span] = last;
        }
    }

    /** How many numbers there are to try. */
    long tried() {
        long tried = 1;
        for (int size : sizes) {
            tried *= size + 1;
        }
        return tried;
    }

    /** Few sums, so that numbers that cannot be had are above one of them, as far as there are such sums. */
    List<Sum> sums() {
        List<Sum> sums = found();
        List<int[]> above = new ArrayList<>();
        int[] numbers = new int[sorts];
        do {
            if (sums.stream().anyMatch(sum -> sum.of(numbers) > sum.most())) {
                above.add(numbers.clone());
            }
        } while (next(numbers));
        List<Sum> few = new ArrayList<>();
        while (!above.isEmpty()) {
            Sum best = sums.stream()
                    .max(Comparator.comparingLong((Sum sum) -> above.stream()
                            .filter(one -> sum.of(one) > sum.most())
                            .count()))
                    .orElseThrow();
            above.removeIf(one -> best.of(one) > best.most());
            few.add(best);
        }
        return few;
    }

    private List<Sum> found() {
        List<Sum> sums = new ArrayList<>();
        int[] numbers = new int[sorts];
        do {
            if (sums.stream().noneMatch(sum -> sum.of(numbers) > sum.most())) {
                Sum sum = apart(numbers);
                if (sum != null) {
                    sums.add(sum);
                }
            }
        } while (next(numbers));
        return sums;
    }

    private boolean next(int[] numbers) {
        for (int sort = 0; sort < sorts; sort++) {
            if (numbers[sort] < sizes[sort]) {
                numbers[sort]++;
                return true;
            }
            numbers[sort] = 0;
        }
        return false;
    }

    /** Weights are moved towards the numbers and away from what can be had, until they tell them apart (perceptron). */
    @org.jspecify.annotations.Nullable
    Sum apart(int[] numbers) {
        int[] weights = numbers.clone();
        for (int step = 0; step < MOST_STEPS; step++) {
            int[] best = best(weights);
            Sum sum = new Sum(weights.clone(), dot(weights, best));
            if (sum.of(numbers) > sum.most()) {
                return sum;
            }
            if (covers(best, numbers)) {
                return null;
            }
            for (int sort = 0; sort < sorts; sort++) {
                weights[sort] = Math.max(0, weights[sort] + numbers[sort] - best[sort]);
            }
        }
        return null;
    }

    private static boolean covers(int[] best, int[] numbers) {
        for (int sort = 0; sort < best.length; sort++) {
            if (best[sort] < numbers[sort]) {
                return false;
            }
        }
        return true;
    }

    private static int dot(int[] one, int[] other) {
        int sum = 0;
        for (int sort = 0; sort < one.length; sort++) {
            sum += one[sort] * other[sort];
        }
        return sum;
    }

    /** The numbers with the largest weighted sum. */
    int[] best(int[] weights) {
        int[] value = new int[before.length + 1];
        for (int span = 0; span < before.length; span++) {
            value[span + 1] = Math.max(value[span], value[before[span] + 1] + weights[sortOf[span]]);
        }
        int[] numbers = new int[sorts];
        int span = before.length - 1;
        while (span >= 0) {
            if (value[span + 1] == value[span]) {
                span--;
            } else {
                numbers[sortOf[span]]++;
                span = before[span];
            }
        }
        return numbers;
    }
}
