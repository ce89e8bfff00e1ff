package org.standclear.booking.allocation.solver;

import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.solver.BlockSearch.Settled;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;

/**
 * Takes a plan through the stages block by block: what can be had at best in numbers of turns, then places for these
 * numbers. A bound so found is one for all plans as long as the plan keeps what was held when it was found.
 */
final class ByBlocks {

    /** The last stage that places are looked for by spells for; tool changes come after it. */
    private static final int WISHES = 2;

    private static final int TOOLS = 3;

    private static final int MOST_ROUNDS = 6;

    /** Of the work that is left, for looks for places: the rest is for a search slot by slot. */
    private static final int PART = 4;

    private static final int SMALL_PART = 8;

    private static final double WORK_FOR_TOOLS = 1;

    /** Finer numbers pass over so many wishes more at most when they are first asked for. */
    private static final long MORE_WISHES = 1;

    /** So many when the solver has neither found nor ruled out any among those for so much work. */
    private static final long MANY_WISHES = 4;

    private static final double WORK_FOR_FEW = 1.5;

    /** Only so near to what is known could a proof be had in the time that people wait. */
    private static final int FEW_CHANGES = 4;

    private final Problem problem;
    private final Places places;
    private final Ending ending;
    private final Function<Plan, Map<Level, Long>> flows;
    private BlockSearch search;
    private final SlotBound bound;
    private final Map<Level, Long> held = new EnumMap<>(Level.class);
    private final Map<Level, Long> least = new EnumMap<>(Level.class);
    private final Set<Span> tight = new LinkedHashSet<>();
    private @Nullable SatStage wishes;
    private Plan plan;
    /** What days came to that were given what the numbers have there; some turns may be left out. */
    private Plan last = Plan.EMPTY;

    private double left;

    /**
     * Begins.
     *
     * @param flows what flows say that no plan as good as that can do better than
     */
    ByBlocks(Problem problem, Places places, Plan start, Ending ending, Function<Plan, Map<Level, Long>> flows) {
        this.problem = problem;
        this.places = places;
        this.ending = ending;
        this.flows = flows;
        this.plan = start;
        this.search = new BlockSearch(problem, places, start, ending);
        this.bound = new SlotBound(problem, places);
    }

    Plan plan() {
        return plan;
    }

    /** Goes through all stages with so much work; what is left of it. */
    double run(double work) {
        left = work;
        Map<Level, Long> known = flows.apply(plan);
        for (int number = 0; number <= WISHES && left > 0 && !ending.isNow(); number++) {
            settle(number, known);
        }
        if (!held.containsKey(Level.WISHES) || ending.isNow()) {
            return left;
        }
        placeBySpells();
        if (isAsGood(Level.UNFAIRNESS) && !ending.isNow()) {
            holdWishes();
            settle(TOOLS, known);
            placeWithFewTools();
        }
        return left;
    }

    /** Whether the plan comes to no more than is held, up to that level. */
    private boolean isAsGood(Level last) {
        Score score = Score.of(problem, plan);
        return held.entrySet().stream()
                .filter(one -> one.getKey().compareTo(last) <= 0)
                .allMatch(one -> score.at(one.getKey()) <= one.getValue());
    }

    /** Nothing is found out again that the plan has proven, and what flows say of other plans says nothing of numbers. */
    private void settle(int number, Map<Level, Long> flowing) {
        SatStage stage = search.stage(number);
        SatStage bySlots = number <= WISHES ? bound.stage(number) : null;
        Score score = Score.of(problem, plan);
        Map<Level, Long> values = new EnumMap<>(Level.class);
        Map<Level, Long> known = new EnumMap<>(Level.class);
        boolean asGood = held.entrySet().stream().allMatch(one -> one.getValue() >= score.at(one.getKey()));
        boolean proven = asGood;
        for (SatStage.Part part : stage.parts()) {
            values.put(part.level(), score.at(part.level()));
            known.put(part.level(), asGood ? flowing.getOrDefault(part.level(), 0L) : 0L);
            proven = proven && flowing.getOrDefault(part.level(), 0L) >= score.at(part.level());
        }
        if (!proven) {
            OptionalLong slots = bySlots == null
                    ? OptionalLong.empty()
                    : Beside.of(
                                    () -> bound.of(bySlots, Math.max(0.01, ending.secondsLeft())),
                                    () -> search.price(stage))
                            .here();
            double before = search.worked();
            Settled settled = search.settle(stage, known, slots.orElse(0), number > WISHES ? WORK_FOR_TOOLS : left / 2);
            left -= search.worked() - before;
            least.putAll(settled.bounds());
            if (settled.values().isEmpty()) {
                return;
            }
            values.putAll(settled.values());
        }
        held.putAll(values);
        if (number == WISHES) {
            // held when a plan is there: it may pass over more
            wishes = stage;
            return;
        }
        search.hold(stage, values);
        if (bySlots != null) {
            bound.hold(bySlots, values);
        }
    }

    /** Takes a plan for the numbers up to the wishes; where days have none, finer numbers are asked for first. */
    private void placeBySpells() {
        boolean newlyTight = place();
        for (int round = 0; round < MOST_ROUNDS && newlyTight && !isSettled() && left > 0; round++) {
            newlyTight = finer() && place();
        }
        if (!isAsGood(Level.WISHES) && left > 0 && !ending.isNow()) {
            BySpells spells = new BySpells(problem, held, (turn, place) -> true, ending);
            take(spells.better(plan, left / PART));
            left -= spells.worked();
        }
    }

