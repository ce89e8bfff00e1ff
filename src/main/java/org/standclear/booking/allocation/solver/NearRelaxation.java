package org.standclear.booking.allocation.solver;

import java.util.EnumMap;
import java.util.Map;
import org.standclear.booking.allocation.solver.BlockSearch.Settled;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;

/**
 * For windows too large to search as a whole: the relaxation by blocks has few fractions, so that the solver chooses among
 * what it uses in no time, and each spell then places what came out. That leaves some turns without a place, which
 * others must bring in; where the turns are is far better than steps from a quick plan find.
 */
final class NearRelaxation {

    /** The stage of the wishes. */
    private static final int WISHES = 2;

    private final Problem problem;
    private final Places places;
    private final Ending ending;
    private final Map<Level, Long> least = new EnumMap<>(Level.class);
    private double worked;

    NearRelaxation(Problem problem, Places places, Ending ending) {
        this.problem = problem;
        this.places = places;
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

    /** Places near the best for as many turns as the start has, less some that find none; nothing when there are no numbers. */
    Plan from(Plan start, double work) {
        Score score = Score.of(problem, start);
        BlockSearch search = new BlockSearch(problem, places, start, ending);
        for (int number = 0; number < WISHES; number++) {
            search.hold(search.stage(number), score.values());
        }
        Settled settled = search.settleNear(search.stage(WISHES), work);
        worked = search.worked();
        if (settled.values().isEmpty() || ending.isNow()) {
            return Plan.EMPTY;
        }
        least.putAll(settled.bounds());
        Map<Level, Long> aim = new EnumMap<>(score.values());
        aim.putAll(settled.values());
        BySpells spells = new BySpells(problem, aim, (turn, place) -> true, ending);
        Plan placed = spells.placed(search.model(), search.numbers());
        worked += spells.worked();
        return placed;
    }
}
