package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.LabId;

/** Many threads of two instances append to one lab: the chain has no gap and no fork, and follows the commits. */
class TrailConcurrencyIT {

    private static final int THREADS = 8;
    private static final int ACTS = 50;

    private static void runTogether(List<Callable<Void>> tasks) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(tasks.size());
        try {
            for (Future<Void> done : threads.invokeAll(tasks)) {
                done.get();
            }
        } finally {
            threads.shutdownNow();
        }
    }

    private static Callable<Void> acts(TrailDatabase instance, LabId lab, String who) {
        return () -> {
            for (int i = 0; i < ACTS; i++) {
                int act = i;
                instance.transaction.executeWithoutResult(status -> {
                    instance.trail.append(TrailEntry.of(lab, "test.begun", who, null, who + " " + act));
                    instance.trail.append(TrailEntry.of(lab, "test.done", who, null, who + " " + act));
                    if (act % 10 == 9) {
                        status.setRollbackOnly();
                    }
                });
            }
            return null;
        };
    }

    private static void staysOneChain(TrailDatabase one) throws Exception {
        try (one;
                TrailDatabase two = one.secondInstance()) {
            LabId lab = one.newLab();
            List<Callable<Void>> tasks = new ArrayList<>();
            for (int i = 0; i < THREADS; i++) {
                tasks.add(acts(i % 2 == 0 ? one : two, lab, "thread " + i));
            }
            runTogether(tasks);

            int expected = THREADS * ACTS * 2 * 9 / 10;
            List<RecordedEntry> latestFirst = one.reader.latest(TrailFilter.all(lab), Long.MAX_VALUE, 10_000);
            assertThat(one.trail.verify(lab))
                    .isEqualTo(new TrailVerification.Whole(
                            expected, latestFirst.get(0).hash()));
            assertThat(latestFirst)
                    .extracting(RecordedEntry::sequence)
                    .containsExactlyElementsOf(LongStream.rangeClosed(1, expected)
                            .map(i -> expected + 1 - i)
                            .boxed()
                            .toList());
            for (int i = 0; i < expected; i += 2) {
                assertThat(latestFirst.get(i).words())
                        .isEqualTo(latestFirst.get(i + 1).words());
            }
        }
    }

    /** The act that commits first stands first, also when it began last. */
    private static void followsTheCommits(TrailDatabase db) throws Exception {
        try (db) {
            LabId lab = db.newLab();
            db.transaction.executeWithoutResult(slow -> {
                db.trail.append(TrailEntry.of(lab, "test.done", "x", null, "began first"));
                ExecutorService other = Executors.newSingleThreadExecutor();
                try {
                    other.submit(() -> db.append(lab, "committed first")).get();
                } catch (Exception e) {
                    throw new IllegalStateException(e);
                } finally {
                    other.shutdownNow();
                }
            });

            assertThat(db.reader.latest(TrailFilter.all(lab), Long.MAX_VALUE, 10))
                    .extracting(RecordedEntry::words)
                    .containsExactly("began first", "committed first");
        }
    }

    @Nested
    class OnH2 {
        @Test
        void hasNoGapAndNoFork() throws Exception {
            staysOneChain(TrailDatabase.onH2());
        }

        @Test
        void standsInTheOrderOfTheCommits() throws Exception {
            followsTheCommits(TrailDatabase.onH2());
        }
    }

    @Nested
    class OnPostgres {
        @Test
        void hasNoGapAndNoFork() throws Exception {
            staysOneChain(TrailDatabase.onPostgres());
        }

        @Test
        void standsInTheOrderOfTheCommits() throws Exception {
            followsTheCommits(TrailDatabase.onPostgres());
        }
    }
}
