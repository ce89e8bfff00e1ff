package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;

/** All stages by blocks, of which some go on two at a time. */
class ByBlocksTests {

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    private static Problem fourDays(long seed) {
        return new RushWeek(20, 3, 2, 36, seed).problem();
    }

    private static ByBlocks begun(Problem problem, Watcher watcher) {
        Ending ending =
                new Ending(watcher, 1, System.nanoTime() + Duration.ofMinutes(2).toNanos());
        Places places = new Places(problem);
        return new ByBlocks(problem, places, new FirstPlan(problem, places).find(), ending, plan -> Map.of());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void twoThreadsComeToTheSamePlanAndTheSameBoundsForTheSameWork(long seed) {
        Problem problem = fourDays(seed);
        ByBlocks blocks = begun(problem, Watcher.none());
        ByBlocks again = begun(problem, Watcher.none());

        double left = blocks.run(20);

        assertThat(again.run(20)).isEqualTo(left);
        assertThat(again.plan()).isEqualTo(blocks.plan());
        assertThat(again.bounds()).isEqualTo(blocks.bounds());
        assertThat(new PlanRules(problem).broken(blocks.plan())).isEmpty();
    }

    /** Days are looked at in two halves by two threads; neither knows of the other's turns, and no rule needs them to. */
    @ParameterizedTest
    @ValueSource(longs = {1, 3, 4})
    void halvesOfTheDaysFitTogether(long seed) {
        Problem problem = fourDays(seed);
        BlockSearch search = new BlockSearch(
                problem,
                new Places(problem),
                Plan.EMPTY,
                new Ending(
                        Watcher.none(),
                        1,
                        System.nanoTime() + Duration.ofMinutes(2).toNanos()));
        Map<Level, Long> held = new EnumMap<>(Level.class);
        for (int stage = 0; stage <= 2; stage++) {
            SatStage one = search.stage(stage);
            held.putAll(search.settle(one, Map.of(), 0, 5).values());
            search.hold(one, held);
        }
        List<SpellTurns> all = SpellTurns.of(problem, Spells.of(problem), search.model(), search.numbers());
        List<Plan> halves = new ArrayList<>();
        for (List<SpellTurns> half : List.of(all.subList(0, 2), all.subList(2, 4))) {
            halves.add(new BySpells(
                            problem,
                            held,
                            (turn, place) -> true,
                            new Ending(
                                    Watcher.none(),
                                    1,
                                    System.nanoTime() + Duration.ofMinutes(2).toNanos()))
                    .placed(half));
        }

        Plan plan = halves.get(0).and(halves.get(1));

        assertThat(halves).noneMatch(half -> half.placed().isEmpty());
        assertThat(plan.placed())
                .hasSize(halves.get(0).placed().size() + halves.get(1).placed().size());
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
    }

    /** However far the search is when somebody stops it, both threads end and the plan keeps the rules. */
    @Test
    void stoppingEndsBothThreads() {
        Problem problem = fourDays(1);
        Set<Thread> beside = ConcurrentHashMap.newKeySet();
        for (int most = 1; most < 300; most += 40) {
            int asks = most;
            AtomicInteger asked = new AtomicInteger();
            Watcher watcher = new Watcher() {
                @Override
                public void progress(Progress progress) {
                    // nobody asked
                }

                @Override
                public boolean stopped() {
                    Thread.getAllStackTraces().keySet().stream()
                            .filter(one -> one.getName().equals("allocation-beside"))
                            .forEach(beside::add);
                    return asked.incrementAndGet() > asks;
                }
            };
            ByBlocks blocks = begun(problem, watcher);

            blocks.run(20);

            assertThat(new PlanRules(problem).broken(blocks.plan())).isEmpty();
            assertThat(beside).noneMatch(Thread::isAlive);
        }
        assertThat(beside).isNotEmpty();
    }

    /** Without the time for any numbers the relaxation still says something, and never more than the best numbers come to. */
    @ParameterizedTest
    @ValueSource(longs = {1, 3, 4})
    void aStageWithoutTimeKeepsTheBoundOfItsRelaxation(long seed) {
        Problem problem = fourDays(seed);
        List<BlockSearch.Settled> settled = new ArrayList<>();
        for (double work : new double[] {1e-9, 20}) {
            BlockSearch search = new BlockSearch(
                    problem,
                    new Places(problem),
                    Plan.EMPTY,
                    new Ending(
                            Watcher.none(),
                            1,
                            System.nanoTime() + Duration.ofMinutes(2).toNanos()));
            for (int stage = 0; stage <= 2; stage++) {
                SatStage one = search.stage(stage);
                search.hold(one, search.settle(one, Map.of(), 0, 5).values());
            }
            settled.add(search.settle(search.stage(3), Map.of(), 0, work));
        }

        assertThat(settled.get(0).values()).isEmpty();
        assertThat(settled.get(0).bounds().get(Level.TOOL_CHANGES))
                .isBetween(1L, settled.get(1).values().get(Level.TOOL_CHANGES));
    }
}
