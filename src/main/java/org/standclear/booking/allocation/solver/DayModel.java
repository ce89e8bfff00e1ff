package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.solver.BlockModel.Option;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * Some spells of a window in numbers, while all turns in other spells keep their places: as many turns and shares as fair
 * as in a known plan, and as few wishes passed over as can be. Spells that are looked at by slots are exact; in the others
 * the order in a block and the attendants are let go of, which says what they will cost but not where each turn is.
 */
final class DayModel {

    /** The stage of the wishes; those before it are rules here. */
    private static final int WISHES = 2;

    private final BlockModel model;
    private final SatStage wishes;
    private final Set<Integer> bySlots = new HashSet<>();
    private final List<IntVar> all = new ArrayList<>();

    /**
     * What a number means, in any model of the window.
     *
     * @param who operates or attends
     * @param what of turns that are alike, or of e-stops
     */
    record Meaning(Object who, Object what, List<Where> where) {}

    /**
     * Makes the model.
     *
     * @param ranges how many turns each operator may have in all
     * @param rest the turns that keep their places; none is in an open spell
     * @param open the spells that the others may go to
     * @param exact those of them that are looked at by slots
     */
    DayModel(Problem problem, Score asGoodAs, FairRanges ranges, Plan rest, List<Span> open, List<Span> exact) {
        Problem part = part(problem, rest, open);
        Places places = new Places(part);
        model = new BlockModel(
                part,
                places,
                Blocks.ofCellsTogether(part, places, exact),
                span -> exact.stream().anyMatch(one -> one.holds(span)));
        SatLevels levels = new SatLevels(model, LinearExpr::newBuilder);
        for (SatStage.Part one : levels.stages().get(0).get().parts()) {
            if (one.level() != Level.UNDER_MINIMUM || !ranges.keepTheMinimum()) {
                model.model().addLessOrEqual(one.sum(), asGoodAs.at(one.level()));
            }
        }
        asFair(ranges, got(problem, rest));
        wishes = levels.stages().get(WISHES).get();
        model.model().minimize(wishes.weighted());
        model.forEach(all::add);
        for (Option option : model.options()) {
            Span span = option.places().get(0).span();
            if (exact.stream().anyMatch(one -> one.holds(span))) {
                bySlots.add(option.number().getIndex());
                model.standing(option).values().forEach(one -> bySlots.add(one.getIndex()));
            }
        }
    }

    private static Set<String> turns(Plan plan) {
        return plan.placed().stream().map(Placed::turn).collect(Collectors.toSet());
    }

    /** How many turns each operator has in a plan; who has none is not in it. */
    static Map<String, Integer> got(Problem problem, Plan plan) {
        Set<String> placed = turns(plan);
        return problem.turns().stream()
                .filter(turn -> placed.contains(turn.id()))
                .collect(Collectors.toMap(Turn::operator, turn -> 1, Integer::sum));
    }

    private static Problem part(Problem problem, Plan rest, List<Span> open) {
        Set<String> placed = turns(rest);
        Map<String, Integer> got = got(problem, rest);
        List<Turn> turns = problem.turns().stream()
                .filter(turn -> !placed.contains(turn.id()))
                .toList();
        Map<String, Integer> owed = new HashMap<>();
        problem.owed().forEach((operator, all) -> owed.put(operator, Math.max(0, all - got.getOrDefault(operator, 0))));
        owed.keySet().retainAll(turns.stream().map(Turn::operator).toList());
        return new Problem(
                problem.benches(),
                problem.slots().stream()
                        .filter(slot -> open.stream().anyMatch(one -> one.holds(slot.span())))
                        .toList(),
                problem.attendants(),
                turns,
                owed,
                problem.busy(),
                problem.closed());
    }

    private void asFair(FairRanges ranges, Map<String, Integer> got) {
        Map<String, LinearExprBuilder> sums = new TreeMap<>();
        model.alike()
                .forEach(group -> group.taken()
                        .forEach(number -> sums.computeIfAbsent(
                                        group.one().operator(), operator -> LinearExpr.newBuilder())
                                .add(number)));
        sums.forEach((operator, sum) -> {
            int has = got.getOrDefault(operator, 0);
            FairRanges.Range range = ranges.of(operator);
            model.model()
                    .addLinearConstraint(
                            sum, Math.max(0, range.least() - has), Math.max(0L, (long) range.most() - has));
        });
    }

    /** How many numbers there are: how much it takes to look at it. */
    int size() {
        return all.size();
    }

