package org.standclear.booking.allocation;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.allocation.Allocator;
import org.standclear.core.allocation.Allocator.Effort;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Solution;

/**
 * Times the search for a plan at both sizes of the design: first plan, best plan, gap and the largest memory that the
 * process had. Arguments: {@code college} or {@code stress}, then the seed.
 */
public final class AllocationBenchmark {

    private AllocationBenchmark() {}

    /** Runs one size in a new process with the shipped heap: memory is counted by the process. */
    public static void inProcessOfItsOwn(String size) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        System.getProperty("benchmark.heap", "-Xmx512m"),
                        "-cp",
                        System.getProperty("java.class.path"),
                        AllocationBenchmark.class.getName(),
                        size,
                        System.getProperty("benchmark.seed", "1"))
                .inheritIO()
                .start();
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the search ended with " + process.exitValue());
        }
    }

    /** Takes the size and the seed. */
    public static void main(String[] arguments) throws IOException {
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        boolean stress = arguments.length > 0 && arguments[0].equals("stress");
        Problem problem = (stress ? RushWeek.stress(seed) : RushWeek.college(seed)).problem();
        Effort effort = new Effort(seed, stress ? 60 : 30, Duration.ofSeconds(60));
        System.out.printf(
                "%nallocation, %s, seed %d: %d turns, %d slots%n",
                stress ? "stress" : "college",
                seed,
                problem.turns().size(),
                problem.slots().size());
        report(problem, new SatAllocator(), effort);
    }

    /** The clock and the processor at the first plan and at the last one that was better. */
    private static final class Course implements Watcher {

        private final long begun = System.nanoTime();
        private @Nullable String first;
        private @Nullable String best;
        private Map<Level, Long> values = Map.of();

        @Override
        public synchronized void progress(Progress progress) {
            System.out.printf("%s  %s, at least %s%n", now(), progress.values(), progress.bounds());
            if (first == null) {
                first = now() + ", " + progress.values();
            }
            if (!progress.values().equals(values)) {
                values = progress.values();
                best = now();
            }
        }

        @Override
        public boolean stopped() {
            return false;
        }

        private String now() {
            return String.format(
                    Locale.ROOT,
                    "%.2f s by the clock, %.2f s of processor",
                    (System.nanoTime() - begun) / 1e9,
                    processor());
        }
    }

    /** Of the whole process, its start among it. */
    private static double processor() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e9;
    }

    private static void report(Problem problem, Allocator allocator, Effort effort) throws IOException {
        Course course = new Course();
        Solution solution = allocator.solve(problem, effort, course);
        System.out.println("first plan after " + course.first);
        System.out.println("last better plan after " + course.best);
        System.out.printf(
                "search over after %s; %d of %d placed, proven best on every level: %s%n",
                course.now(), solution.plan().placed().size(), problem.turns().size(), solution.isProvenBest());
        for (Level level : Level.values()) {
            System.out.printf(
                    Locale.ROOT,
                    "  %-50s %8d, at least %8d, gap %d%n",
                    level.words(),
                    solution.score().at(level),
                    solution.bounds().getOrDefault(level, 0L),
                    solution.gap(level));
        }
        System.out.printf(
                Locale.ROOT,
                "gap of turns left out: %.2f %% of all turns; rules broken: %d%n",
                100.0 * solution.gap(Level.UNPLACED) / problem.turns().size(),
                new PlanRules(problem).broken(solution.plan()).size());
        List<String> memory = Files.readAllLines(Path.of("/proc/self/status"));
        memory.stream()
                .filter(line -> line.startsWith("VmHWM"))
                .forEach(line -> System.out.println("peak memory, " + line));
    }
}
