package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import java.time.Duration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.jgrapht.Graph;
import org.jgrapht.alg.flow.PushRelabelMFImpl;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Turn;

/** Bounds by flows: never above the best of all plans, and the same as with the flows of another library (JGraphT). */
class FlowBoundTests {

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void isNeverAboveTheBestOfAllPlans(long seed) {
        Problem problem = SmallWeek.problem(seed);
        Score best = new EveryPlan(problem).best();

        FlowBound flow = new FlowBound(problem, new Places(problem));
        Map<Level, Long> bounds = flow.of(best);

        bounds.forEach((level, least) -> assertThat(least).as(level.words()).isBetween(0L, best.at(level)));
        assertThat(flow.wishes(best)).isBetween(0L, best.at(Level.WISHES));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void leavesOutAsManyAsTheFlowsOfAnotherLibrary(long seed) {
        Problem problem = new RushWeek(48, 4, 3, 36, seed).problem();
        Score nobodyUnder = Score.of(withNothingOwed(problem), Plan.EMPTY);

        Map<Level, Long> least = new FlowBound(problem, new Places(problem)).of(nobodyUnder);

        long left = problem.turns().size() - mostTurns(problem);
        assertThat(left).isPositive();
        assertThat(least).containsEntry(Level.UNPLACED, left);
    }

    private static Problem withNothingOwed(Problem problem) {
        return new Problem(
                problem.benches(),
                problem.slots(),
                problem.attendants(),
                problem.turns(),
                Map.of(),
                problem.busy(),
                problem.closed());
    }

    /** As the bound says it: who is owed longer turns first, then those of one slot, then the other longer ones at a half each. */
    private static long mostTurns(Problem problem) {
        Map<String, Integer> longer = new HashMap<>();
        problem.turns().stream()
                .filter(turn -> isLonger(turn) && !new Places(problem).of(turn).isEmpty())
                .forEach(turn -> longer.put(turn.operator(), problem.owed().getOrDefault(turn.operator(), 0)));
        long owed = longer.values().stream().mapToLong(Integer::longValue).sum();
        long then = flow(problem, turn -> isLonger(turn) ? 2 * longer.getOrDefault(turn.operator(), 0) : 1_000);
        long all = flow(problem, turn -> 1_000);
        return then - owed + (all - then) / 2;
    }

    private static boolean isLonger(Turn turn) {
        return turn.work().minutes() > 30;
    }

    /** The most units that flow, an operator giving at most so many. */
    private static long flow(Problem problem, ToIntFunction<Turn> ofOperator) {
        Graph<String, DefaultWeightedEdge> graph = new SimpleDirectedWeightedGraph<>(DefaultWeightedEdge.class);
        Places places = new Places(problem);
        Map<String, Set<String>> attendants = new HashMap<>();
        for (Turn turn : problem.turns()) {
            edge(graph, "source", turn.operator(), ofOperator.applyAsInt(turn));
            edge(graph, turn.operator(), turn.id(), isLonger(turn) ? 2 : 1);
            for (Place place : places.of(turn)) {
                for (int slot : place.slots()) {
                    edge(graph, through(graph, turn, place, slot, problem, attendants), "slot " + slot, 1);
                    edge(graph, "slot " + slot, "sink", 1);
                }
            }
        }
        attendants.forEach((column, people) -> edge(graph, "needs " + column, "attended " + column, people.size()));
        return Math.round(new PushRelabelMFImpl<>(graph).calculateMaximumFlow("source", "sink"));
    }

    /** The cells of a rush week start within the same half hour: turns in it meet in its last moment. */
    private static String through(
            Graph<String, DefaultWeightedEdge> graph,
            Turn turn,
            Place place,
            int slot,
            Problem problem,
            Map<String, Set<String>> attendants) {
        Duration sinceOpening = Duration.between(
                RushWeek.OPENS, problem.slots().get(slot).span().from());
        String column = String.valueOf(sinceOpening.toMinutes() / 30);
        var moment = RushWeek.OPENS.plus(Duration.ofMinutes(30 * (sinceOpening.toMinutes() / 30) + 30));
        if (place.span().until().isBefore(moment)) {
            return turn.id();
        }
        String people = new java.util.TreeSet<>(
                        turn.partner() == null ? Set.of(turn.operator()) : Set.of(turn.operator(), turn.partner()))
                .first();
        edge(graph, turn.id(), people + " in " + column, 1);
        edge(graph, people + " in " + column, people + " out " + column, 1);
        if (turn.partner() != null) {
            return people + " out " + column;
        }
        problem.attendants().stream()
                .filter(one ->
                        one.canAttend(place.cell(), place.span(), turn.work().helper()))
                .forEach(one -> attendants
                        .computeIfAbsent(column, key -> new HashSet<>())
                        .add(one.person()));
        edge(graph, people + " out " + column, "needs " + column, 1);
        return "attended " + column;
    }

    private static void edge(Graph<String, DefaultWeightedEdge> graph, String from, String to, int capacity) {
        graph.addVertex(from);
        graph.addVertex(to);
        DefaultWeightedEdge edge = graph.addEdge(from, to);
        if (edge != null) {
            graph.setEdgeWeight(edge, capacity);
        }
    }
}
