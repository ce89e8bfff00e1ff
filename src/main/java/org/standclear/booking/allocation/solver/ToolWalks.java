package org.standclear.booking.allocation.solver;

import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.BetterPlan;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;

/**
 * Makes tool changes fewer by exchanges that pass over no more wishes: two walks by chance at a time, each with a number of
 * its own to draw from, and the better one goes on.
 */
final class ToolWalks {

    private static final int ROUNDS = 2;

    /** Twenty of these to a try; the walks of a round take about a third of a second each. */
    private static final long LOOKS = 20_000_000;

    private final Problem problem;
    private final Ending ending;
    private final BetterPlan better;

    ToolWalks(Problem problem, Places places, Ending ending) {
        this.problem = problem;
        this.ending = ending;
        this.better = new BetterPlan(problem, places, ending::isNow);
    }

    /**
     * A plan that is as good or better.
     *
     * @param least no plan that is as good on the other levels has fewer changes
     */
    Plan from(Plan start, long least) {
        Plan plan = start;
        for (int round = 0; round < ROUNDS && changes(plan) > least && !ending.isNow(); round++) {
            Plan known = plan;
            long seed = ending.seed() + 2L * round;
            Beside<Plan, Plan> walks = Beside.of(
                    () -> better.withFewestToolChanges(known, seed, least, LOOKS),
                    () -> better.withFewestToolChanges(known, seed + 1, least, LOOKS));
            boolean first = Score.of(problem, walks.here()).compareTo(Score.of(problem, walks.beside())) <= 0;
            plan = first ? walks.here() : walks.beside();
        }
        return plan;
    }

    private long changes(Plan plan) {
        return Score.of(problem, plan).at(Level.TOOL_CHANGES);
    }
}
