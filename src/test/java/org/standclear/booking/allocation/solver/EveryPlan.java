package org.standclear.booking.allocation.solver;

import java.util.ArrayList;
import java.util.List;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * Finds the best plan of a small problem by trying all of them: each turn left out, or on each slot with each attendant.
 * Asks only the rules of a plan, neither the search for places nor a solver.
 */
final class EveryPlan {

    private final Problem problem;
    private final PlanRules rules;
    private Score best;

    EveryPlan(Problem problem) {
        this.problem = problem;
        this.rules = new PlanRules(problem);
        this.best = Score.of(problem, Plan.EMPTY);
    }

    Score best() {
        next(0, new ArrayList<>());
        return best;
    }

    private void next(int index, List<Placed> placed) {
        if (index == problem.turns().size()) {
            Score score = Score.of(problem, new Plan(placed));
            best = score.compareTo(best) < 0 ? score : best;
            return;
        }
        next(index + 1, placed);
        Turn turn = problem.turns().get(index);
        for (FreeSlot slot : problem.slots()) {
            for (Attendant attendant : problem.attendants()) {
                Span span = Span.minutes(slot.span().from(), turn.work().minutes());
                placed.add(new Placed(turn.id(), slot.cell(), span, attendant.person()));
                // what is broken already stays broken, whatever is added
                if (rules.broken(new Plan(placed)).isEmpty()) {
                    next(index + 1, placed);
                }
                placed.remove(placed.size() - 1);
            }
        }
    }
}
