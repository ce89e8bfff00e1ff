package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import org.standclear.booking.allocation.solver.AskedFor.Group;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanPart;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * Looks for a plan that is as good as numbers of turns in blocks: first spell by spell, each by itself, which leaves few
 * turns without a place; then all turns of some spells look for places anew, with those that are left out, until the plan
 * is as good as the numbers. Tool changes are not looked at.
 */
final class BySpells {

    private static final double WORK_EACH = 1;

    /** Making a part takes time too. */
    private static final double WORK_TO_MAKE = 0.05;

    /** After so many looks in a row without a better plan more spells are taken together. */
    private static final int IN_VAIN = 6;

    private static final int FEWEST_TOGETHER = 2;
    private static final int MOST_TOGETHER = 5;

    /** Turns left out that look for places at a time. */
    private static final int MOST_OUT = 40;

    private final Problem problem;
    private final Problem fair;
    private final FairRanges ranges;
    private final Map<Level, Long> aim;
    private final BiPredicate<Turn, Place> suits;
    private final List<Span> spells;
    private final Ending ending;
    private final Random chance;
    private final List<Span> tight = new ArrayList<>();
    private double worked;

    /**
     * Begins.
     *
     * @param aim what the numbers come to on each level up to the wishes
     * @param suits of places that are as good in all else these are taken
     */
    BySpells(Problem problem, Map<Level, Long> aim, BiPredicate<Turn, Place> suits, Ending ending) {
        this.problem = problem;
        this.aim = Map.copyOf(aim);
        this.suits = suits;
        this.ending = ending;
        this.spells = Spells.of(problem);
        this.chance = new Random(ending.seed());
        Map<Level, Long> values = new HashMap<>(aim);
        values.putIfAbsent(Level.TOOL_CHANGES, 0L);
        this.ranges = new FairRanges(problem, new Score(values));
        Map<String, Integer> owed = new HashMap<>();
        problem.asked()
                .forEach((operator, all) -> owed.put(
                        operator,
                        Math.max(
                                problem.owed().getOrDefault(operator, 0),
                                Math.min(all, ranges.of(operator).least()))));
        this.fair = new Problem(
                problem.benches(),
                problem.slots(),
                problem.attendants(),
                problem.turns(),
                owed,
                problem.busy(),
                problem.closed());
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /** Every spell by itself: the turns that the numbers have there, on any slots of it. */
    Plan placed(BlockModel blocks, Map<IntVar, Long> numbers) {
        return placed(SpellTurns.of(problem, spells, blocks, numbers));
    }

    /** Some of them. */
    Plan placed(List<SpellTurns> these) {
        Plan plan = Plan.EMPTY;
        for (SpellTurns spell : these) {
            long most = wishes(plan) + spell.passed();
            int all = plan.placed().size() + spell.turns().size();
            Plan found = anew(plan, spell.turns(), spell::isMeant);
            if (found.placed().size() < all || wishes(found) > most) {
                found = anew(
                        found, spell.turns(), (turn, place) -> spell.spell().holds(place.span()));
            }
            if (found.placed().size() < all || wishes(found) > most) {
                tight.add(spell.spell());
            }
            plan = found;
        }
        return plan;
    }

    private long wishes(Plan plan) {
        return Score.of(problem, plan).at(Level.WISHES);
    }

    /** Spells in which not all of the numbers found a place, or only one that passes over more wishes. */
    List<Span> tight() {
        return tight;
    }

    /** A plan that is as good or better up to the wishes, until it is as good as the aim or so much is done. */
    Plan better(Plan start, double work) {
        Plan plan = start;
        double until = worked + work;
        int together = Math.min(FEWEST_TOGETHER, spells.size());
        int inVain = 0;
        while (!isAsGood(plan) && worked < until && !ending.isNow()) {
            Plan other = anew(plan, some(plan, together), (turn, place) -> true);
            int order = order(other, plan);
            inVain = order < 0 ? 0 : inVain + 1;
            if (order <= 0) {
                plan = other;
            }
            if (inVain >= IN_VAIN) {
                if (together == Math.min(MOST_TOGETHER, spells.size())) {
                    break;
                }
                together++;
                inVain = 0;
            }
        }
        return plan;
    }

    /** Whether nothing is left to find. */
    boolean isAsGood(Plan plan) {
        Score score = Score.of(problem, plan);
        return aim.entrySet().stream()
                .filter(one -> one.getKey() != Level.TOOL_CHANGES)
                .allMatch(one -> score.at(one.getKey()) <= one.getValue());
    }

    private int order(Plan one, Plan other) {
        return upToWishes(one).compareTo(upToWishes(other));
    }

    private Score upToWishes(Plan plan) {
        Map<Level, Long> values = new HashMap<>(Score.of(problem, plan).values());
        values.put(Level.TOOL_CHANGES, 0L);
        return new Score(values);
    }

    /** All turns of some spells, and some that are left out. */
    private Set<String> some(Plan plan, int together) {
        List<Span> all = new ArrayList<>(spells);
        Collections.shuffle(all, chance);
        List<Span> these = all.subList(0, together);
        Set<String> placed = plan.placed().stream().map(Placed::turn).collect(Collectors.toSet());
        List<String> out = new ArrayList<>(problem.turns().stream()
                .map(Turn::id)
                .filter(id -> !placed.contains(id))
                .toList());
        Collections.shuffle(out, chance);
        Set<String> turns = new HashSet<>(out.subList(0, Math.min(MOST_OUT, out.size())));
        plan.placed().stream()
                .filter(one -> these.stream().anyMatch(spell -> spell.holds(one.span())))
                .forEach(one -> turns.add(one.turn()));
        return turns;
    }

    /** These turns look for places anew, the others keep theirs. */
    private Plan anew(Plan plan, Set<String> turns, BiPredicate<Turn, Place> where) {
        if (turns.isEmpty()) {
            return plan;
        }
        PlanPart part = new PlanPart(fair, plan, turns);
        Places places = new Places(part.problem());
        SatModel model = new SatModel(
                part.problem(),
                kind -> places.of(kind).stream()
                        .filter(place -> where.test(kind, place))
                        .toList(),
                places);
        SatLevels levels = new SatLevels(model);
        SatStage first = levels.stages().get(0).get();
        SatStage then = levels.stages().get(2).get();
        long later = then.parts().stream()
                .mapToLong(one -> one.weight() * one.most())
                .sum();
        List<BoolVar> unsuited = unsuited(model);
        long each = unsuited.isEmpty() ? 1 : turns.size() + 1L;
        LinearExprBuilder sum = first.weighted((later + 1) * each).add(then.weighted(each));
        unsuited.forEach(sum::add);
        model.model().minimize(sum);
        noMoreThanFair(model, plan, turns);
        Set<BoolVar> now = model.taken(part.now());
        List<BoolVar> values = new ArrayList<>();
        model.forEach(values::add);
        levels.hint(values, one -> now.contains(one) ? 1 : 0);
        SatRun run = new SatRun(model.model(), SatRun.Way.PLAIN, WORK_EACH, ending, null);
        worked += run.worked() + WORK_TO_MAKE;
        if (!run.hasSolution()) {
            return plan;
        }
        Set<BoolVar> taken = values.stream().filter(one -> run.value(one) == 1).collect(Collectors.toSet());
        return part.with(new ReadPlan(model, taken).plan());
    }

    /** Taken last, when nothing else is lost by another. */
    private List<BoolVar> unsuited(SatModel model) {
        List<BoolVar> unsuited = new ArrayList<>();
        for (Group<BoolVar> group : model.alike()) {
            for (int place = 0; place < group.places().size(); place++) {
                if (!suits.test(group.one(), group.places().get(place))) {
                    unsuited.add(group.taken().get(place));
                }
            }
        }
        return unsuited;
    }

    private void noMoreThanFair(SatModel model, Plan plan, Set<String> turns) {
        Map<String, String> operators = new HashMap<>();
        problem.turns().forEach(turn -> operators.put(turn.id(), turn.operator()));
        Map<String, Integer> rest = new HashMap<>();
        plan.placed().stream()
                .filter(one -> !turns.contains(one.turn()))
                .forEach(one -> rest.merge(operators.getOrDefault(one.turn(), ""), 1, Integer::sum));
        Map<String, LinearExprBuilder> got = new HashMap<>();
        model.alike()
                .forEach(group -> group.taken()
                        .forEach(taken -> got.computeIfAbsent(group.one().operator(), key -> LinearExpr.newBuilder())
                                .add(taken)));
        got.forEach((operator, sum) -> {
            int most = ranges.of(operator).most();
            if (most < problem.turns().size()) {
                model.model().addLessOrEqual(sum, Math.max(0, most - rest.getOrDefault(operator, 0)));
            }
        });
    }
}
