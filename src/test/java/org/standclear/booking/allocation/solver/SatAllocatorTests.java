package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import org.jgrapht.Graph;
import org.jgrapht.alg.matching.HopcroftKarpMaximumCardinalityBipartiteMatching;
import org.jgrapht.alg.matching.KuhnMunkresMinimalWeightBipartitePerfectMatching;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.allocation.Allocator.Effort;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.LeftOut;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Reasons;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Solution;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Work;

/** The solver's plans against every plan there is, and against matchings found by another library (JGraphT). */
class SatAllocatorTests {

    private static final Effort ENOUGH = new Effort(7, 20, Duration.ofMinutes(2));

    private static Solution solved(Problem problem) {
        Solution solution = new SatAllocator().solve(problem, ENOUGH, Watcher.none());
        assertThat(new PlanRules(problem).broken(solution.plan())).isEmpty();
        return solution;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void isAsGoodAsTheBestOfAllPlans(long seed) {
        Problem problem = SmallWeek.problem(seed);

        Solution solution = solved(problem);

        assertThat(solution.score().values())
                .isEqualTo(new EveryPlan(problem).best().values());
        assertThat(solution.isProvenBest()).isTrue();
    }

    /** Each person asks for one turn and attendants abound: then the most that can be placed is a maximum matching. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void placesAsManyAsAMaximumMatching(long seed) {
        Problem problem = singleTurns(seed, 60, false);
        Graph<String, DefaultWeightedEdge> graph = places(problem);
        int most = new HopcroftKarpMaximumCardinalityBipartiteMatching<>(graph, turnIds(problem), slotIds(problem))
                .getMatching()
                .getEdges()
                .size();

        Solution solution = solved(problem);

        assertThat(most).isBetween(30, 59);
        assertThat(solution.plan().placed()).hasSize(most);
        assertThat(solution.bounds().get(Level.UNPLACED)).isEqualTo(60 - most);
    }

    /** With a place for everybody, the fewest wishes passed over is a perfect matching of least weight. */
    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7})
    void passesOverAsFewWishesAsAMinimumWeightMatching(long seed) {
        Problem problem = singleTurns(seed, 20, true);
        Graph<String, DefaultWeightedEdge> graph = places(problem);
        Set<String> slots = slotIds(problem);
        Set<String> turns = turnIds(problem);
        // turns that want nothing fill the other side up; what is no place costs more than all wishes together
        IntStream.range(0, slots.size() - turns.size()).forEach(filler -> {
            graph.addVertex("filler " + filler);
            turns.add("filler " + filler);
        });
        double never = 1_000_000;
        for (String turn : turns) {
            for (String slot : slots) {
                if (!graph.containsEdge(turn, slot)) {
                    graph.setEdgeWeight(graph.addEdge(turn, slot), turn.startsWith("filler") ? 0 : never);
                }
            }
        }
        double least = new KuhnMunkresMinimalWeightBipartitePerfectMatching<>(graph, turns, slots)
                .getMatching()
                .getWeight();

        Solution solution = solved(problem);

        assertThat(least).isLessThan(never);
        assertThat(solution.score().at(Level.UNPLACED)).isZero();
        assertThat(solution.score().at(Level.WISHES))
                .isEqualTo(Math.round(least))
                .isPositive();
        assertThat(new FlowBound(problem, new Places(problem)).wishes(solution.score()))
                .isEqualTo(Math.round(least));
    }

    private static Problem singleTurns(long seed, int people, boolean anyTime) {
        Problem rush = new RushWeek(people, 1, 2, 36, seed).problem();
        List<Turn> turns = rush.turns().stream()
                .map(turn -> new Turn(
                        turn.id(),
                        turn.operator(),
                        null,
                        new Work(turn.work().tool(), 30, Set.of(), false),
                        new Times(
                                turn.times().window(),
                                anyTime
                                        ? List.of(turn.times().window())
                                        : turn.times().canCome(),
                                List.of(turn.times().wishes().get(0))),
                        false,
                        null))
                .toList();
        List<Attendant> enough = List.of(
                new Attendant(
                        "x", Set.of("cell-0"), List.of(turns.get(0).times().window()), false),
                new Attendant(
                        "y", Set.of("cell-1"), List.of(turns.get(0).times().window()), false));
        Span longEnough = new Span(RushWeek.OPENS, RushWeek.OPENS.plus(Duration.ofDays(30)));
        List<Attendant> always = enough.stream()
                .map(one -> new Attendant(one.person(), one.cells(), List.of(longEnough), false))
                .toList();
        return new Problem(rush.benches(), rush.slots(), always, turns, Map.of(), Map.of(), List.of());
    }

    private static Graph<String, DefaultWeightedEdge> places(Problem problem) {
        Graph<String, DefaultWeightedEdge> graph = new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
        turnIds(problem).forEach(graph::addVertex);
        slotIds(problem).forEach(graph::addVertex);
        Places places = new Places(problem);
        for (Turn turn : problem.turns()) {
            for (Place place : places.of(turn)) {
                DefaultWeightedEdge edge =
                        graph.addEdge(turn.id(), "slot " + place.slots().get(0));
                graph.setEdgeWeight(edge, turn.times().wishesPassed(place.cell(), place.span()));
            }
        }
        return graph;
    }

    private static Set<String> turnIds(Problem problem) {
        return new java.util.LinkedHashSet<>(
                problem.turns().stream().map(Turn::id).toList());
    }

    private static Set<String> slotIds(Problem problem) {
        return new java.util.LinkedHashSet<>(IntStream.range(0, problem.slots().size())
                .mapToObj(slot -> "slot " + slot)
                .toList());
    }

    @Test
    void keepsEveryRuleInARushWeekAndSaysWhyForEachLeftOut() {
        Problem problem = new RushWeek(40, 3, 3, 27, 11).problem();

        Solution solution = solved(problem);

        List<LeftOut> leftOut = new Reasons(problem).of(solution.plan());
        assertThat(leftOut)
                .hasSize(problem.turns().size() - solution.plan().placed().size())
                .isNotEmpty();
        assertThat(leftOut).noneMatch(one -> one.rule() == LeftOut.Rule.NOT_FOUND);
        assertThat(solution.score().at(Level.MAKE_UPS)).isZero();
    }

    @Test
    void theSameSeedGivesTheSamePlan() {
        Problem problem = new RushWeek(24, 2, 2, 18, 3).problem();

        assertThat(solved(problem).plan()).isEqualTo(solved(problem).plan());
    }

    @Test
    void tellsOfItsProgress() {
        Problem problem = new RushWeek(24, 2, 2, 18, 3).problem();
        AtomicReference<Progress> last = new AtomicReference<>();

        new SatAllocator().solve(problem, ENOUGH, watching(last, false));

        Progress told = Objects.requireNonNull(last.get());
        Map<Level, Long> all = new EnumMap<>(Level.class);
        all.putAll(told.settled());
        all.putAll(told.values());
        assertThat(all).containsOnlyKeys(Level.values());
        assertThat(told.bounds()).containsKeys(Level.UNPLACED, Level.WISHES, Level.TOOL_CHANGES);
        told.bounds()
                .forEach((level, least) ->
                        assertThat(least).as(level.words()).isBetween(0L, Objects.requireNonNull(all.get(level))));
    }

    @Test
    void stopsWithAPlanThatKeepsTheRules() {
        Problem problem = RushWeek.college(2).problem();

        Solution solution = new SatAllocator().solve(problem, ENOUGH, watching(new AtomicReference<>(), true));

        assertThat(solution.stopped()).isTrue();
        assertThat(solution.isProvenBest()).isFalse();
        assertThat(new PlanRules(problem).broken(solution.plan())).isEmpty();
    }

    /** Stops as soon as there is a first plan, when asked to. */
    private static Watcher watching(AtomicReference<Progress> last, boolean stop) {
        return new Watcher() {
            @Override
            public void progress(Progress progress) {
                last.set(progress);
            }

            @Override
            public boolean stopped() {
                return stop && last.get() != null;
            }
        };
    }

    @Test
    void nobodyAskingIsAnEmptyPlan() {
        Problem nothing = new Problem(List.of(), List.of(), List.of(), List.of(), Map.of(), Map.of(), List.of());

        assertThat(solved(nothing).plan()).isEqualTo(Plan.EMPTY);
    }
}
