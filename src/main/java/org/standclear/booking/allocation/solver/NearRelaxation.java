package org.standclear.booking.allocation.solver;

import java.util.Map;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;

/**
 * For windows too large to search as a whole: the relaxation by blocks has few fractions, so that the solver chooses among
 * what it uses in no time. Spell by spell these numbers get places, and those of later spells are asked for anew; then some
 * spells at a time look again. Where the turns are is far better than steps from a quick plan find.
 */
final class NearRelaxation {

    private final Problem problem;
    private final FlowBound flow;
    private final Ending ending;
    private Map<Level, Long> least = Map.of();
    private double worked;

    NearRelaxation(Problem problem, FlowBound flow, Ending ending) {
        this.problem = problem;
        this.flow = flow;
        this.ending = ending;
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /** No plan that is as good as the start up to the shares passes over fewer wishes; empty when it is not known. */
    Map<Level, Long> bounds() {
        return least;
    }

    /** Places near the best for as many turns as the start has, less some where a spell came to no end. */
    Plan from(Plan start, double work) {
        DayByDay days = new DayByDay(problem, start, flow.ranges(Score.of(problem, start)), ending);
        Plan plan = days.plan();
        plan = days.better(plan, work - days.worked());
        worked = days.worked();
        least = days.bounds();
        return plan;
    }
}
