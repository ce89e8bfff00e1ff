package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.booking.allocation.solver.BlockModel.Option;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Effort;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.BetterPlan;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Placed;
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
import org.standclear.core.allocation.Work;

/** Spells one after the other, slot by slot, with cells together that are the same to everybody. */
class DayByDayTests {

    private static final Instant EIGHT = Instant.parse("2026-11-16T08:00:00Z");
    private static final Span MORNING = Span.minutes(EIGHT, 120);

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    private static Ending ending() {
        return new Ending(
                Watcher.none(), 1, System.nanoTime() + Duration.ofMinutes(2).toNanos());
    }

    static DayByDay days(Problem problem, Plan start) {
        FlowBound flow = new FlowBound(problem, new Places(problem));
        return new DayByDay(problem, start, flow.ranges(Score.of(problem, start)), ending());
    }

    /** As good up to the shares as the best plan, which another search proves slot by slot; wishes are as it wants. */
    private static Plan start(Problem problem, Solution best, long seed) {
        Places places = new Places(problem);
        Plan quick = new BetterPlan(problem, places, () -> false)
                .withMoreTurns(new FirstPlan(problem, places).find(), seed, Map.of(), 2_000_000);
        return isAsFair(problem, quick, best.score()) ? quick : best.plan();
    }

    static boolean isAsFair(Problem problem, Plan plan, Score score) {
        Score own = Score.of(problem, plan);
        return Stream.of(Level.MAKE_UPS, Level.UNDER_MINIMUM, Level.UNPLACED, Level.UNFAIRNESS)
                .allMatch(level -> own.at(level) <= score.at(level));
    }

    /** What a search slot by slot of the whole proves best is never undercut, and is come to within a wish. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void comesToTheBestOrNearly(long seed) {
        Problem problem = new RushWeek(18, 2, 6, 18, seed).problem();
        Solution best = new SatAllocator().solve(problem, new Effort(seed, 30, Duration.ofMinutes(1)), Watcher.none());
        DayByDay days = days(problem, start(problem, best, seed));

        Plan first = days.plan();
        Plan plan = days.better(first, 20);

        assertThat(best.gap(Level.WISHES)).isZero();
        assertThat(new PlanRules(problem).broken(first)).isEmpty();
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(isAsFair(problem, plan, best.score())).isTrue();
        assertThat(Score.of(problem, plan).at(Level.MOVED)).isZero();
        long least = best.score().at(Level.WISHES);
        assertThat(days.bounds().get(Level.WISHES)).isBetween(0L, least);
        assertThat(Score.of(problem, plan).at(Level.WISHES)).isBetween(least, least + 1);
    }

    /** Of one spell the first look is the whole: no plan that is tried by brute force is better. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void oneSpellIsNeverBetterThanTheBestOfAllPlans(long seed) {
        Problem problem = SmallWeek.problem(seed);
        Score best = new EveryPlan(problem).best();
        Solution known = new SatAllocator().solve(problem, new Effort(seed, 30, Duration.ofMinutes(1)), Watcher.none());
        DayByDay days = days(problem, known.plan());

        Plan plan = days.plan();

        Score score = Score.of(problem, plan);
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(Stream.of(Level.values())
                        .filter(level -> level != Level.TOOL_CHANGES)
                        .allMatch(level -> score.at(level) == best.at(level)))
                .isTrue();
        assertThat(days.bounds().get(Level.MOVED)).isLessThanOrEqualTo(best.at(Level.MOVED));
    }

    @Test
    void theSameSeedGivesTheSamePlan() {
        Problem problem = new RushWeek(60, 3, 6, 36, 4).problem();
        Plan start = new FirstPlan(problem, new Places(problem)).find();

        Plan plan = days(problem, start).plan();

        assertThat(plan.placed()).hasSizeGreaterThan(100);
        assertThat(days(problem, start).plan()).isEqualTo(plan);
    }

    private static Problem twins(List<String> cells, Turn... turns) {
        return new Problem(
                cells.stream()
                        .map(cell -> new Bench(cell, Set.of("G", "V"), "G", Set.of()))
                        .toList(),
                cells.stream()
                        .flatMap(cell -> IntStream.range(0, 4)
                                .mapToObj(
                                        slot -> new FreeSlot(cell, Span.minutes(EIGHT.plusSeconds(1800L * slot), 30))))
                        .toList(),
                cells.stream()
                        .map(cell -> new Attendant("at " + cell, Set.copyOf(cells), List.of(MORNING), true))
                        .toList(),
                List.of(turns),
                Map.of(),
                Map.of(),
                List.of());
    }

    private static Turn turn(String id, String operator, int minutes, String tool) {
        return new Turn(
                id,
                operator,
                null,
                new Work(tool, minutes, Set.of(), false),
                new Times(MORNING, List.of(MORNING), List.of()),
                false,
                null);
    }

    @Test
    void cellsThatAreTheSameToEverybodyAreTogether() {
        Problem problem = twins(List.of("Avocet", "Bittern"), turn("one", "p", 30, "G"));
        Places places = new Places(problem);

        Blocks together = Blocks.ofCellsTogether(problem, places, List.of());

        assertThat(new Blocks(problem, places).count()).isEqualTo(2);
        assertThat(together.count()).isEqualTo(1);
        assertThat(together.slots(0)).hasSize(8);
        assertThat(Blocks.ofCellsTogether(problem, places, List.of(MORNING)).count())
                .isEqualTo(4);
    }

    /** Two long turns one after the other and four short ones fill two cells, whichever comes first. */
    @Test
    void turnsOfTwoSlotsFindACellAmongThoseTogether() {
        List<String> cells = List.of("Avocet", "Bittern");
        Problem problem = twins(
                cells,
                turn("long", "p", 45, "G"),
                turn("longer", "q", 60, "V"),
                turn("a", "a", 30, "G"),
                turn("b", "b", 30, "V"),
                turn("c", "c", 30, "G"),
                turn("d", "d", 30, "V"));
        Places places = new Places(problem);
        BlockModel model = new BlockModel(problem, places, Blocks.ofCellsTogether(problem, places, List.of(MORNING)));
        model.model()
                .maximize(LinearExpr.sum(
                        model.options().stream().map(Option::number).toArray(IntVar[]::new)));
        SatRun run = new SatRun(model.model(), SatRun.Way.PLAIN, 5, ending(), null);
        Map<IntVar, Long> numbers = new HashMap<>();
        model.forEach(one -> numbers.put(one, run.value(one)));

        List<Placed> placed = new ReadNumbers(model, numbers).in(List.of(MORNING));

        assertThat(placed).hasSize(6);
        assertThat(new PlanRules(problem).broken(new Plan(placed))).isEmpty();
    }

