package org.standclear.booking.allocation.solver;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanPart;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Turn;

/**
 * Brings turns into the plan of a problem that is too large for the solver: again and again some people's turns look for
 * places anew, with the solver and together with some that are left out, while all others keep theirs. Which people, a
 * seed says.
 */
final class PartSearch {

    /** As many as the solver is through with in a moment. */
    private static final int PEOPLE = 30;

    private static final double WORK_EACH = 1;

    /** Making a part takes time too. */
    private static final double WORK_TO_MAKE = 0.1;

    /** After so many parts in a row without a better plan there is little left to find. */
    private static final int IN_VAIN = 60;

    private final Problem problem;
    private final Ending ending;
    private final Consumer<Plan> better;
    private final Random chance;

    PartSearch(Problem problem, Ending ending, Consumer<Plan> better) {
        this.problem = problem;
        this.ending = ending;
        this.better = better;
        this.chance = new Random(ending.seed());
    }

    /** The best plan that it comes to. */
    Plan from(Plan start, double work) {
        Plan plan = start;
        Score score = Score.of(problem, plan);
        double left = work;
        int inVain = 0;
        while (left > 0 && inVain < IN_VAIN && !ending.isNow()) {
            PlanPart part = new PlanPart(problem, plan, some(plan));
            SatSearch search = new SatSearch(part.problem(), new Places(part.problem()), part.now(), silent());
            search.settle(0, Map.of(), WORK_EACH);
            left -= search.worked() + WORK_TO_MAKE;
            Plan found = part.with(search.plan());
            Score now = Score.of(problem, found);
            inVain++;
            if (now.compareTo(score) < 0) {
                plan = found;
                score = now;
                inVain = 0;
                better.accept(plan);
            }
        }
        return plan;
    }

    /** The levels of a part are not those of the whole: nobody is told of them. */
    private Ending silent() {
        return new Ending(
                new Watcher() {
                    @Override
                    public void progress(Progress progress) {
                        // the whole plan is told of
                    }

                    @Override
                    public boolean stopped() {
                        return ending.watcher().stopped();
                    }
                },
                chance.nextInt(Integer.MAX_VALUE),
                ending.until());
    }

    private Set<String> some(Plan plan) {
        Set<String> people = people();
        Set<String> placed = plan.placed().stream().map(Placed::turn).collect(Collectors.toSet());
        Set<String> turns = problem.turns().stream()
                .filter(turn -> placed.contains(turn.id()) && people.contains(turn.operator()))
                .map(Turn::id)
                .collect(Collectors.toSet());
        List<String> without = new ArrayList<>(problem.turns().stream()
                .map(Turn::id)
                .filter(id -> !placed.contains(id))
                .toList());
        Collections.shuffle(without, chance);
        turns.addAll(without.subList(0, Math.min(without.size(), 2 * PEOPLE)));
        return turns;
    }

    /** Pairs come together: what one of them gives up, the other can use. */
    private Set<String> people() {
        List<String> operators = new ArrayList<>(
                new TreeSet<>(problem.turns().stream().map(Turn::operator).toList()));
        Collections.shuffle(operators, chance);
        Set<String> people = new HashSet<>(operators.subList(0, Math.min(PEOPLE, operators.size())));
        problem.turns().stream()
                .filter(turn -> turn.partner() != null && people.contains(turn.operator()))
                .map(Turn::partner)
                .toList()
                .forEach(people::add);
        return people;
    }
}
