package org.standclear.booking.allocation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
final class AllocationBenchmark {

    private AllocationBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        boolean stress = arguments.length > 0 && arguments[0].equals("stress");
        Problem problem = (stress ? RushWeek.stress(seed) : RushWeek.college(seed)).problem();
        Effort effort =
                stress ? new Effort(seed, 60, Duration.ofSeconds(60)) : new Effort(seed, 30, Duration.ofSeconds(60));
        report(problem, new SatAllocator(), effort);
    }

    private static void report(Problem problem, Allocator allocator, Effort effort) throws IOException {
        long begun = System.nanoTime();
        List<String> lines = new ArrayList<>();
        Solution solution = allocator.solve(problem, effort, telling(begun, lines));
        lines.forEach(System.out::println);
        System.out.printf(
                Locale.ROOT,
                "%d turns, %d slots: %.2f s, %d placed, proven best %s%n",
                problem.turns().size(),
                problem.slots().size(),
                (System.nanoTime() - begun) / 1e9,
                solution.plan().placed().size(),
                solution.isProvenBest());
        for (Level level : Level.values()) {
            System.out.printf(
                    "  %-50s %8d, at least %8d%n",
                    level.words(), solution.score().at(level), solution.bounds().getOrDefault(level, 0L));
        }
        System.out.println("rules broken: "
                + new PlanRules(problem).broken(solution.plan()).size());
        Files.lines(Path.of("/proc/self/status"))
                .filter(line -> line.startsWith("VmHWM"))
                .forEach(System.out::println);
    }

    private static Watcher telling(long begun, List<String> lines) {
        return new Watcher() {
            @Override
            public void progress(Progress progress) {
                lines.add(String.format(
                        Locale.ROOT,
                        "%7.2f s  %s, at least %s",
                        (System.nanoTime() - begun) / 1e9,
                        progress.values(),
                        progress.bounds()));
            }

            @Override
            public boolean stopped() {
                return false;
            }
        };
    }
}