    /** Turns that are alike are told apart by where the numbers have them, in whichever time that is. */
    @Test
    void turnsThatAreAlikeHaveAPlaceEachInTwoTimes() {
        Problem problem = twins(List.of("Avocet"), turn("first", "p", 30, "G"), turn("second", "p", 30, "G"));
        Places places = new Places(problem);
        BlockModel model = new BlockModel(problem, places, Blocks.ofCellsTogether(problem, places, List.of(MORNING)));
        List<Placed> known = List.of(
                new Placed("first", "Avocet", problem.slots().get(0).span(), "at Avocet"),
                new Placed("second", "Avocet", problem.slots().get(3).span(), "at Avocet"));
        List<Span> halves = List.of(Span.minutes(EIGHT, 60), Span.minutes(EIGHT.plusSeconds(3600), 60));

        List<Placed> placed = new ReadNumbers(model, model.values(new Plan(known))).in(halves);

        assertThat(placed).containsExactlyInAnyOrderElementsOf(known);
    }

    /** Four turns are all that one person can have in four slots, in however many cells at the same time. */
    @Test
    void nobodyIsInTwoCellsAtATime() {
        Turn[] turns = IntStream.range(0, 6)
                .mapToObj(number -> turn("t" + number, "p", 30, "G"))
                .toArray(Turn[]::new);
        Problem problem = twins(List.of("Avocet", "Bittern"), turns);
        BlockSearch search = new BlockSearch(problem, new Places(problem), Plan.EMPTY, ending());

        Map<Level, Long> values = search.settle(search.stage(0), Map.of(), 0, 5).values();

        assertThat(values).containsEntry(Level.UNPLACED, 2L);
    }
}
