package org.standclear.booking.allocation;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.standclear.booking.allocation.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;

/** What no plan can do better than, stage by stage, by a search for numbers of turns in blocks of slots; and these numbers. */
final class BlockSearch {

    /** By so much more than without the fine rules a stage may come to. */
    private static final int MOST_STEPS = 6;

    private final BlockModel model;
    private final SatLevels levels;
    private final List<Supplier<SatStage>> stages;
    private final List<IntVar> all = new ArrayList<>();
    private final Ending ending;
    private final Set<IntVar> out = new HashSet<>();
    private Map<IntVar, Long> numbers;
    private double worked;

    /** Begins with the numbers of a known plan. */
    BlockSearch(Problem problem, Places places, Plan start, Ending ending) {
        this.model = new BlockModel(problem, places, new Blocks(problem, places));
        this.levels = new SatLevels(model, () -> new BlockTools(model).sum());
        this.stages = levels.stages();
        this.ending = ending;
        model.forEach(all::add);
        numbers = model.values(start);
    }

    /**
     * What came of a stage.
     *
     * @param values of the numbers found; empty when none were
     * @param bounds no plan that is as good on the stages before has less
     */
    record Settled(Map<Level, Long> values, Map<Level, Long> bounds) {}

    BlockModel model() {
        return model;
    }

    int stages() {
        return stages.size();
    }

    /** A stage, added to the model when it is asked for. */
    SatStage stage(int number) {
        return stages.get(number).get();
    }

    /** The best numbers so far. */
    Map<IntVar, Long> numbers() {
        return numbers;
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /** Searches a stage among all that {@link #hold} lets be. */
    Settled settle(SatStage stage, Map<Level, Long> known, double work) {
        stage.parts()
                .forEach(part -> model.model().addGreaterOrEqual(part.sum(), known.getOrDefault(part.level(), 0L)));
        model.model().minimize(stage.weighted());
        SatRun run = run(model.model(), SatRun.Way.PLAIN, work);
        if (!run.hasSolution()) {
            return new Settled(Map.of(), Map.of());
        }
        read(run);
        Map<Level, Long> values = stage.values(run::value);
        return new Settled(values, stage.bounds(run.least(), values));
    }

    /**
     * Goes up from what a stage came to without the fine rules about people's time until there are numbers that keep these
     * as well. What prices prove cannot be is taken out before each look, which leaves little when the bound is near.
     *
     * @param settled what the stage came to without them
     */
    Settled withFineRules(SatStage stage, Settled settled, double work) {
        model.addFineRules();
        model.model().minimize(stage.weighted());
        Relaxation.Prices prices = new Relaxation(model.model().model()).solve(ending.secondsLeft());
        Map<Level, Long> values = new EnumMap<>(settled.values());
        Level last = stage.parts().get(stage.parts().size() - 1).level();
        double until = worked + work;
        boolean proven = settled.bounds().equals(settled.values());
        for (int step = 0; prices != null && step < MOST_STEPS && worked < until && !ending.isNow(); step++) {
            CpModel look = model.model().getClone();
            look.clearObjective();
            hold(look, stage, values);
            shrink(look, prices, cost(stage, values));
            SatRun run = run(look, SatRun.Way.FIRST, until - worked);
            if (run.hasSolution()) {
                read(run);
                Map<Level, Long> bounds = proven ? values : settled.bounds();
                Map<Level, Long> found = stage.values(run::value);
                hold(stage, found);
                shrink(model.model(), prices, cost(stage, found));
                return new Settled(found, bounds);
            }
            proven = proven && run.isHopeless();
            values.merge(last, 1L, Long::sum);
            if (proven) {
                settled = new Settled(settled.values(), Map.copyOf(values));
            }
        }
        return new Settled(Map.of(), settled.bounds());
    }

    private static long cost(SatStage stage, Map<Level, Long> values) {
        return stage.parts().stream()
                .mapToLong(part -> part.weight() * values.getOrDefault(part.level(), 0L))
                .sum();
    }

    private SatRun run(CpModel what, SatRun.Way way, double work) {

        levels.hint(what, all, one -> numbers.getOrDefault(one, 0L));
        SatRun run = new SatRun(what, way, work, ending, null);
        worked += run.worked();
        return run;
    }

    private void read(SatRun run) {
        Map<IntVar, Long> found = new LinkedHashMap<>();
        all.forEach(one -> found.put(one, run.value(one)));
        numbers = found;
    }

    /** Takes out what no numbers that cost so much can have: prices of the relaxation prove it. */
    private void shrink(CpModel what, Relaxation.Prices prices, long cost) {
        out.clear();
        for (IntVar one : all) {
            long most = one.getDomain().max();
            long slack = prices.slack(one.getIndex(), cost);
            if (slack >= most) {
                continue;
            }
            if (prices.isDear(one.getIndex())) {
                what.addLessOrEqual(one, slack);
                if (slack == 0) {
                    out.add(one);
                }
            } else {
                what.addGreaterOrEqual(one, most - slack);
            }
        }
    }

    /** Whether a number can be more than none in anything as good as what is held. */
    boolean couldBe(IntVar number) {
        return !out.contains(number);
    }

    /** From now on only what is as good as that on the stage. */
    void hold(SatStage stage, Map<Level, Long> values) {
        hold(model.model(), stage, values);
    }

    private static void hold(CpModel what, SatStage stage, Map<Level, Long> values) {
        stage.parts().forEach(part -> {
            Long most = values.get(part.level());
            if (most != null) {
                what.addLessOrEqual(part.sum(), most);
            }
        });
    }
}
