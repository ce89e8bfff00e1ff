package org.standclear.core.allocation;

import java.util.Map;
import java.util.Random;
import java.util.function.BooleanSupplier;

/**
 * Makes a plan better step by step, by our own means and in the order of the levels: more turns in it, fairer shares, then
 * better places for the same turns. Ended by counted looks; the same seed gives the same plan. Proves nothing.
 */
public final class BetterPlan {

    private static final int LOOKS_A_TRY = 20;

    private final Problem problem;
    private final Places places;
    private final BooleanSupplier stopped;

    public BetterPlan(Problem problem, Places places, BooleanSupplier stopped) {
        this.problem = problem;
        this.places = places;
        this.stopped = stopped;
    }

    /**
     * A plan that is as good or better.
     *
     * @param least turns that are left out, and the unfairness, of every plan as far as is known
     * @param looks how many places to look at, for each kind of step
     */
    public Plan from(Plan known, long seed, Map<Level, Long> least, long looks) {
        return withBetterPlaces(withMoreTurns(known, seed, least, looks), seed, looks);
    }

    /** More turns and fairer shares only; where the turns are is left as it comes. */
    public Plan withMoreTurns(Plan known, long seed, Map<Level, Long> least, long looks) {
        Board board = new Board(problem, places);
        board.take(known);
        Trades trades = new Trades(problem, board, new Chain(board), new Random(seed), stopped);
        ifBetter(board, () -> trades.bringIn(least.getOrDefault(Level.UNPLACED, 0L), looks));
        ifBetter(board, () -> trades.even(least.getOrDefault(Level.UNFAIRNESS, 0L), looks));
        return better(known, board.plan());
    }

    /** The same turns in places that are as good or better. */
    public Plan withBetterPlaces(Plan known, long seed, long looks) {
        Board board = new Board(problem, places);
        board.take(known);
        exchange(board, new Chain(board), looks, seed);
        return better(known, board.plan());
    }

    /** The same turns in places that cost no more, with fewer tool changes; for a plan whose wishes are near the best. */
    public Plan withFewerToolChanges(Plan known, long seed, long looks) {
        Board board = new Board(problem, places);
        board.take(known);
        Cells cells = new Cells(problem, board);
        Random chance = new Random(seed);
        new Annealing(board, cells, chance).tools(looks / LOOKS_A_TRY, stopped);
        new Exchanges(board, cells, new Chain(board), stopped).tools(chance);
        return better(known, board.plan());
    }

    /**
     * The same by a walk at one warmth, of which the fewest changes stand; it comes by fewer when it begins with few.
     *
     * @param least no plan that is as good on the other levels has fewer changes
     * @param looks as in the other steps, twenty to a try
     */
    public Plan withFewestToolChanges(Plan known, long seed, long least, long looks) {
        Board board = new Board(problem, places);
        board.take(known);
        Annealing walk = new Annealing(board, new Cells(problem, board), new Random(seed));
        return better(known, walk.fewestTools(looks / LOOKS_A_TRY, least, stopped));
    }

    private void exchange(Board board, Chain chain, long looks, long seed) {
        Cells cells = new Cells(problem, board);
        Random chance = new Random(seed);
        new Annealing(board, cells, chance).run(looks / LOOKS_A_TRY, stopped);
        Exchanges exchanges = new Exchanges(board, cells, chain, stopped);
        exchanges.wishes(looks);
        exchanges.tools(chance);
    }

    private void ifBetter(Board board, Runnable step) {
        int mark = board.mark();
        Score before = Score.of(problem, board.plan());
        step.run();
        if (Score.of(problem, board.plan()).compareTo(before) > 0) {
            board.takeBack(mark);
        }
    }

    private Plan better(Plan known, Plan found) {
        return Score.of(problem, found).compareTo(Score.of(problem, known)) <= 0 ? found : known;
    }
}
