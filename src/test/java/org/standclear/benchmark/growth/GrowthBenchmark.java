package org.standclear.benchmark.growth;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.standclear.benchmark.Engine;
import org.standclear.benchmark.PackagedApplication;
import org.standclear.testing.TestDatabase;

/**
 * Times pages at labs whose pasts differ in length only. All labs run at once and are asked in turns, so that what else the
 * machine does falls on all alike. On PostgreSQL the blocks that each statement reads are counted as well, and those that
 * read more at the last size than at the first are named. By {@code -Dbenchmark.sizes}, {@code .rounds}, {@code .pages}.
 */
public final class GrowthBenchmark {

    private static final double TARGET = 1.5;

    /** None: only what is read is counted, which needs no quiet machine. */
    private static final int ROUNDS = Integer.getInteger("benchmark.rounds", 40);

    private static final int WARM_UPS = 25;
    private static final int COUNTED = 5;

    /** A statement is named when it reads twice as much and so many blocks more for one page. */
    private static final int MANY_BLOCKS = 40;

    /** Longer than any of the rounds that the application does by itself takes to come round. */
    private static final long ROUNDS_MS = 65_000;

    private final String engine;
    private final List<GrownLab> labs;
    private final List<GrowthPage> pages;

    private GrowthBenchmark(String engine, List<GrownLab> labs) {
        this.engine = engine;
        this.labs = labs;
        String wanted = System.getProperty("benchmark.pages", "");
        pages = GrowthPage.all(LocalDate.now(Clock.systemUTC())).stream()
                .filter(page -> page.name().contains(wanted))
                .toList();
    }

    /** Times and counts on PostgreSQL. */
    public static void onPostgresql() throws Exception {
        try (Engine engine = Engine.countingPostgresql()) {
            run(engine, true);
        }
    }

    /** Times on H2 in a file. */
    public static void onH2() throws Exception {
        try (Engine engine = Engine.h2File()) {
            run(engine, false);
        }
    }

    private static void run(Engine engine, boolean counting) throws Exception {
        PackagedApplication.start(engine.database()).close();
        String[] sizes =
                System.getProperty("benchmark.sizes", "1000,100000,1000000").split(",");
        List<TestDatabase> databases = new ArrayList<>();
        for (int i = 0; i < sizes.length; i++) {
            databases.add(DatabaseCopy.of(engine.database(), i));
        }
        List<GrownLab> labs = new ArrayList<>();
        try {
            for (int i = 0; i < sizes.length; i++) {
                labs.add(GrownLab.of(databases.get(i), Integer.parseInt(sizes[i])));
            }
            GrowthBenchmark benchmark = new GrowthBenchmark(engine.name(), labs);
            if (ROUNDS > 0) {
                benchmark.times();
            }
            if (counting) {
                benchmark.reads();
            }
        } finally {
            for (GrownLab lab : labs) {
                lab.close();
            }
        }
    }

    private void times() {
        String sizes = labs.stream()
                .map(lab -> String.format(Locale.ROOT, "%,d", lab.size()))
                .reduce("", (a, b) -> a + " " + b + " |");
        System.out.println("\nmedian ms of " + ROUNDS + " on " + engine + "\n\n| page |" + sizes
                + " last to first |\n|---|" + "---|".repeat(labs.size() + 1));
        int missed = 0;
        for (GrowthPage page : pages) {
            double[] medians = medians(page);
            double ratio = medians[medians.length - 1] / medians[0];
            missed += ratio > TARGET ? 1 : 0;
            StringBuilder row = new StringBuilder("| " + page.name() + " |");
            Arrays.stream(medians).forEach(median -> row.append(String.format(Locale.ROOT, " %.1f |", median)));
            System.out.println(row.append(String.format(Locale.ROOT, " %.2f |", ratio)));
        }
        System.out.println("\npages above " + TARGET + ": " + missed + " of " + pages.size());
    }

    /** The labs are asked in turns, a different one first each time. */
    private double[] medians(GrowthPage page) {
        for (int i = 0; i < WARM_UPS; i++) {
            labs.forEach(lab -> lab.time(page));
        }
        long[][] nanos = new long[labs.size()][ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < labs.size(); i++) {
                int which = (round + i) % labs.size();
                nanos[which][round] = labs.get(which).time(page);
            }
        }
        return Stream.of(nanos)
                .mapToDouble(times -> Arrays.stream(times).sorted().toArray()[times.length / 2] / 1e6)
                .toArray();
    }

    private void reads() throws InterruptedException {
        List<GrownLab> ends = List.of(labs.get(0), labs.get(labs.size() - 1));
        List<StatementReads> reads =
                ends.stream().map(lab -> new StatementReads(lab.database())).toList();
        System.out.println("\nblocks that are read at the first and the last size; statements that read more:\n");
        reads.forEach(StatementReads::reset);
        Thread.sleep(ROUNDS_MS);
        Set<String> byItself = new HashSet<>(reads.get(0).blocks().keySet());
        tell("what happens by itself in " + ROUNDS_MS / 1000 + " s", reads, 1, Set.of());
        for (GrowthPage page : pages) {
            reads.forEach(StatementReads::reset);
            for (int i = 0; i < COUNTED; i++) {
                ends.forEach(lab -> lab.time(page));
            }
            tell(page.name(), reads, COUNTED, byItself);
        }
    }

    private static void tell(String name, List<StatementReads> reads, int times, Set<String> without) {
        Map<String, Long> first = reads.get(0).blocks();
        Map<String, Long> last = reads.get(1).blocks();
        first.keySet().removeAll(without);
        last.keySet().removeAll(without);
        System.out.printf(Locale.ROOT, "%s: %d, %d%n", name, sum(first) / times, sum(last) / times);
        last.forEach((statement, blocks) -> {
            long before = first.getOrDefault(statement, 0L);
            if (blocks >= 2 * before && blocks - before >= (long) MANY_BLOCKS * times) {
                System.out.printf(
                        "    %d -> %d: %s%n", before / times, blocks / times, statement.replaceAll("\\s+", " "));
            }
        });
    }

    private static long sum(Map<String, Long> blocks) {
        return blocks.values().stream().mapToLong(Long::longValue).sum();
    }
}
