package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import com.google.ortools.sat.IntVar;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Effort;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Solution;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Wish;
import org.standclear.core.allocation.Work;

/** Places for numbers of turns, spell by spell, and the bound slot by slot that they are measured against. */
class BySpellsTests {

    /** The stage of the wishes. */
    private static final int WISHES = 2;

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    private static Ending ending() {
        return new Ending(
                Watcher.none(), 1, System.nanoTime() + Duration.ofMinutes(2).toNanos());
    }

    @Test
    void aSpellIsADayWhenTheLabIsShutAtNight() {
        Problem problem = new RushWeek(12, 2, 2, 18, 5).problem();

        assertThat(Spells.of(problem))
                .hasSize(2)
                .allSatisfy(spell -> assertThat(problem.slots())
                        .filteredOn(slot -> spell.holds(slot.span()))
                        .hasSize(18));
    }

    /** The least of all plans that are tried by brute force is never below what the slots with fractions say. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void noPlanHasFewerThanTheBoundBySlots(long seed) {
        Problem problem = SmallWeek.problem(seed);
        Score best = new EveryPlan(problem).best();
        SlotBound bound = new SlotBound(problem, new Places(problem));

        for (int stage = 0; stage <= WISHES; stage++) {
            SatStage one = bound.stage(stage);
            long weighted = one.parts().stream()
                    .mapToLong(part -> part.weight() * best.at(part.level()))
                    .sum();
            OptionalLong least = bound.of(one, 10);

            assertThat(least).isPresent();
            assertThat(least.orElseThrow()).isLessThanOrEqualTo(weighted);
            bound.hold(one, best.values());
        }
    }

    /** From nothing but the numbers to a plan that keeps every rule and is as good, where one is: of seed 2 none is found. */
    @ParameterizedTest
    @ValueSource(longs = {1, 3, 4})
    void comesToAPlanAsGoodAsTheNumbers(long seed) {
        Problem problem = new RushWeek(20, 3, 2, 36, seed).problem();
        BlockSearch search = new BlockSearch(problem, new Places(problem), Plan.EMPTY, ending());
        Map<Level, Long> held = new EnumMap<>(Level.class);
        for (int stage = 0; stage <= WISHES; stage++) {
            SatStage one = search.stage(stage);
            held.putAll(search.settle(one, Map.of(), 0, 5).values());
            search.hold(one, held);
        }
        BySpells spells = new BySpells(problem, held, (turn, place) -> true, ending());

        Plan first = spells.placed(search.model(), search.numbers());
        Plan plan = spells.better(first, 20);

        List<Level> judged = List.of(Level.MAKE_UPS, Level.UNDER_MINIMUM, Level.UNPLACED, Level.UNFAIRNESS);
        assertThat(new PlanRules(problem).broken(first)).isEmpty();
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        Score score = Score.of(problem, plan);
        assertThat(judged).allSatisfy(level -> assertThat(score.at(level)).isEqualTo(held.get(level)));
        long wishes = Objects.requireNonNull(held.get(Level.WISHES));
        assertThat(score.at(Level.WISHES)).isBetween(wishes, wishes + 1);
    }

    /** Three turns where two slots are wished for: all find a place that day, but one only by passing over a wish. */
    @Test
    void aSpellThatPassesOverMoreThanItsNumbersIsTight() {
        Instant eight = Instant.parse("2026-11-16T08:00:00Z");
        Span wished = Span.minutes(eight, 60);
        List<FreeSlot> slots = Stream.of(0, 30, 60, 90)
                .map(after -> new FreeSlot("Avocet", Span.minutes(eight.plusSeconds(60L * after), 30)))
                .toList();
        Times times =
                new Times(Span.minutes(eight, 120), List.of(Span.minutes(eight, 120)), List.of(new Wish(null, wished)));
        Work work = new Work("G", 30, Set.of(), false);
        Problem problem = new Problem(
                List.of(new Bench("Avocet", Set.of("G"), "G", Set.of())),
                slots,
                List.of(new Attendant("t", Set.of("Avocet"), List.of(Span.minutes(eight, 120)), true)),
                Stream.of("a", "b", "c")
                        .map(person -> new Turn(person, person, null, work, times, false, null))
                        .toList(),
                Map.of(),
                Map.of(),
                List.of());
        BlockSearch search = new BlockSearch(problem, new Places(problem), Plan.EMPTY, ending());
        Map<IntVar, Long> numbers = new HashMap<>();
        search.model()
                .alike()
                .forEach(group -> search.model().options(group.one()).stream()
                        .filter(option -> wished.holds(option.places().get(0).span()))
                        .forEach(option -> numbers.put(option.number(), 1L)));
        Map<Level, Long> nothingLeft = new EnumMap<>(Level.class);
        Stream.of(Level.values()).forEach(level -> nothingLeft.put(level, 0L));
        BySpells spells = new BySpells(problem, nothingLeft, (turn, place) -> true, ending());

        Plan plan = spells.placed(search.model(), numbers);

        assertThat(numbers).hasSize(3);
        assertThat(plan.placed()).hasSize(3);
        assertThat(spells.tight()).hasSize(1);
    }

    /** Other places for the same turns: fewer changes, nothing worse, no rule broken. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void toolChangesBecomeFewer(long seed) {
        Problem problem = new RushWeek(20, 3, 2, 36, seed).problem();
        Places places = new Places(problem);
        Plan start = new FirstPlan(problem, places).find();

        Plan plan = new FewerTools(problem, places, ending()).from(start, 0, 5);

        Score before = Score.of(problem, start);
        Score after = Score.of(problem, plan);
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(after).isLessThan(before);
        assertThat(after.at(Level.TOOL_CHANGES)).isLessThan(before.at(Level.TOOL_CHANGES));
    }

    /** What the relaxation proves never contradicts a plan that is proven best, and its places break no rule. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void placesNearTheRelaxationKeepTheRulesAndItsBoundHolds(long seed) {
        Problem problem = new RushWeek(12, 2, 2, 18, seed).problem();
        Solution best = new SatAllocator().solve(problem, new Effort(seed, 30, Duration.ofMinutes(1)), Watcher.none());
        NearRelaxation near = new NearRelaxation(problem, new FlowBound(problem, new Places(problem)), ending());

        Plan plan = near.from(best.plan(), 5);

        assertThat(best.gap(Level.WISHES)).isZero();
        assertThat(plan.placed()).isNotEmpty();
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(near.bounds().get(Level.WISHES)).isBetween(0L, best.score().at(Level.WISHES));
        assertThat(near.bounds().get(Level.MOVED)).isZero();
    }
}
