package org.standclear.booking.allocation.solver;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModelProto;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;

/**
 * Gives the model of the first stage, the one that decides who is left out, to CP-SAT and to Choco and tells when each
 * found what, and which bound it had in the end. The same truth values, rules, weights and first plan for both. Started by
 * {@code mvn -Psolvers process-test-classes}: each solver and way in a process of its own. Arguments: the seed and the
 * seconds, then the solver and the way.
 */
public final class SolverComparison {

    private SolverComparison() {}

    /** The first stage of a rush week, and the truth values that a quick plan makes true. */
    private record Stage(CpModelProto model, SatModel plan, Set<BoolVar> known) {

        static Stage of(Problem problem) {
            Places places = new Places(problem);
            SatModel plan = new SatModel(problem, places);
            SatLevels levels = new SatLevels(plan);
            SatStage first = levels.stages().get(0).get();
            plan.model().minimize(first.weighted());
            Set<BoolVar> known = plan.taken(new FirstPlan(problem, places).find());
            List<BoolVar> numbers = new ArrayList<>();
            plan.forEach(numbers::add);
            levels.hint(numbers, one -> known.contains(one) ? 1 : 0);
            return new Stage(plan.model().model(), plan, known);
        }

        Set<Integer> knownNumbers() {
            Set<Integer> numbers = new HashSet<>();
            known.forEach(one -> numbers.add(one.getIndex()));
            return numbers;
        }
    }

    /** Takes seed and seconds, and the solver and the way when it is to be done in this process. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (arguments.length == 2) {
            inProcessOfItsOwn(arguments, "cp-sat", "");
            for (ChocoReading.Way way : ChocoReading.Way.values()) {
                inProcessOfItsOwn(arguments, "choco", way.name());
            }
        } else {
            solve(Long.parseLong(arguments[0]), Integer.parseInt(arguments[1]), arguments[2], arguments[3]);
        }
    }

    private static void inProcessOfItsOwn(String[] arguments, String solver, String way)
            throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        SolverComparison.class.getName(),
                        arguments[0],
                        arguments[1],
                        solver,
                        way)
                .inheritIO()
                .start();
        if (process.waitFor() != 0) {
            throw new IllegalStateException(solver + " ended with " + process.exitValue());
        }
    }

    private static void solve(long seed, int seconds, String solver, String way) throws IOException {
        Loader.loadNativeLibraries();
        Stage stage = Stage.of(RushWeek.college(seed).problem());
        System.out.printf(
                "%n%s %s, seed %d, at most %d s: %d numbers, %d rules%n",
                solver,
                way.toLowerCase(Locale.ROOT),
                seed,
                seconds,
                stage.model().getVariablesCount(),
                stage.model().getConstraintsCount());
        if (solver.equals("cp-sat")) {
            withCpSat(stage, seconds);
        } else {
            new ChocoReading(stage.model(), stage.knownNumbers()).solve(ChocoReading.Way.valueOf(way), seconds);
        }
        for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
            if (line.startsWith("VmHWM")) {
                System.out.println("peak memory, " + line);
            }
        }
    }

    private static void withCpSat(Stage stage, int seconds) {
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setLinearizationLevel(2).setMaxTimeInSeconds(seconds);
        Course course = new Course();
        var status = solver.solve(stage.plan().model(), new CpSolverSolutionCallback() {
            @Override
            public void onSolutionCallback() {
                course.found((long) objectiveValue());
            }
        });
        course.over(status.toString(), (long) Math.ceil(solver.bestObjectiveBound() - 1e-6));
    }

    /** Says when what was found. */
    static final class Course {

        private final long begun = System.nanoTime();

        void found(long value) {
            say("found " + value);
        }

        void over(String how, long bound) {
            say(how + ", at least " + bound);
        }

        private void say(String what) {
            System.out.printf(
                    Locale.ROOT,
                    "%.2f s, %.2f s of processor: %s%n",
                    (System.nanoTime() - begun) / 1e9,
                    processor(),
                    what);
        }

        private static double processor() {
            return ((com.sun.management.OperatingSystemMXBean)
                                    java.lang.management.ManagementFactory.getOperatingSystemMXBean())
                            .getProcessCpuTime()
                    / 1e9;
        }
    }
}
