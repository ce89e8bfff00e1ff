package org.standclear.core.allocation;

import java.util.Random;
import java.util.function.BooleanSupplier;

/**
 * Makes a plan better step by step, by our own means and in the order of the levels: more turns in it, fairer shares, then
 * better places for the same turns. Ended by counted looks; the same seed gives the same plan. Proves nothing.
 */
public final class BetterPlan {

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
     * @param least turns that are left out by every plan, as far as is known
     * @param looks how many places to look at, for each kind of step
     */
    public Plan from(Plan known, long seed, long least, long looks) {
        Board board = new Board(problem, places);
        board.take(known);
        Chain chain = new Chain(board);
        Trades trades = new Trades(problem, board, chain, new Random(seed), stopped);
        trades.bringIn(least, looks);
        trades.even(looks);
        exchange(board, chain, looks, seed);
        return better(known, board.plan());
    }

    /** The same turns in places that are as good or better. */
    public Plan withBetterPlaces(Plan known, long seed, long looks) {
        Board board = new Board(problem, places);
        board.take(known);
        exchange(board, new Chain(board), looks, seed);
        return better(known, board.plan());
    }

    private void exchange(Board board, Chain chain, long looks, long seed) {
        Exchanges exchanges = new Exchanges(problem, board, chain, stopped);
        exchanges.wishes(looks);
        exchanges.tools(new Random(seed));
    }

    private Plan better(Plan known, Plan found) {
        return Score.of(problem, found).compareTo(Score.of(problem, known)) <= 0 ? found : known;
    }
}
