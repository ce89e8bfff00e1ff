package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.SatParameters;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.solver.SatSearch.Ending;

/** One call of the solver: one thread and work counted by itself, so that the same seed gives the same on any machine. */
final class SatRun {

    /** Rounding of the solver's own bound. */
    private static final double ROUNDING = 1e-6;

    private final CpSolver solver = new CpSolver();
    private final CpSolverStatus status;

    /** What the solver is asked to spare itself. */
    enum Way {
        /** Everything is done to make the model smaller first: for one that is hard. */
        THOROUGH,
        /** Nothing is tried out first and no rules are added: for a model whose relaxation is nearly whole by itself. */
        PLAIN,
        /**
         * The same, made smaller once only and searched from its bound up: where the relaxation says nearly what can be had
         * at best.
         */
        TIGHT,
        /** Nothing is tried out first: for a part of a plan, of which there are many. */
        PART
    }

    /** Runs. */
    SatRun(CpModel model, Way way, double work, Ending ending, @Nullable CpSolverSolutionCallback telling) {
        SatParameters.Builder parameters = solver.getParameters();
        parameters.setRandomSeed((int) ending.seed());
        parameters.setNumWorkers(1);
        // the relaxation of all rules is nearly whole by itself here, and its bound is what proves a plan best
        parameters.setLinearizationLevel(2);
        parameters.setMaxDeterministicTime(work);
        parameters.setMaxTimeInSeconds(Math.max(0.01, ending.secondsLeft()));
        if (way != Way.THOROUGH) {
            parameters.setCpModelProbingLevel(0);
            parameters.setSymmetryLevel(0);
            parameters.setCutLevel(way == Way.PART ? 1 : 0);
        }
        if (way == Way.TIGHT) {
            parameters.setUseObjectiveLbSearch(true);
            parameters.setMaxPresolveIterations(1);
        }
        Stopper stopper = new Stopper(solver, ending.watcher());
        try (stopper) {
            status = telling == null ? solver.solve(model) : solver.solve(model, telling);
        }
    }

    /** Whether there is a solution, the best or not. */
    boolean hasSolution() {
        return status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
    }

    /** Whether it is proven that there is none. */
    boolean isImpossible() {
        return status == CpSolverStatus.INFEASIBLE;
    }

    long value(IntVar number) {
        return solver.value(number);
    }

    long value(LinearExprBuilder sum) {
        return solver.value(sum);
    }

    /** No solution makes what was minimised less than this. */
    long least() {
        return up(solver.bestObjectiveBound());
    }

    /** What the solver has done, in its own measure; about seconds. */
    double worked() {
        return solver.response().getDeterministicTime();
    }

    static long up(double bound) {
        return Math.max(0, (long) Math.ceil(bound - ROUNDING));
    }
}
