package org.standclear.booking.allocation.solver;

import java.io.BufferedReader;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
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

    /** Begins a line with a number that medians are taken of. */
    private static final String FIGURE = "  figure: ";

    private AllocationBenchmark() {}

    /** Runs one size for each seed in a new process with the shipped heap: memory is counted by the process. */
    public static void inProcessOfItsOwn(String size) throws IOException, InterruptedException {
        Map<String, List<Double>> figures = new LinkedHashMap<>();
        String[] seeds = System.getProperty("benchmark.seed", "1").split(",");
        for (String seed : seeds) {
            one(size, seed)
                    .forEach((what, figure) -> figures.computeIfAbsent(what, key -> new ArrayList<>())
                            .add(figure));
        }
        System.out.printf("%nallocation, %s, %d seeds: median (least to most)%n", size, seeds.length);
        figures.forEach((what, all) -> {
            List<Double> sorted = all.stream().sorted().toList();
            System.out.printf(
                    Locale.ROOT,
                    "  %-60s %10.2f (%.2f to %.2f)%n",
                    what,
                    sorted.get(sorted.size() / 2),
                    sorted.get(0),
                    sorted.get(sorted.size() - 1));
        });
    }

    private static Map<String, Double> one(String size, String seed) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        System.getProperty("benchmark.heap", "-Xmx512m"),
                        "-cp",
                        System.getProperty("java.class.path"),
                        AllocationBenchmark.class.getName(),
                        size,
                        seed)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        Map<String, Double> figures = new LinkedHashMap<>();
        try (BufferedReader said = process.inputReader()) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                System.out.println(line);
                if (line.startsWith(FIGURE)) {
                    String[] parts = line.substring(FIGURE.length()).split(" = ");
                    figures.put(parts[0], Double.valueOf(parts[1]));
                }
            }
        }
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the search ended with " + process.exitValue());
        }
        return figures;
    }

    private static void figure(String what, double value) {
        System.out.printf(Locale.ROOT, "%s%s = %.2f%n", FIGURE, what, value);
    }

    /** Takes the size and the seed. */
    public static void main(String[] arguments) throws IOException {
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        boolean stress = arguments.length > 0 && arguments[0].equals("stress");
        Problem problem = (stress ? RushWeek.stress(seed) : RushWeek.college(seed)).problem();
        System.out.printf(
                "%nallocation, %s, seed %d: %d turns, %d slots%n",
                stress ? "stress" : "college",
                seed,
                problem.turns().size(),
                problem.slots().size());
        report(problem, new SatAllocator(), new Effort(seed, stress ? 60 : 30, Duration.ofMinutes(5)));
    }

    /** The clock and the processor at the first plan and at the last one that was better. */
    private static final class Course implements Watcher {

        private final long begun = System.nanoTime();
        private @Nullable Moment first;
        private @Nullable Moment best;
        private Map<Level, Long> values = Map.of();

        @Override
        public synchronized void progress(Progress progress) {
            Moment now = now();
            System.out.printf("%s  %s, at least %s%n", now, progress.values(), progress.bounds());
            first = first == null ? now : first;
            if (!progress.values().equals(values)) {
                values = progress.values();
                best = now;
            }
        }

        @Override
        public boolean stopped() {
            return false;
        }

        private Moment now() {
            return new Moment((System.nanoTime() - begun) / 1e9, processor());
        }
    }

    /** Seconds since the search began, and of the processor's time since the process did. */
    private record Moment(double clock, double processor) {

        void tell(String what) {
            figure(what + ", s by the clock", clock);
            figure(what + ", s of processor time", processor);
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.2f s by the clock, %.2f s of processor", clock, processor);
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
        course.now().tell("search over");
        Objects.requireNonNull(course.first).tell("first plan");
        Objects.requireNonNull(course.best).tell("last better plan");
        System.out.printf(
                "%d of %d placed, rules broken: %d; %s%n",
                solution.plan().placed().size(),
                problem.turns().size(),
                new PlanRules(problem).broken(solution.plan()).size(),
                solution.firstUnproven()
                        .map(level -> "first level not proven: " + level.words())
                        .orElse("proven best on every level"));
        for (Level level : Level.values()) {
            figure(level.words(), solution.score().at(level));
            figure(level.words() + ", gap", solution.gap(level));
        }
        for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
            if (line.startsWith("VmHWM")) {
                figure("peak memory, MB", Long.parseLong(line.replaceAll("\\D", "")) / 1024.0);
            }
        }
    }
}
