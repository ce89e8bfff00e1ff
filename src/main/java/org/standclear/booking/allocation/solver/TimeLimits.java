package org.standclear.booking.allocation.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.standclear.core.allocation.Span;

/**
 * How many of some turns one person can have part in, when it is known only in which block each is. Some instants are
 * chosen; at each the person is in one place, so all together take no more of them than there are. As few instants as
 * all spans of a time can be hit with are also the most spans in it that do not overlap (intervals are a perfect graph).
 */
final class TimeLimits {

    /**
     * Takings weighted, and what they come to at most.
     *
     * @param weights by the taking's number: instants that each of its spans takes at least
     */
    record Limit(int[] weights, int most) {

        /** Whether the other says nothing that this one does not. */
        boolean implies(Limit other) {
            if (most > other.most) {
                return false;
            }
            for (int taking = 0; taking < weights.length; taking++) {
                if (weights[taking] < other.weights[taking]) {
                    return false;
                }
            }
            return true;
        }
    }

    /** Spans as seconds, the earliest first. */
    private record Taking(int number, int most, long[] from, long[] until) {

        long first() {
            return from[0];
        }

        long last() {
            return until[until.length - 1];
        }
    }

    /** Of more sorts of spans in one time there is a limit for each instant, and no more. */
    private static final int MOST_SORTS = 24;

    /** The limits for takings that may each be at any of some spans; what their numbers could not break anyway is none. */
    List<Limit> of(List<List<Span>> takings, int[] mostOfEach) {
        List<Taking> all = new ArrayList<>();
        for (int number = 0; number < takings.size(); number++) {
            List<Span> spans = takings.get(number).stream()
                    .sorted(Comparator.comparing(Span::from))
                    .toList();
            all.add(new Taking(
                    number,
                    mostOfEach[number],
                    spans.stream()
                            .mapToLong(span -> span.from().getEpochSecond())
                            .toArray(),
                    spans.stream()
                            .mapToLong(span -> span.until().getEpochSecond())
                            .toArray()));
        }
        all.sort(Comparator.comparingLong(Taking::first));
        List<Limit> limits = new ArrayList<>();
        List<Taking> together = new ArrayList<>();
        long last = Long.MIN_VALUE;
        for (Taking taking : all) {
            if (taking.first() >= last) {
                limits.addAll(ofThoseThatMeet(together, takings.size()));
                together.clear();
            }
            together.add(taking);
            last = Math.max(last, taking.last());
        }
        limits.addAll(ofThoseThatMeet(together, takings.size()));
        return limits;
    }

    private List<Limit> ofThoseThatMeet(List<Taking> together, int count) {
        Map<List<Integer>, Limit> found = new HashMap<>();
        // spans of different lengths that meet at an instant may lie in no window that holds only them
        together.stream()
                .map(Taking::until)
                .flatMapToLong(Arrays::stream)
                .distinct()
                .forEach(instant -> add(limit(together, new long[] {instant}, count), together, found));
        if (together.size() > MOST_SORTS) {
            return List.copyOf(found.values());
        }
        long[] starts = together.stream().mapToLong(Taking::first).distinct().toArray();
        long[] ends = together.stream().mapToLong(Taking::last).distinct().toArray();
        for (long start : starts) {
            for (long end : ends) {
                List<Taking> inside = together.stream()
                        .filter(one -> one.first() >= start && one.last() <= end)
                        .toList();
                if (!inside.isEmpty()) {
                    add(limit(together, instants(inside), count), together, found);
                }
            }
        }
        List<Limit> needed = new ArrayList<>();
        for (Limit limit : found.values()) {
            if (needed.stream().noneMatch(other -> other.implies(limit))) {
                needed.removeIf(limit::implies);
                needed.add(limit);
            }
        }
        needed.sort(Comparator.comparingInt(Limit::most).thenComparing(one -> Arrays.toString(one.weights())));
        return needed;
    }

    private static void add(Limit limit, List<Taking> together, Map<List<Integer>, Limit> found) {
        int atWorst = 0;
        for (Taking taking : together) {
            atWorst += limit.weights()[taking.number()] * taking.most();
        }
        if (atWorst > limit.most()) {
            found.merge(
                    Arrays.stream(limit.weights()).boxed().toList(),
                    limit,
                    (one, other) -> one.most() <= other.most() ? one : other);
        }
    }

    /** The last moment of the span that ends first, then of the first that begins after it, and so on. */
    private static long[] instants(List<Taking> inside) {
        List<long[]> spans = new ArrayList<>();
        for (Taking taking : inside) {
            for (int span = 0; span < taking.from().length; span++) {
                spans.add(new long[] {taking.from()[span], taking.until()[span]});
            }
        }
        spans.sort(Comparator.comparingLong(span -> span[1]));
        List<Long> instants = new ArrayList<>();
        long last = Long.MIN_VALUE;
        for (long[] span : spans) {
            if (span[0] >= last) {
                last = span[1];
                instants.add(last);
            }
        }
        return instants.stream().mapToLong(Long::longValue).toArray();
    }

    private static Limit limit(List<Taking> together, long[] instants, int count) {
        int[] weights = new int[count];
        for (Taking taking : together) {
            int least = Integer.MAX_VALUE;
            for (int span = 0; span < taking.from().length; span++) {
                int hit = 0;
                for (long instant : instants) {
                    hit += taking.from()[span] < instant && instant <= taking.until()[span] ? 1 : 0;
                }
                least = Math.min(least, hit);
            }
            weights[taking.number()] = least;
        }
        return new Limit(weights, instants.length);
    }
}
