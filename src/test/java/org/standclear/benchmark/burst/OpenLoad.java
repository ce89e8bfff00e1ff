package org.standclear.benchmark.burst;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.standclear.benchmark.Timings;

/**
 * Requests sent at planned instants, whether or not those before were answered: people do not wait for each other. A
 * request's time is taken from its planned instant, so that a load that falls behind is not flattered.
 */
final class OpenLoad {

    private static final Duration PATIENCE = Duration.ofMinutes(5);

    private OpenLoad() {}

    /**
     * One request.
     *
     * @param at from the start of the load
     * @param kind what it is counted under
     * @param sent sends it and does not wait; the answer says what was wrong with it, or is empty
     */
    record Arrival(Duration at, String kind, Supplier<CompletableFuture<String>> sent) {}

    /**
     * What became of a load.
     *
     * @param all times of all requests, faults among them
     * @param kinds the same by kind
     * @param faults how often each thing was wrong
     * @param unanswered requests that ended without any answer: refused, broken off, or too late for the sender
     * @param latest by how much the most belated request was sent after its instant, by fault of the sender
     */
    record Outcome(
            Timings all, Map<String, Timings> kinds, Map<String, Integer> faults, int unanswered, Duration latest) {}

    /** Sends all, which are in the order of their instants, and waits for the answers. */
    static Outcome run(List<Arrival> arrivals) throws InterruptedException {
        int count = arrivals.size();
        AtomicLongArray nanos = new AtomicLongArray(count);
        AtomicReferenceArray<String> faults = new AtomicReferenceArray<>(count);
        CountDownLatch open = new CountDownLatch(count);
        AtomicInteger unanswered = new AtomicInteger();
        long latest = 0;
        long begin = System.nanoTime();
        for (int i = 0; i < count; i++) {
            int number = i;
            long planned = begin + arrivals.get(i).at().toNanos();
            awaitInstant(planned);
            latest = Math.max(latest, System.nanoTime() - planned);
            arrivals.get(i).sent().get().whenComplete((fault, failure) -> {
                nanos.set(number, System.nanoTime() - planned);
                faults.set(number, failure == null ? fault : nameOf(failure));
                if (failure != null) {
                    unanswered.incrementAndGet();
                }
                open.countDown();
            });
        }
        if (!open.await(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
            throw new IllegalStateException(open.getCount() + " requests were never answered nor given up");
        }
        Duration wall = Duration.ofNanos(System.nanoTime() - begin);
        return outcome(arrivals, new Seen(nanos, faults, unanswered.get(), wall, Duration.ofNanos(latest)));
    }

    private static void awaitInstant(long planned) {
        for (long left = planned - System.nanoTime(); left > 0; left = planned - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
    }

    private static String nameOf(Throwable failure) {
        Throwable cause = failure.getCause() == null ? failure : failure.getCause();
        return cause.getClass().getSimpleName();
    }

    /** What was written down, by the numbers of the arrivals. */
    private record Seen(
            AtomicLongArray nanos,
            AtomicReferenceArray<String> faults,
            int unanswered,
            Duration wall,
            Duration latest) {

        boolean isFault(int number) {
            return !faults.get(number).isEmpty();
        }

        Timings timings(List<Integer> numbers) {
            int errors = (int) numbers.stream().filter(this::isFault).count();
            return new Timings(numbers.stream().mapToLong(nanos::get).toArray(), errors, wall);
        }
    }

    private static Outcome outcome(List<Arrival> arrivals, Seen seen) {
        Map<String, List<Integer>> byKind = new LinkedHashMap<>();
        Map<String, Integer> counts = new LinkedHashMap<>();
        List<Integer> everything = new ArrayList<>();
        for (int i = 0; i < arrivals.size(); i++) {
            everything.add(i);
            byKind.computeIfAbsent(arrivals.get(i).kind(), kind -> new ArrayList<>())
                    .add(i);
            if (seen.isFault(i)) {
                counts.merge(arrivals.get(i).kind() + ": " + seen.faults().get(i), 1, Integer::sum);
            }
        }
        Map<String, Timings> kinds = new LinkedHashMap<>();
        byKind.forEach((kind, numbers) -> kinds.put(kind, seen.timings(numbers)));
        return new Outcome(seen.timings(everything), kinds, counts, seen.unanswered(), seen.latest());
    }
}
