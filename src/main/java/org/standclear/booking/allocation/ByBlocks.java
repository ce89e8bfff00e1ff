package org.standclear.booking.allocation;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.function.Predicate;
import org.standclear.booking.allocation.BlockModel.Option;
import org.standclear.booking.allocation.BlockSearch.Settled;
import org.standclear.booking.allocation.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;

/**
 * Takes a plan through the stages block by block: what can be had at best in numbers of turns, then places for these
 * numbers. A bound so found is one for all plans as long as the plan keeps what was held when it was found.
 */
final class ByBlocks {

    /** The last stage that places are looked for by spells for; tool changes come after it. */
    private static final int WISHES = 2;

    /** Of the work that is left, for each look for places: the rest is for a search slot by slot. */
    private static final int PART = 4;

    private final Problem problem;
    private final Places places;
    private final Ending ending;
    private final Function<Plan, Map<Level, Long>> flows;
    private final BlockSearch search;
    private final SlotBound bound;
    private final Map<Level, Long> held = new EnumMap<>(Level.class);
    private final Map<Level, Long> least = new EnumMap<>(Level.class);
    private Plan plan;
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
        if (held.containsKey(Level.WISHES) && placeBySpells() && left > 0 && !ending.isNow()) {
            settle(WISHES + 1, known);
            place();
        }
        return left;
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
            OptionalLong slots =
                    bySlots == null ? OptionalLong.empty() : bound.of(bySlots, Math.max(0.01, ending.secondsLeft()));
            double before = search.worked();
            Settled settled = search.settle(stage, known, slots.orElse(0), left / (number > WISHES ? 1 : 2));
            left -= search.worked() - before;
            least.putAll(settled.bounds());
            if (settled.values().isEmpty()) {
                return;
            }
            values.putAll(settled.values());
        }
        search.hold(stage, values);
        if (bySlots != null) {
            bound.hold(bySlots, values);
        }
        held.putAll(values);
    }

    /** Takes a plan for the numbers up to the wishes; whether it is as good as they are. */
    private boolean placeBySpells() {
        BySpells spells = new BySpells(problem, held, ending);
        Plan found = spells.better(spells.placed(search.model(), search.numbers()), left / PART);
        left -= spells.worked();
        if (Score.of(problem, found).compareTo(Score.of(problem, plan)) < 0) {
            plan = found;
        }
        return spells.isAsGood(plan);
    }

    /** Takes a plan for the numbers if one is found: with as few tool changes, else with as few as can be had later. */
    private void place() {
        BlockPlaces found = new BlockPlaces(search.model(), search.numbers(), places);
        Predicate<Option> could = option -> search.couldBe(option.number());
        Optional<Plan> other = Optional.empty();
        if (left > 0 && !ending.isNow()) {
            other = found.find(held, could.and(found.withTheSameTools()), left / PART, ending);
        }
        if (other.isEmpty() && left > found.worked() && !ending.isNow()) {
            Map<Level, Long> before = new EnumMap<>(held);
            before.remove(Level.TOOL_CHANGES);
            other = found.find(before, could, (left - found.worked()) / PART, ending);
        }
        left -= found.worked();
        other.filter(one -> Score.of(problem, one).compareTo(Score.of(problem, plan)) < 0)
                .ifPresent(one -> plan = one);
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
