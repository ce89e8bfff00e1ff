package org.standclear.trail;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.standclear.platform.ids.LabId;

/** Appends per second beside the same inserts without a chain in the same run, and how long a long record takes to verify. */
public final class TrailBenchmark {

    private static final int ACTS = 8000;
    private static final int RECORD = 100_000;

    private TrailBenchmark() {}

    /** Measures both engines and prints a table. */
    public static void main(String[] none) throws Exception {
        System.out.println("| engine | threads | appends/s | plain inserts/s | share |\n|---|---|---|---|---|");
        measure("H2, in memory", TrailDatabase.onH2());
        measure("PostgreSQL", TrailDatabase.onPostgres());
    }

    private static void measure(String engine, TrailDatabase db) throws Exception {
        try (db) {
            db.sql.execute("create table plain_entries as select * from trail_entries where 1 = 0");
            db.sql.execute("alter table plain_entries alter column lab set not null");
            db.sql.execute("alter table plain_entries alter column sequence set not null");
            db.sql.execute("alter table plain_entries add constraint plain_pk primary key (lab, sequence)");
            db.sql.execute("create index plain_subject_ix on plain_entries (lab, subject, sequence)");
            db.sql.execute("create index plain_at_ix on plain_entries (lab, at)");
            LabId lab = db.newLab();
            AtomicLong counter = new AtomicLong();
            Consumer<Integer> append = i -> db.append(lab, "Noor Candlewick booked Avocet, Thu 14:00-14:30.");
            Consumer<Integer> plain = i -> insert(db, lab, counter.incrementAndGet());
            perSecond(4, append);
            perSecond(4, plain);
            for (int threads : new int[] {1, 8, 32}) {
                double without = perSecond(threads, plain);
                double with = perSecond(threads, append);
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %d | %.0f | %.0f | %.2f |%n",
                        engine,
                        threads,
                        with,
                        without,
                        with / without);
            }
            verify(engine, db, lab);
        }
    }

    private static void insert(TrailDatabase db, LabId lab, long sequence) {
        db.transaction.executeWithoutResult(status -> db.sql.update(
                "insert into plain_entries (lab, sequence, at, kind, subject, actor, words, facts, previous_hash, hash)"
                        + " values (?, ?, ?, 'test.done', 'thing-1', null, ?, '{\"n\":\"47\"}', ?, ?)",
                lab.value(),
                sequence,
                TrailDatabase.NOON.atOffset(java.time.ZoneOffset.UTC),
                "Noor Candlewick booked Avocet, Thu 14:00-14:30.",
                EntryHash.NONE,
                EntryHash.NONE));
    }

    private static double perSecond(int threads, Consumer<Integer> act) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        List<Callable<Void>> tasks = new ArrayList<>();
        for (int t = 0; t < threads; t++) {
            tasks.add(() -> {
                for (int i = 0; i < ACTS / threads; i++) {
                    act.accept(i);
                }
                return null;
            });
        }
        long begin = System.nanoTime();
        for (Future<Void> done : pool.invokeAll(tasks)) {
            done.get();
        }
        double seconds = (System.nanoTime() - begin) / 1e9;
        pool.shutdown();
        return ACTS / threads * threads / seconds;
    }

    private static void verify(String engine, TrailDatabase db, LabId lab) {
        long there = ((TrailVerification.Whole) db.trail.verify(lab)).entries();
        for (long n = there; n < RECORD; n += 1000) {
            db.transaction.executeWithoutResult(status -> {
                for (int i = 0; i < 1000; i++) {
                    db.trail.append(TrailEntry.of(lab, "test.done", "thing-1", null, "One of many."));
                }
            });
        }
        System.gc();
        long before = used();
        long begin = System.nanoTime();
        TrailVerification found = db.trail.verify(lab);
        double seconds = (System.nanoTime() - begin) / 1e9;
        System.gc();
        System.out.printf(
                Locale.ROOT,
                "%s: verify %s in %.2f s; heap after collection before %d KiB, after %d KiB%n",
                engine,
                found instanceof TrailVerification.Whole whole ? whole.entries() + " entries, whole" : found,
                seconds,
                before,
                used());
    }

    private static long used() {
        return (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) / 1024;
    }
}
