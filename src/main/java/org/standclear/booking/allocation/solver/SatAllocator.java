package org.standclear.booking.allocation.solver;

import com.google.ortools.Loader;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator;
import org.standclear.core.allocation.BetterPlan;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Solution;
import org.standclear.core.allocation.Turn;

/**
 * Makes a quick plan, makes it better by steps of its own, says by maximum flows what cannot be bettered, and gives the
 * rest to the CP-SAT solver of OR-Tools: as a whole where that is small enough, else part by part.
 */
@Component
public class SatAllocator implements Allocator {

    /** More truth values than these the solver cannot search as a whole in the time that people wait. */
    private static final long WHOLE = 30_000;

    /** Up to so many the solver is asked for the tool changes slot by slot as well. */
    private static final long SMALL = 3_000;

    /** After so many rounds without a better plan there is little left to find. */
    private static final int IN_VAIN = 2;

    /** Looks at places that take about as long as a unit of the solver's work. */
    private static final double LOOKS_A_WORK = 20_000_000;

    private static final long A_LOOK = 2_000_000;

    /** Looks at each place that a turn could have: a few bookings have so few that more would only cost time. */
    private static final long LOOKS_A_PLACE = 200;

    @Override
    public Solution solve(Problem problem, Effort effort, Watcher watcher) {
        Natives.load();
        return new Search(problem, effort, watcher).run();
    }

    /** The solver's own library, unpacked and loaded once. */
    private static final class Natives {

        static {
            Loader.loadNativeLibraries();
        }

        static void load() {
            // loading the class is all
        }
    }

    /** One search. */
    private static final class Search {

        private final Problem problem;
        private final Places places;
        private final Effort effort;
        private final Ending ending;
        private final BetterPlan betterPlan;
        private @Nullable FlowBound flow;
        private double workLeft;

        Search(Problem problem, Effort effort, Watcher watcher) {
            this.problem = problem;
            this.places = new Places(problem);
            this.effort = effort;
            this.ending = new Ending(
                    watcher, effort.seed(), System.nanoTime() + effort.atMost().toNanos());
            this.betterPlan = new BetterPlan(problem, places, ending::isNow);
            this.workLeft = effort.work();
        }

        Solution run() {
            Plan plan = new FirstPlan(problem, places).find();
            ending.watcher()
                    .progress(new Progress(Map.of(), Score.of(problem, plan).values(), Map.of()));
            if (ending.isNow()) {
                return new Solution(
                        plan,
                        Score.of(problem, plan),
                        Map.of(),
                        ending.watcher().stopped());
            }
            boolean whole = truthValues() <= WHOLE;
            double work = effort.work() / (whole ? 20 : 10);
            long looks = (long) (work / 2 * LOOKS_A_WORK);
            looks = truthValues() <= SMALL ? Math.min(looks, LOOKS_A_PLACE * truthValues()) : looks;
            Map<Level, Long> least = bounds(Score.of(problem, plan));
            plan = betterPlan.withMoreTurns(plan, effort.seed(), least, looks);
            // where the solver looks for places itself, a look at them is for who stops it early
            plan = betterPlan.withBetterPlaces(plan, effort.seed(), whole ? Math.min(looks, A_LOOK) : looks);
            workLeft -= work;
            tell(plan);
            if (ending.isNow()) {
                return solution(plan, Map.of());
            }
            return whole ? whole(plan) : inParts(plan);
        }

        /** Who is left out part by part; then other places for the same turns, as often as it helps. */
        private Solution inParts(Plan start) {
            Plan plan = start;
            if (!isProven(plan)) {
                plan = new PartSearch(problem, ending, this::tell).from(plan, workLeft / 2);
                workLeft /= 2;
            }
            Plan before = plan;
            NearRelaxation near = new NearRelaxation(problem, flow(), ending);
            if (isProven(plan) && !ending.isNow()) {
                plan = betterOf(plan, near.from(plan, effort.work() / 2));
                workLeft -= near.worked();
            }
            if (plan.equals(before)) {
                plan = inOtherPlaces(plan);
            }
            return solution(plan, isAsFair(before, plan) ? near.bounds() : Map.of());
        }

        /** The better of a plan and of what comes of places that may leave out more. */
        private Plan betterOf(Plan plan, Plan mayLeaveOutMore) {
            if (mayLeaveOutMore.placed().isEmpty()) {
                return plan;
            }
            long looks = (long) (effort.work() / 20 * LOOKS_A_WORK);
            Plan other = mayLeaveOutMore;
            if (!isAsFair(other, plan)) {
                other = betterPlan.from(mayLeaveOutMore, effort.seed(), bounds(Score.of(problem, plan)), looks);
            }
            other = betterPlan.withFewerToolChanges(other, effort.seed(), looks);
            workLeft -= effort.work() / 20;
            if (Score.of(problem, other).compareTo(Score.of(problem, plan)) >= 0) {
                return plan;
            }
            tell(other);
            return other;
        }

