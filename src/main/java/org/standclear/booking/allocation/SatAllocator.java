package org.standclear.booking.allocation;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.SatParameters;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.standclear.core.allocation.Allocator;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Solution;

/**
 * Solves level by level with the CP-SAT solver of OR-Tools: the best value of a level becomes a rule for the next. One
 * thread and work counted by the solver itself, so that the same seed gives the same plan on any machine.
 */
@Component
class SatAllocator implements Allocator {

    /** Rounding of the solver's own bound. */
    private static final double ROUNDING = 1e-6;

    @Override
    public Solution solve(Problem problem, Effort effort, Watcher watcher) {
        Natives.load();
        return new Search(problem, effort, watcher).run();
    }

    /** The solver's own library, unpacked and loaded once. */
    private static final class Natives {

        static {
            Loader.loadNativeLibraries();
        }

        static void load() {
            // loading the class is all
        }
    }

    /** One search. */
    private static final class Search {

        private final SatModel plan;
        private final SatLevels levels;
        private final Effort effort;
        private final Watcher watcher;
        private final long until;
        private final Map<Level, Long> settled = new EnumMap<>(Level.class);
        private final Map<Level, Long> bounds = new EnumMap<>(Level.class);
        private double workLeft;
        private Set<BoolVar> best;

        Search(Problem problem, Effort effort, Watcher watcher) {
            this.plan = new SatModel(problem);
            this.levels = new SatLevels(plan);
            this.effort = effort;
            this.watcher = watcher;
            this.until = System.nanoTime() + effort.atMost().toNanos();
            this.workLeft = effort.work();
            this.best = plan.taken(new FirstPlan(problem).find());
        }

        Solution run() {
            List<Supplier<SatStage>> stages = levels.stages();
            for (int stage = 0; stage < stages.size(); stage++) {
                if (!watcher.stopped() && workLeft > 0 && secondsLeft() > 0) {
                    settle(stages.get(stage).get(), stage == stages.size() - 1);
                }
            }
            Plan found = new ReadPlan(plan, best).plan();
            return new Solution(found, Score.of(plan.problem(), found), bounds, watcher.stopped());
        }

        private double secondsLeft() {
            return (until - System.nanoTime()) / 1e9;
        }

        private void settle(SatStage stage, boolean last) {
            plan.model().minimize(stage.weighted());
            levels.hint(best);
            CpSolver solver = solver(last);
            CpSolverStatus status;
            Stopper stopper = new Stopper(solver, watcher);
            try (stopper) {
                status = solver.solve(plan.model(), new Telling(stage));
            }
            workLeft -= solver.response().getDeterministicTime();
            if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
                // stopped before it had taken the plan up that it was given
                return;
            }
            Map<Level, Long> values = stage.values(solver::value);
            settled.putAll(values);
            bounds.putAll(stage.bounds(up(solver.bestObjectiveBound()), values));
            best = new HashSet<>();
            plan.forEach(one -> {
                if (solver.booleanValue(one)) {
                    best.add(one);
                }
            });
            stage.parts()
                    .forEach(part ->
                            plan.model().addLessOrEqual(part.sum(), Objects.requireNonNull(values.get(part.level()))));
        }

        /** Half of what is left for each stage, so that a hard one leaves something for those after it. */
        private CpSolver solver(boolean last) {
            CpSolver solver = new CpSolver();
            SatParameters.Builder parameters = solver.getParameters();
            parameters.setRandomSeed((int) effort.seed());
            parameters.setNumWorkers(1);
            // the relaxation of all rules is nearly whole by itself here, and its bound is what proves a plan best
            parameters.setLinearizationLevel(2);
            parameters.setMaxDeterministicTime(last ? workLeft : workLeft / 2);
            parameters.setMaxTimeInSeconds(Math.max(0.01, secondsLeft()));
            return solver;
        }

        private static long up(double bound) {
            return Math.max(0, (long) Math.ceil(bound - ROUNDING));
        }

        /**
         * Tells the watcher of better plans with the bound then. The solver has a callback for bounds too; it crashes the
         * virtual machine (9.15).
         */
        private final class Telling extends CpSolverSolutionCallback {

            private final SatStage stage;

            Telling(SatStage stage) {
                this.stage = stage;
            }

            @Override
            public void onSolutionCallback() {
                Map<Level, Long> values = stage.values(this::value);
                Map<Level, Long> least = stage.bounds(up(bestObjectiveBound()), values);
                watcher.progress(new Progress(settled, values, least));
            }
        }
    }
}
