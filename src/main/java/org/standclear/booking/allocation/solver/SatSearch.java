package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpSolverSolutionCallback;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;

/**
 * Makes a plan better stage by stage with CP-SAT: what a stage comes to is a rule for the next. One thread and work counted by
 * the solver itself, so that the same seed gives the same plan on any machine.
 */
final class SatSearch {

    private final SatModel model;
    private final SatLevels levels;
    private final List<Supplier<SatStage>> stages;
    private final Ending ending;
    private final Map<Level, Long> settled = new EnumMap<>(Level.class);
    private final Map<Level, Long> bounds = new EnumMap<>(Level.class);
    private final List<BoolVar> numbers = new ArrayList<>();
    private Set<BoolVar> best;
    private double worked;

    /**
     * How a search is ended.
     *
     * @param until by the clock of {@link System#nanoTime}
     */
    record Ending(Watcher watcher, long seed, long until) {

        double secondsLeft() {
            return (until - System.nanoTime()) / 1e9;
        }

        boolean isNow() {
            return watcher.stopped() || secondsLeft() <= 0;
        }
    }

    SatSearch(Problem problem, Places places, Plan start, Ending ending) {
        model = new SatModel(problem, places);
        levels = new SatLevels(model);
        model.forEach(numbers::add);
        stages = levels.stages();
        this.ending = ending;
        best = model.taken(start);
    }

    /** How many stages there are. */
    int stages() {
        return stages.size();
    }

    /** The best plan so far. */
    Plan plan() {
        return new ReadPlan(model, best).plan();
    }

    /** Goes on from a plan that is as good on the stages that are through. */
    void take(Plan better) {
        best = model.taken(better);
    }

    /** What no plan can do better than, of the levels that were looked at. */
    Map<Level, Long> bounds() {
        return bounds;
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /** Searches a stage unless what is known proves it already; what it comes to holds for those after it. */
    void settle(int number, Map<Level, Long> known, double work) {
        SatStage stage = stages.get(number).get();
        Score score = Score.of(model.problem(), plan());
        Map<Level, Long> values = new EnumMap<>(Level.class);
        stage.parts().forEach(part -> {
            values.put(part.level(), score.at(part.level()));
            bounds.put(part.level(), Math.min(score.at(part.level()), known.getOrDefault(part.level(), 0L)));
        });
        tell(values);
        if (values.entrySet().stream().anyMatch(one -> bounds.getOrDefault(one.getKey(), 0L) < one.getValue())) {
            search(stage, values, work);
        }
        settled.putAll(values);
        stage.parts().forEach(part -> model.model().addLessOrEqual(part.sum(), values.getOrDefault(part.level(), 0L)));
    }

    private void search(SatStage stage, Map<Level, Long> values, double work) {
        stage.parts()
                .forEach(part -> model.model().addGreaterOrEqual(part.sum(), bounds.getOrDefault(part.level(), 0L)));
        model.model().minimize(stage.weighted());
        levels.hint(numbers, one -> best.contains(one) ? 1 : 0);
        SatRun run = new SatRun(model.model(), SatRun.Way.THOROUGH, work, ending, new Telling(stage));
        worked += run.worked();
        if (!run.hasSolution()) {
            // stopped before it had taken the plan up that it was given
            return;
        }
        values.putAll(stage.values(run::value));
        raise(stage.bounds(run.least(), values), values);
        best = new HashSet<>();
        model.forEach(one -> {
            if (run.value(one) == 1) {
                best.add(one);
            }
        });
    }

    private void raise(Map<Level, Long> least, Map<Level, Long> values) {
        least.forEach((level, bound) -> bounds.merge(level, bound, Math::max));
        bounds.replaceAll((level, bound) -> Math.min(bound, values.getOrDefault(level, bound)));
    }

    private void tell(Map<Level, Long> values) {
        ending.watcher().progress(new Progress(settled, values, bounds));
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
            raise(stage.bounds(SatRun.up(bestObjectiveBound()), values), values);
            tell(values);
        }
    }
}
