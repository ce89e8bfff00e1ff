package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.IntVar;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.solver.BlockModel.Option;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/** What no plan can do better than, stage by stage, by a search for numbers of turns in blocks of slots; and these numbers. */
final class BlockSearch {

    private final BlockModel model;
    private final BlockTools tools;
    private final SatLevels levels;
    private final List<Supplier<SatStage>> stages;
    private final List<IntVar> all = new ArrayList<>();
    private final Ending ending;
    private Map<IntVar, Long> numbers;
    private Relaxation.@Nullable Prices prices;
    private Map<Level, Long> more = Map.of();
    private double worked;

    /** Begins with the numbers of a known plan. */
    BlockSearch(Problem problem, Places places, Plan start, Ending ending) {
        this(problem, places, List.of(), start, ending);
    }

    /** The same, with slots for blocks in some times. */
    BlockSearch(Problem problem, Places places, List<Span> single, Plan start, Ending ending) {
        this.model = new BlockModel(problem, places, new Blocks(problem, places, single));
        this.tools = new BlockTools(model);
        this.levels = new SatLevels(model, tools::sum);
        this.stages = levels.stages();
        this.ending = ending;
        model.forEach(all::add);
        numbers = model.values(start);
    }

    /**
     * What came of a stage.
     *
     * @param values of the numbers found; empty when none were
     * @param bounds no plan that is as good on the stages before has less; empty when the search ended before it knew any
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

    /**
     * Searches a stage among all that {@link #hold} and {@link #atMost} let be.
     *
     * @param known what the levels cannot be less than
     * @param least the same of their weighted sum
     */
    Settled settle(SatStage stage, Map<Level, Long> known, long least, double work) {
        price(stage);
        long low = prices == null ? least : Math.max(least, prices.bound());
        model.model().addGreaterOrEqual(stage.weighted(), low);
        stage.parts()
                .forEach(part -> model.model().addGreaterOrEqual(part.sum(), known.getOrDefault(part.level(), 0L)));
        boolean changes = stage.parts().get(0).level() == Level.TOOL_CHANGES;
        SatRun run = run(changes ? SatRun.Way.PLAIN : SatRun.Way.TIGHT, work);
        if (!run.hasSolution()) {
            prices = null;
            return new Settled(Map.of(), boundsOfNone(run, stage, low));
        }
        read(run);
        Map<Level, Long> values = stage.values(run::value);
        if (cost(stage, values) <= Math.max(low, run.least())) {
            // of numbers that are not the best, the tools at the end of a day say little
            tools.read(run::value);
        }
        return new Settled(values, stage.bounds(Math.max(low, run.least()), values));
    }

    /** What is known though no numbers were found: that there are none so near, or else what the relaxation says. */
    private Map<Level, Long> boundsOfNone(SatRun run, SatStage stage, long low) {
        if (!more.isEmpty()) {
            return run.isImpossible() ? stage.bounds(cost(stage, more), more) : Map.of();
        }
        Map<Level, Long> most = new EnumMap<>(Level.class);
        stage.parts().forEach(part -> most.put(part.level(), part.most()));
        return run.isImpossible() ? Map.of() : stage.bounds(low, most);
    }

    /**
     * The prices of the relaxation, unless they are known: before any bound is a rule of the model, which would take all
     * prices upon itself. Whether there are any.
     */
    boolean price(SatStage stage) {
        model.model().minimize(stage.weighted());
        if (prices == null) {
            prices = new Relaxation(model.model().model()).solve(ending.secondsLeft());
        }
        return prices != null;
    }

    private static long cost(SatStage stage, Map<Level, Long> values) {
        return stage.parts().stream()
                .mapToLong(part -> part.weight() * values.getOrDefault(part.level(), 0L))
                .sum();
    }

    private SatRun run(SatRun.Way way, double work) {
        levels.hint(all, one -> numbers.getOrDefault(one, 0L));
        SatRun run = new SatRun(model.model(), way, work, ending, null);
        worked += run.worked();
        return run;
    }

    private void read(SatRun run) {
        Map<IntVar, Long> found = new LinkedHashMap<>();
        all.forEach(one -> found.put(one, run.value(one)));
        numbers = found;
    }

    /** Takes out what no numbers that cost so much can have: prices of the relaxation prove it. */
    private void shrink(Relaxation.Prices priced, long cost) {
        for (IntVar one : all) {
            long most = one.getDomain().max();
            long slack = priced.slack(one.getIndex(), cost);
            if (slack >= most) {
                continue;
            }
            if (priced.isDear(one.getIndex())) {
                model.model().addLessOrEqual(one, slack);
            } else {
                model.model().addGreaterOrEqual(one, most - slack);
            }
        }
    }

    /** What the numbers say of the cells' tools. */
    BlockTools tools() {
        return tools;
    }

    /** Places in blocks that have turns with the same tool, of those that the numbers have. */
    BiPredicate<Turn, Place> withTheSameTools() {
        Map<Integer, Set<String>> used = new HashMap<>();
        for (var group : model.alike()) {
            for (Option option : model.options(group.one())) {
                if (numbers.getOrDefault(option.number(), 0L) > 0) {
                    option.blocks()
                            .forEach(block -> used.computeIfAbsent(block, key -> new HashSet<>())
                                    .add(option.kind().work().tool()));
                }
            }
        }
        Map<Where, List<Integer>> blocks = new HashMap<>();
        model.alike()
                .forEach(group -> model.options(group.one())
                        .forEach(option ->
                                option.places().forEach(place -> blocks.put(Where.of(place), option.blocks()))));
        return (turn, place) -> blocks.getOrDefault(Where.of(place), List.of()).stream()
                .allMatch(block -> !used.containsKey(block)
                        || used.get(block).contains(turn.work().tool()));
    }

    /** From now on only what costs no more than that on the stage, whose levels may still be traded among themselves. */
    void atMost(SatStage stage, Map<Level, Long> values) {
        model.model().minimize(stage.weighted());
        prices = new Relaxation(model.model().model()).solve(ending.secondsLeft());
        model.model().addLessOrEqual(stage.weighted(), cost(stage, values));
        if (prices != null) {
            shrink(prices, cost(stage, values));
        }
        more = new EnumMap<>(Level.class);
        stage.parts().forEach(part -> more.put(part.level(), values.getOrDefault(part.level(), 0L)));
        more.computeIfPresent(stage.parts().get(stage.parts().size() - 1).level(), (level, most) -> most + 1);
    }

    /** From now on only what is as good as that on the stage. */
    void hold(SatStage stage, Map<Level, Long> values) {
        stage.parts().forEach(part -> {
            Long most = values.get(part.level());
            if (most != null) {
                model.model().addLessOrEqual(part.sum(), most);
            }
        });
        if (prices != null) {
            shrink(prices, cost(stage, values));
        }
        prices = null;
        more = Map.of();
    }
}