    /** Whether the plan comes to what is known that no plan betters. */
    private boolean isSettled() {
        return isAsGood(Level.UNFAIRNESS) && isWishesProven();
    }

    /** Gives each day what the numbers have there, two days at a time; whether days that they do not fit are newly known. */
    private boolean place() {
        List<SpellTurns> all = SpellTurns.of(problem, Spells.of(problem), search.model(), search.numbers());
        BySpells early = new BySpells(problem, held, (turn, place) -> true, ending);
        BySpells late = new BySpells(problem, held, (turn, place) -> true, ending);
        int half = all.size() / 2;
        Beside<Plan, Plan> found =
                Beside.of(() -> late.placed(all.subList(half, all.size())), () -> early.placed(all.subList(0, half)));
        last = found.beside().and(found.here());
        take(last);
        left -= early.worked() + late.worked();
        return tight.addAll(early.tight()) | tight.addAll(late.tight());
    }

    private void take(Plan other) {
        if (Score.of(problem, other).compareTo(Score.of(problem, plan)) < 0) {
            plan = other;
        }
    }

    /**
     * Days that the numbers do not fit are asked for again with every slot for a block, among numbers that pass over hardly
     * more wishes, since few could be in these; where there are none, or the solver does not say, among some more. Whether
     * any were found.
     */
    private boolean finer() {
        long more = MORE_WISHES;
        for (int trial = 0; trial < MOST_ROUNDS && left > 0 && !ending.isNow(); trial++) {
            BlockSearch finer = new BlockSearch(problem, places, List.copyOf(tight), last, ending);
            for (int number = 0; number < WISHES; number++) {
                finer.hold(finer.stage(number), held);
            }
            SatStage stage = finer.stage(WISHES);
            Map<Level, Long> most = new EnumMap<>(held);
            most.merge(Level.WISHES, more, Long::sum);
            finer.atMost(stage, most);
            double work = more == MORE_WISHES ? Math.min(WORK_FOR_FEW, left / 2) : left / 2;
            Settled settled = finer.settle(stage, least, 0, work);
            left -= finer.worked();
            settled.bounds().forEach((level, bound) -> least.merge(level, bound, Math::max));
            boolean proven = settled.values().equals(settled.bounds());
            if (!settled.values().isEmpty() && (proven || more > MORE_WISHES)) {
                search = finer;
                wishes = stage;
                held.putAll(settled.values());
                return true;
            }
            if (settled.values().isEmpty() && !settled.bounds().isEmpty()) {
                held.merge(Level.WISHES, more + 1, Long::sum);
            } else if (more == MORE_WISHES) {
                more = MANY_WISHES;
            } else {
                return false;
            }
        }
        return false;
    }

    private boolean isWishesProven() {
        Score score = Score.of(problem, plan);
        return score.at(Level.MOVED) <= least.getOrDefault(Level.MOVED, 0L)
                && score.at(Level.WISHES) <= least.getOrDefault(Level.WISHES, 0L);
    }

    /** As many wishes as the plan passes over, and no more: for what comes after them. */
    private void holdWishes() {
        Score score = Score.of(problem, plan);
        Map<Level, Long> values = new EnumMap<>(Level.class);
        if (wishes != null) {
            wishes.parts().forEach(part -> values.put(part.level(), score.at(part.level())));
            search.hold(wishes, values);
        }
        held.putAll(values);
    }

    /** Places for the numbers with as few tool changes as they have; then fewer, some spells at a time. */
    private void placeWithFewTools() {
        Map<Level, Long> aim = new EnumMap<>(held);
        aim.remove(Level.TOOL_CHANGES);
        TooledSpells tooled = new TooledSpells(problem, search, ending);
        Plan placed = tooled.placed();
        left -= tooled.worked();
        take(placed);
        BySpells spells = new BySpells(problem, aim, search.withTheSameTools(), ending);
        if (!spells.isAsGood(placed)) {
            take(spells.better(placed, left / SMALL_PART));
        }
        left -= spells.worked();
        fewerTools(least.getOrDefault(Level.TOOL_CHANGES, 0L));
    }

    /** By exchanges; where few are left above what is known, some spells at a time as well. */
    private void fewerTools(long known) {
        take(new ToolWalks(problem, places, ending).from(plan, known));
        if (Score.of(problem, plan).at(Level.TOOL_CHANGES) <= known + FEW_CHANGES) {
            FewerTools fewer = new FewerTools(problem, places, ending);
            take(fewer.from(plan, known, left / PART));
            left -= fewer.worked();
        }
    }

    /** What no plan as good as this one on the earlier levels can do better than. */
    Map<Level, Long> bounds() {
        Map<Level, Long> bounds = new EnumMap<>(Level.class);
        Score score = Score.of(problem, plan);
        for (Level level : Level.values()) {
            bounds.put(level, Math.min(score.at(level), least.getOrDefault(level, 0L)));
            if (score.at(level) > held.getOrDefault(level, Long.MIN_VALUE)) {
                break;
            }
        }
        return bounds;
    }
}
