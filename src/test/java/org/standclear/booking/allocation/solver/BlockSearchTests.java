package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;

/** Numbers of turns in blocks of slots: never worse than the best of all plans, and every plan has such numbers. */
class BlockSearchTests {

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

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void isNeverWorseThanTheBestOfAllPlans(long seed) {
        Problem problem = SmallWeek.problem(seed);
        Score best = new EveryPlan(problem).best();

        BlockSearch search = new BlockSearch(problem, new Places(problem), Plan.EMPTY, ending());
        Map<Level, Long> least = new EnumMap<>(Level.class);
        for (int stage = 0; stage < search.stages(); stage++) {
            SatStage one = search.stage(stage);
            least.putAll(search.settle(one, Map.of(), 0, 5).values());
            search.hold(one, least);
        }

        assertThat(new Score(least)).isLessThanOrEqualTo(best);
    }

    /** With every slot for a block the numbers say more, and still nothing that the best of all plans does not keep. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void isNeverWorseThanTheBestOfAllPlansSlotBySlot(long seed) {
        Problem problem = SmallWeek.problem(seed);
        Score best = new EveryPlan(problem).best();

        BlockSearch search = new BlockSearch(problem, new Places(problem), Spells.of(problem), Plan.EMPTY, ending());
        Map<Level, Long> least = new EnumMap<>(Level.class);
        for (int stage = 0; stage < search.stages(); stage++) {
            SatStage one = search.stage(stage);
            search.atMost(one, best.values());
            least.putAll(search.settle(one, Map.of(), 0, 5).values());
            search.hold(one, least);
        }

        assertThat(least).hasSize(Level.values().length);
        assertThat(new Score(least)).isLessThanOrEqualTo(best);
    }

    /** Asked for numbers that pass over less than the fewest, it says that there are none, and proves that fewest by it. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void provesWhatIsMoreThanWasAskedFor(long seed) {
        Problem problem = SmallWeek.problem(seed);
        Map<Level, Long> least = new EnumMap<>(Level.class);
        settled(problem, least, 0);
        long fewest = Objects.requireNonNull(least.get(Level.WISHES));

        BlockSearch.Settled asMany = settled(problem, least, 0);
        BlockSearch.Settled fewer = settled(problem, least, 1);

        assertThat(asMany.values()).containsEntry(Level.WISHES, fewest);
        assertThat(asMany.bounds()).containsEntry(Level.WISHES, fewest);
        if (fewest > 0) {
            assertThat(fewer.values()).isEmpty();
            assertThat(fewer.bounds()).containsEntry(Level.WISHES, fewest);
        }
    }

    /** The wishes' stage; when the least of all are known, among those that pass over so many wishes fewer. */
    private static BlockSearch.Settled settled(Problem problem, Map<Level, Long> least, long fewer) {
        BlockSearch search = new BlockSearch(problem, new Places(problem), Plan.EMPTY, ending());
        Map<Level, Long> most = new EnumMap<>(least);
        most.computeIfPresent(Level.WISHES, (level, all) -> Math.max(0, all - fewer));
        for (int stage = 0; stage < WISHES; stage++) {
            SatStage one = search.stage(stage);
            if (most.isEmpty()) {
                least.putAll(search.settle(one, Map.of(), 0, 5).values());
            }
            search.hold(one, least);
        }
        SatStage wishes = search.stage(WISHES);
        if (!most.isEmpty()) {
            search.atMost(wishes, most);
        }
        BlockSearch.Settled settled = search.settle(wishes, Map.of(), 0, 5);
        least.putAll(settled.values());
        return settled;
    }