    /** What a plan's turns in the open spells cost. */
    long cost(Plan plan) {
        Score score = Score.of(model.problem(), plan);
        return wishes.parts().stream()
                .mapToLong(one -> one.weight() * score.at(one.level()))
                .sum();
    }

    /** The relaxation; null when the linear solver says nothing. */
    Relaxation.@Nullable Prices prices(Ending ending) {
        return new Relaxation(model.model().model()).solve(ending.secondsLeft());
    }

    /** What the prices say of all that is as good as the known plan on the levels before. */
    Map<Level, Long> bounds(Relaxation.Prices prices, ToLongFunction<Level> values) {
        Map<Level, Long> known = new EnumMap<>(Level.class);
        wishes.parts().forEach(one -> known.put(one.level(), values.applyAsLong(one.level())));
        return wishes.bounds(prices.bound(), known);
    }

    /**
     * From now on only numbers that the relaxation has any of, or that are known of; in spells by slots those too that cost
     * nothing beyond what they pay for.
     */
    void onlyNear(Relaxation.Prices prices, Map<IntVar, Long> known, boolean cheapEverywhere) {
        for (IntVar one : all) {
            boolean cheap =
                    prices.isNearlyFree(one.getIndex()) && (cheapEverywhere || bySlots.contains(one.getIndex()));
            if (!cheap && !prices.has(one.getIndex()) && known.getOrDefault(one, 0L) == 0) {
                model.model().addLessOrEqual(one, 0);
            }
        }
    }

    /** From now on only what can be in numbers that cost at most so much. */
    void onlyFor(Relaxation.Prices prices, long cost) {
        for (IntVar one : all) {
            long slack = prices.slack(one.getIndex(), cost);
            if (prices.isDear(one.getIndex()) && slack < one.getDomain().max()) {
                model.model().addLessOrEqual(one, slack);
            }
        }
        model.model().addLessOrEqual(wishes.weighted(), cost);
    }

    /** From now on a plan that passes over so many wishes is good enough: nothing better is looked for. */
    void isEnough(long passedOver) {
        passedOver().ifPresent(sum -> model.model().addGreaterOrEqual(sum, passedOver));
    }

    /** How many wishes the open spells pass over. */
    long passedOver(SatRun run) {
        return passedOver().map(run::value).orElse(0L);
    }

    private Optional<LinearExprBuilder> passedOver() {
        return wishes.parts().stream()
                .filter(one -> one.level() == Level.WISHES)
                .findAny()
                .map(SatStage.Part::sum);
    }

    /** Runs from what is known. */
    SatRun run(Map<IntVar, Long> known, double work, Ending ending) {
        model.model().clearHints();
        // in an order that is the same each time
        all.stream().filter(known::containsKey).forEach(one -> model.model().addHint(one, known.getOrDefault(one, 0L)));
        return new SatRun(model.model(), SatRun.Way.PLAIN, work, ending, null);
    }

    /** The numbers of a plan's turns in the open spells. */
    Map<IntVar, Long> values(Plan plan) {
        return model.values(plan);
    }

    /** What the numbers came to. */
    Map<IntVar, Long> values(SatRun run) {
        Map<IntVar, Long> values = new HashMap<>();
        all.forEach(one -> values.put(one, run.value(one)));
        return values;
    }

    /** What those numbers say in any model. */
    Map<Meaning, Long> meaning(Map<IntVar, Long> values) {
        Map<Meaning, Long> meaning = new HashMap<>();
        byMeaning().forEach((one, number) -> meaning.put(one, values.getOrDefault(number, 0L)));
        return meaning;
    }

    /** The numbers here that mean the same. */
    Map<IntVar, Long> read(Map<Meaning, Long> meaning) {
        Map<IntVar, Long> values = new HashMap<>();
        byMeaning().forEach((one, number) -> {
            Long value = meaning.get(one);
            if (value != null) {
                values.put(number, value);
            }
        });
        return values;
    }

    private Map<Meaning, IntVar> byMeaning() {
        Map<Meaning, IntVar> byMeaning = new LinkedHashMap<>();
        for (Option option : model.options()) {
            List<Where> where = option.places().stream().map(Where::of).toList();
            byMeaning.put(new Meaning(option.kind().operator(), option.kind(), where), option.number());
            var work = option.kind().work();
            model.standing(option)
                    .forEach((person, one) ->
                            byMeaning.put(new Meaning(person, List.of(work.minutes(), work.helper()), where), one));
        }
        return byMeaning;
    }

    /** Places for numbers by slots, in all of these spells. */
    List<Placed> placed(Map<IntVar, Long> values, List<Span> spells) {
        return new ReadNumbers(model, values).in(spells);
    }
}
