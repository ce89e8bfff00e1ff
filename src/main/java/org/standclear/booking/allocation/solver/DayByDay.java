package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.IntVar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.standclear.booking.allocation.solver.DayModel.Meaning;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;

/**
 * Gives one spell after the other its turns slot by slot, and asks each time by blocks what that leaves to the spells that
 * are still open: so the choice of who is in a spell knows what it costs the others. Then some spells at a time are asked
 * again, all slot by slot.
 */
final class DayByDay {

    private static final double WORK_EACH = 3;

    /** With more of them slot by slot, the relaxation of all spells takes longer than its bound is worth. */
    private static final int TIGHTEST = 2;

    /** The last of so many parts of a window gets its turns first. */
    private static final int LAST_PART = 3;

    /** The linear solver and making the model take so long for each number. */
    private static final double WORK_A_NUMBER = 1e-4;

    private final Problem problem;
    private final Plan start;
    private final Score asGoodAs;
    private final FairRanges fair;
    private final FairRanges ranges;
    private final List<Span> spells;
    private final Ending ending;
    private final Map<Level, Long> least = new EnumMap<>(Level.class);
    private final List<Rise> rises = new ArrayList<>();
    private Map<Meaning, Long> known = Map.of();
    private long expected;
    private long expectedParts;
    private double worked;

    /** How much more a spell's turns cost slot by slot than by blocks, whole and with fractions (in parts). */
    private record Rise(Span spell, long passedOver, long parts) {}

    /**
     * Begins; plans are to be as good as that one up to the shares.
     *
     * @param fair of all plans that are
     */
    DayByDay(Problem problem, Plan asGoodAs, FairRanges fair, Ending ending) {
        this.problem = problem;
        this.start = asGoodAs;
        this.asGoodAs = Score.of(problem, asGoodAs);
        this.fair = fair;
        // in those of several smallest shares at once there are plans that are less fair, and they cost less
        this.ranges = fair.around(asGoodAs);
        this.spells = Spells.of(problem);
        this.ending = ending;
    }

    /** What has been done, in the solver's measure. */
    double worked() {
        return worked;
    }

    /** No plan that is as good up to the shares passes over fewer wishes; empty when it is not known. */
    Map<Level, Long> bounds() {
        return least;
    }

    /** Places for as many turns as the known plan has; for fewer where a spell came to no end. */
    Plan plan() {
        List<Placed> placed = new ArrayList<>();
        if (!fair.areExact()) {
            bound(model(fair, Plan.EMPTY, spells, List.of()));
        }
        look(new Plan(placed), spells, List.of());
        List<Span> open = new ArrayList<>(spells);
        for (Span spell : order()) {
            if (!ending.isNow()) {
                placed.addAll(look(new Plan(placed), List.copyOf(open), List.of(spell)));
                open.remove(spell);
            }
        }
        boundByTightest();
        return new Plan(placed);
    }

    /** The last third, then the others from there back: by date most was lost in the middle, where little was left to choose. */
    private List<Span> order() {
        int from = spells.size() - spells.size() / LAST_PART;
        List<Span> order = new ArrayList<>(spells.subList(from, spells.size()));
        for (int day = from - 1; day >= 0; day--) {
            order.add(spells.get(day));
        }
        return order;
    }

    /** The numbers of the spells that are open, of which that one gets its places if there is one. */
    private List<Placed> look(Plan rest, List<Span> open, List<Span> exact) {
        for (boolean everywhere : new boolean[] {false, true}) {
            DayModel model = model(ranges, rest, open, exact);
            Relaxation.Prices prices = model.prices(ending);
            if (prices == null) {
                return List.of();
            }
            if (rest.placed().isEmpty() && fair.areExact()) {
                bound(model, prices);
            }
            Map<IntVar, Long> hints = known.isEmpty() ? model.values(start) : model.read(known);
            model.onlyNear(prices, hints, everywhere);
            if (!everywhere && !known.isEmpty() && nobodyStands()) {
                model.isEnough(expected);
            }
            SatRun run = model.run(hints, WORK_EACH, ending);
            worked += run.worked();
            if (run.hasSolution()) {
                Map<IntVar, Long> found = model.values(run);
                known = model.meaning(found);
                List<Placed> placed = model.placed(found, exact);
                remember(exact, prices, model.passedOver(run), placed);
                return placed;
            }
        }
        // the numbers before had turns for these too: they say nothing of what is left, and it must not cost as much
        known = Map.of();
        return List.of();
    }