    /** Whatever the order of its turns within a block, the numbers of a plan break no rule of theirs. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void everyPlanHasSuchNumbers(long seed) {
        Problem problem = new RushWeek(40, 4, 3, 45, seed).problem();
        Places places = new Places(problem);
        Plan plan = new FirstPlan(problem, places).find();
        BlockModel blocks = new BlockModel(problem, places, new Blocks(problem, places));
        Map<IntVar, Long> numbers = blocks.values(plan);
        var changes = new BlockTools(blocks).sum();
        CpModel model = blocks.model();
        numbers.forEach(model::addEquality);
        model.minimize(changes);
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1);

        CpSolverStatus status = solver.solve(model);

        assertThat(numbers.values().stream().mapToLong(Long::longValue).sum())
                .isGreaterThanOrEqualTo(plan.placed().size());
        assertThat(status).isEqualTo(CpSolverStatus.OPTIMAL);
        assertThat(solver.value(changes))
                .isLessThanOrEqualTo(Score.of(problem, plan).at(Level.TOOL_CHANGES));
    }

    @Test
    void aBlockIsWhatIsTheSameToEverybody() {
        Problem problem = new RushWeek(12, 2, 2, 18, 5).problem();
        Places places = new Places(problem);

        Blocks blocks = new Blocks(problem, places);

        assertThat(blocks.count()).isBetween(4, problem.slots().size() - 4);
        for (int block = 0; block < blocks.count(); block++) {
            List<Integer> slots = blocks.slots(block);
            for (var turn : problem.turns()) {
                if (turn.work().minutes() == 30) {
                    List<Integer> costs = places.of(turn).stream()
                            .filter(place -> slots.contains(place.slots().get(0)))
                            .map(place -> turn.times().wishesPassed(place.cell(), place.span()))
                            .toList();
                    assertThat(costs.size()).isIn(0, slots.size());
                    assertThat(costs.stream().distinct().count()).isLessThanOrEqualTo(1);
                }
            }
        }
    }

    /** One taking with all spans: the limit is the most of them that do not overlap, found by trying all subsets. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void aPersonsTimeAllowsNoMoreThanSpansThatDoNotOverlap(long seed) {
        Random chance = new Random(seed);
        List<Span> spans = new ArrayList<>();
        Instant eight = Instant.parse("2026-11-16T08:00:00Z");
        // each begins before the one before it ends, so that all are one time
        for (int span = 0; span < 10; span++) {
            spans.add(Span.minutes(eight.plusSeconds(60L * (15 * span + chance.nextInt(8))), 25 + chance.nextInt(20)));
        }
        int most = 0;
        for (int some = 0; some < 1 << spans.size(); some++) {
            most = Math.max(most, withoutOverlap(spans, some) ? Integer.bitCount(some) : 0);
        }

        List<TimeLimits.Limit> limits = new TimeLimits().of(List.of(spans), new int[] {spans.size()});

        assertThat(limits).hasSize(1);
        assertThat(limits.get(0).most() / limits.get(0).weights()[0]).isEqualTo(most);
    }

    private static boolean withoutOverlap(List<Span> spans, int some) {
        for (int one = 0; one < spans.size(); one++) {
            for (int other = one + 1; other < spans.size(); other++) {
                if ((some >> one & 1) == 1
                        && (some >> other & 1) == 1
                        && spans.get(one).overlaps(spans.get(other))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Spans of 45 and 30 minutes that meet, with a third in the window of both that meets only one of them. */
    @Test
    void aPersonIsNotInTwoPlacesWhenTurnsDifferInLength() {
        Instant eight = Instant.parse("2026-11-16T08:00:00Z");
        List<List<Span>> takings = List.of(
                List.of(Span.minutes(eight, 45)),
                List.of(Span.minutes(eight, 30)),
                List.of(Span.minutes(eight.plusSeconds(37 * 60), 30)));

        List<TimeLimits.Limit> limits = new TimeLimits().of(takings, new int[] {1, 1, 1});

        assertThat(limits).anySatisfy(limit -> {
            assertThat(limit.weights()).containsExactly(1, 0, 1);
            assertThat(limit.most()).isEqualTo(1);
        });
        assertThat(limits)
                .noneSatisfy(limit ->
                        assertThat(limit.weights()[1] + limit.weights()[2]).isGreaterThan(limit.most()));
    }
}
