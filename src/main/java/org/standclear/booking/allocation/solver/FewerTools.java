package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * Makes tool changes fewer: all turns of a few spells that follow each other look for places anew, so that the plan stays
 * as good on all other levels, while those of the other spells keep theirs. Which spells, a seed says.
 */
final class FewerTools {

    private static final double WORK_EACH = 1;
    private static final double WORK_TO_MAKE = 0.1;
    private static final int FEWEST_TOGETHER = 3;
    private static final int MOST_TOGETHER = 4;

    private final Problem problem;
    private final Places places;
    private final List<Span> spells;
    private final Ending ending;
    private final Random chance;
    private double worked;

    FewerTools(Problem problem, Places places, Ending ending) {
        this.problem = problem;
        this.places = places;
        this.spells = Spells.of(problem);
        this.ending = ending;
        this.chance = new Random(ending.seed());
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /**
     * A plan that is as good or better.
     *
     * @param least no plan that is as good on the other levels has fewer changes
     */
    Plan from(Plan start, long least, double work) {
        Plan plan = start;
        int together = Math.min(FEWEST_TOGETHER, spells.size());
        Deque<Integer> firsts = shuffled(together);
        while (changes(plan) > least && worked < work && !ending.isNow()) {
            if (firsts.isEmpty()) {
                // looked at with this plan already: the same again would come to the same
                if (together == Math.min(MOST_TOGETHER, spells.size())) {
                    break;
                }
                together++;
                firsts = shuffled(together);
            }
            int first = firsts.remove();
            Span these = new Span(
                    spells.get(first).from(), spells.get(first + together - 1).until());
            Plan other = anew(plan, these, least);
            if (changes(other) < changes(plan)) {
                firsts = shuffled(together);
            }
            plan = other;
        }
        return plan;
    }

    /** Where so many spells that follow each other can begin, in an order that the seed says. */
    private Deque<Integer> shuffled(int together) {
        List<Integer> firsts = new ArrayList<>(
                IntStream.rangeClosed(0, spells.size() - together).boxed().toList());
        Collections.shuffle(firsts, chance);
        return new ArrayDeque<>(firsts);
    }

    private long changes(Plan plan) {
        return Score.of(problem, plan).at(Level.TOOL_CHANGES);
    }

    private Plan anew(Plan plan, Span these, long least) {
        Map<Turn, Set<Place>> kept = kept(plan, these);
        SatModel model = new SatModel(
                problem,
                turn -> places.of(turn).stream()
                        .filter(place -> these.holds(place.span())
                                || kept.getOrDefault(turn.kind(), Set.of()).contains(place))
                        .toList(),
                places);
        model.alike().forEach(group -> {
            for (int place = 0; place < group.places().size(); place++) {
                if (!these.holds(group.places().get(place).span())) {
                    model.model().addEquality(group.taken().get(place), 1);
                }
            }
        });
        SatLevels levels = new SatLevels(model);
        Score score = Score.of(problem, plan);
        List<SatStage> stages = levels.stages().stream().map(next -> next.get()).toList();
        SatStage tools = stages.get(stages.size() - 1);
        stages.subList(0, stages.size() - 1)
                .forEach(stage -> stage.parts()
                        .forEach(part -> model.model().addLessOrEqual(part.sum(), score.at(part.level()))));
        model.model().addGreaterOrEqual(tools.weighted(), least);
        model.model().minimize(tools.weighted());
        Set<BoolVar> now = model.taken(plan);
        List<BoolVar> all = new ArrayList<>();
        model.forEach(all::add);
        levels.hint(all, one -> now.contains(one) ? 1 : 0);
        SatRun run = new SatRun(model.model(), SatRun.Way.PART, WORK_EACH, ending, null);
        worked += run.worked() + WORK_TO_MAKE;
        if (!run.hasSolution()) {
            return plan;
        }
        Set<BoolVar> taken = all.stream().filter(one -> run.value(one) == 1).collect(Collectors.toSet());
        Plan other = new ReadPlan(model, taken).plan();
        return Score.of(problem, other).compareTo(score) <= 0 ? other : plan;
    }

    /** Where turns outside of these spells are. */
    private Map<Turn, Set<Place>> kept(Plan plan, Span these) {
        Map<String, Placed> placed = plan.placed().stream()
                .filter(one -> !these.holds(one.span()))
                .collect(Collectors.toMap(Placed::turn, one -> one));
        Map<Turn, Set<Place>> kept = new HashMap<>();
        for (Turn turn : problem.turns()) {
            Placed one = placed.get(turn.id());
            if (one != null) {
                places.of(turn).stream()
                        .filter(place ->
                                place.cell().equals(one.cell()) && place.span().equals(one.span()))
                        .forEach(place -> kept.computeIfAbsent(turn.kind(), key -> new HashSet<>())
                                .add(place));
            }
        }
        return kept;
    }
}
