package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Turn;

/**
 * Gives each spell the turns that numbers have there, one spell after the other, in an order that changes the tools as
 * seldom as can be: the cells begin with what they carried at the end of the spell before.
 */
final class TooledSpells {

    private static final double WORK_EACH = 0.3;

    /** Making a part takes time too. */
    private static final double WORK_TO_MAKE = 0.05;

    private final Problem problem;
    private final BlockSearch search;
    private final BiPredicate<Turn, Place> sameTools;
    private final Ending ending;
    private double worked;

    /** Begins with the numbers that a search came to. */
    TooledSpells(Problem problem, BlockSearch search, Ending ending) {
        this.problem = problem;
        this.search = search;
        this.sameTools = search.withTheSameTools();
        this.ending = ending;
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /** The places; turns of spells that the numbers do not fit may be left out. */
    Plan placed() {
        List<SpellTurns> all = SpellTurns.of(problem, Spells.of(problem), search.model(), search.numbers());
        int half = all.size() / 2;
        if (half == 0) {
            return placed(all, Map.of());
        }
        // the later spells need not wait for the earlier ones: they begin with the tools that the numbers have then
        Map<String, String> then = search.tools().after(all.get(half - 1).spell());
        TooledSpells late = new TooledSpells(problem, search, ending);
        Beside<Plan, Plan> found = Beside.of(
                () -> placed(all.subList(0, half), Map.of()), () -> late.placed(all.subList(half, all.size()), then));
        worked += late.worked;
        return found.here().and(found.beside());
    }

    private Plan placed(List<SpellTurns> spells, Map<String, String> begin) {
        Plan plan = Plan.EMPTY;
        for (SpellTurns spell : spells) {
            Problem there = there(spell, plan, begin);
            Map<String, String> ends = search.tools().after(spell.spell());
            Plan best = in(there, ends, spell::isMeant);
            if (!fits(there, best, spell)) {
                best = better(there, best, in(there, ends, sameTools));
            }
            if (!fits(there, best, spell)) {
                best = better(there, best, in(there, ends, (turn, place) -> true));
            }
            plan = plan.and(best);
        }
        return plan;
    }

    private boolean fits(Problem there, Plan plan, SpellTurns spell) {
        Score score = Score.of(there, plan);
        return plan.placed().size() == spell.turns().size()
                && score.at(Level.WISHES) <= spell.passed()
                && score.at(Level.TOOL_CHANGES) <= search.tools().changes(spell.spell());
    }

    private static Plan better(Problem there, Plan one, Plan other) {
        return Score.of(there, other).compareTo(Score.of(there, one)) < 0 ? other : one;
    }

    /** Nothing but that spell. */
    private Problem there(SpellTurns spell, Plan before, Map<String, String> begin) {
        return new Problem(
                problem.benches().stream()
                        .map(bench -> after(bench, before, begin))
                        .toList(),
                problem.slots().stream()
                        .filter(slot -> spell.spell().holds(slot.span()))
                        .toList(),
                problem.attendants(),
                problem.turns().stream()
                        .filter(turn -> spell.turns().contains(turn.id()))
                        .toList(),
                Map.of(),
                problem.busy(),
                problem.closed());
    }

    /** The cell with the tool that it carries after all that. */
    private Bench after(Bench bench, Plan before, Map<String, String> begin) {
        Map<String, String> tools = problem.turns().stream()
                .collect(Collectors.toMap(Turn::id, turn -> turn.work().tool()));
        return before.placed().stream()
                .filter(placed -> placed.cell().equals(bench.cell()))
                .max(Comparator.comparing(placed -> placed.span().from()))
                .map(last -> with(tools.getOrDefault(last.turn(), bench.fitted()), bench))
                .orElse(with(begin.getOrDefault(bench.cell(), bench.fitted()), bench));
    }

    private static Bench with(String tool, Bench bench) {
        return new Bench(bench.cell(), bench.tools(), tool, bench.features());
    }

    private Plan in(Problem there, Map<String, String> ends, BiPredicate<Turn, Place> where) {
        Places places = new Places(there);
        SatModel model = new SatModel(
                there,
                kind -> places.of(kind).stream()
                        .filter(place -> where.test(kind, place))
                        .toList(),
                places);
        SatLevels levels = new SatLevels(model, () -> new SatTools(model, ends).sum());
        SatStage first = levels.stages().get(0).get();
        SatStage then = levels.stages().get(2).get();
        SatStage tools = levels.stages().get(3).get();
        long each = most(tools) + 1;
        LinearExprBuilder sum =
                first.weighted((most(then) + 1) * each).add(then.weighted(each)).add(tools.weighted());
        model.model().minimize(sum);
        SatRun run = new SatRun(model.model(), SatRun.Way.PLAIN, WORK_EACH, ending, null);
        worked += run.worked() + WORK_TO_MAKE;
        if (!run.hasSolution()) {
            return Plan.EMPTY;
        }
        Set<BoolVar> taken = new HashSet<>();
        model.forEach(one -> {
            if (run.value(one) == 1) {
                taken.add(one);
            }
        });
        return new ReadPlan(model, taken).plan();
    }

    private static long most(SatStage stage) {
        return stage.parts().stream()
                .mapToLong(one -> one.weight() * one.most())
                .sum();
    }
}