        /** Whether two plans come to the same up to the shares. */
        private boolean isAsFair(Plan one, Plan other) {
            Score first = Score.of(problem, one);
            Score second = Score.of(problem, other);
            return Stream.of(Level.values())
                    .filter(level -> level.compareTo(Level.UNFAIRNESS) <= 0)
                    .allMatch(level -> first.at(level) == second.at(level));
        }

        private Plan inOtherPlaces(Plan start) {
            Plan plan = start;
            int inVain = 0;
            for (long round = 1; workLeft > 0 && inVain < IN_VAIN && !ending.isNow(); round++) {
                double work = effort.work() / 20;
                Plan other = betterPlan.withBetterPlaces(plan, effort.seed() + round, (long) (work * LOOKS_A_WORK));
                workLeft -= work;
                inVain++;
                if (!other.equals(plan)) {
                    plan = other;
                    inVain = 0;
                    tell(plan);
                }
            }
            return plan;
        }

        private boolean isProven(Plan plan) {
            Score score = Score.of(problem, plan);
            return bounds(score).getOrDefault(Level.UNPLACED, 0L) >= score.at(Level.UNPLACED);
        }

        private Map<Level, Long> bounds(Score score) {
            return flow().of(score);
        }

        private FlowBound flow() {
            FlowBound known = flow == null ? new FlowBound(problem, places) : flow;
            flow = known;
            return known;
        }

        /** What flows say of all levels that they bound. */
        private Map<Level, Long> known(Plan plan) {
            Score score = Score.of(problem, plan);
            Map<Level, Long> known = new EnumMap<>(bounds(score));
            if (flow != null) {
                known.put(Level.WISHES, flow.wishes(score));
            }
            return known;
        }

        private long truthValues() {
            return problem.turns().stream()
                    .map(Turn::kind)
                    .distinct()
                    .mapToLong(kind -> places.of(kind).size())
                    .sum();
        }

        private void tell(Plan plan) {
            Score score = Score.of(problem, plan);
            ending.watcher().progress(new Progress(Map.of(), score.values(), bounds(score)));
        }

        /** By blocks first, which is nearly always enough; what that leaves open the solver looks at slot by slot. */
        private Solution whole(Plan start) {
            ByBlocks blocks = new ByBlocks(problem, places, start, ending, this::known);
            workLeft = blocks.run(workLeft);
            Plan plan = blocks.plan();
            Solution solution = solution(plan, blocks.bounds());
            ending.watcher().progress(new Progress(Map.of(), solution.score().values(), solution.bounds()));
            if (solution.isProvenBest() || ending.isNow() || workLeft <= 0) {
                return solution;
            }
            if (solution.firstUnproven().filter(Level.TOOL_CHANGES::equals).isPresent() && truthValues() > SMALL) {
                // slot by slot no bound of these is found in the time that people wait
                return solution;
            }
            return slotBySlot(betterPlan.withBetterPlaces(plan, effort.seed(), (long) LOOKS_A_WORK), blocks.bounds());
        }

        /** Half of what is left for each stage, so that a hard one leaves something for those after it. */
        private Solution slotBySlot(Plan start, Map<Level, Long> proven) {
            SatSearch search = new SatSearch(problem, places, start, ending);
            for (int stage = 0; stage < search.stages() && !ending.isNow() && workLeft > 0; stage++) {
                boolean last = stage == search.stages() - 1;
                double before = search.worked();
                Map<Level, Long> known = known(search.plan());
                proven.forEach((level, least) -> known.merge(level, least, Math::max));
                search.settle(stage, known, last ? workLeft : workLeft / 2);
                if (search.worked() > before && !last) {
                    search.take(betterPlan.withBetterPlaces(search.plan(), effort.seed(), (long) LOOKS_A_WORK));
                }
                workLeft -= search.worked() - before;
            }
            Map<Level, Long> bounds = new EnumMap<>(search.bounds());
            proven.forEach((level, least) -> bounds.merge(level, least, Math::max));
            return solution(search.plan(), bounds);
        }

        private Solution solution(Plan plan, Map<Level, Long> solved) {
            Score score = Score.of(problem, plan);
            Map<Level, Long> bounds = known(plan);
            solved.forEach((level, least) -> bounds.merge(level, least, Math::max));
            return new Solution(plan, score, bounds, ending.watcher().stopped());
        }
    }
}