    /** What is left of it is what the next look is expected to come to. */
    private void remember(List<Span> exact, Relaxation.Prices prices, long passedOver, List<Placed> placed) {
        exact.forEach(spell -> rises.add(new Rise(spell, passedOver - expected, prices.parts() - expectedParts)));
        long here = Score.of(problem, new Plan(placed)).at(Level.WISHES);
        expected = passedOver - here;
        expectedParts = prices.parts() - here * Relaxation.PARTS;
    }

    /** Where a place stands already, fewer wishes passed over are not all that is asked for. */
    private boolean nobodyStands() {
        return problem.turns().stream().allMatch(turn -> turn.standing() == null);
    }

    /** All spells open, and slot by slot those that cost more than they seemed to by blocks: what plans then cost at least. */
    private void boundByTightest() {
        List<Span> tightest = rises.stream()
                .filter(rise -> rise.parts() > 0 || rise.passedOver() > 0)
                .sorted(Comparator.comparingLong(Rise::passedOver)
                        .thenComparingLong(Rise::parts)
                        .reversed())
                .limit(TIGHTEST)
                .map(Rise::spell)
                .toList();
        if (tightest.isEmpty() || ending.isNow()) {
            return;
        }
        bound(model(fair, Plan.EMPTY, spells, tightest));
    }

    private void bound(DayModel model) {
        Relaxation.Prices prices = model.prices(ending);
        if (prices != null) {
            bound(model, prices);
        }
    }

    private void bound(DayModel model, Relaxation.Prices prices) {
        model.bounds(prices, asGoodAs::at).forEach((level, bound) -> least.merge(level, bound, Math::max));
    }

    private DayModel model(FairRanges ranges, Plan rest, List<Span> open, List<Span> exact) {
        DayModel model = new DayModel(problem, asGoodAs, ranges, rest, open, exact);
        worked += model.size() * WORK_A_NUMBER;
        return model;
    }

    /** A plan that is as good or better: the turns of some spells look for places anew with those that are left out. */
    Plan better(Plan start, double work) {
        Plan plan = start;
        double until = worked + work;
        int count = spells.size();
        for (int apart = 1; apart < count; apart++) {
            for (int first = 0; first + apart < count && worked < until && !ending.isNow(); first++) {
                plan = anew(plan, List.of(spells.get(first), spells.get(first + apart)));
            }
        }
        return plan;
    }

    private Plan anew(Plan plan, List<Span> these) {
        Plan rest = new Plan(plan.placed().stream()
                .filter(one -> these.stream().noneMatch(spell -> spell.holds(one.span())))
                .toList());
        DayModel model = model(ranges, rest, these, these);
        Relaxation.Prices prices = model.prices(ending);
        long cost = model.cost(plan);
        if (prices == null || prices.bound() >= cost) {
            return plan;
        }
        model.onlyFor(prices, cost);
        SatRun run = model.run(model.values(plan), WORK_EACH, ending);
        worked += run.worked();
        if (!run.hasSolution()) {
            return plan;
        }
        Map<IntVar, Long> found = model.values(run);
        List<Placed> placed = new ArrayList<>(rest.placed());
        placed.addAll(model.placed(found, these));
        Plan other = new Plan(placed);
        return Score.of(problem, other).compareTo(Score.of(problem, plan)) < 0 ? other : plan;
    }
}
