package org.standclear.core.allocation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BooleanSupplier;

/**
 * Brings more turns into a plan and shares out more evenly who goes without: a turn comes in for another that may go, as
 * long as no earlier level loses by it. Seeded, and ended by counted looks.
 */
final class Trades {

    private static final long MOST_LOOKS = 200_000;
    private static final int MOST_IN_VAIN = 300;

    private final Board board;
    private final Chain chain;
    private final Random chance;
    private final BooleanSupplier stopped;
    private final Map<Integer, Integer> got = new HashMap<>();
    private final int[] owed;
    private final long[] share;

    Trades(Problem problem, Board board, Chain chain, Random chance, BooleanSupplier stopped) {
        this.board = board;
        this.chain = chain;
        this.chance = chance;
        this.stopped = stopped;
        Map<String, Integer> asked = problem.asked();
        Shares shares = Shares.of(asked.values());
        owed = new int[board.turns()];
        share = new long[board.turns()];
        for (int turn = 0; turn < board.turns(); turn++) {
            String operator = board.turn(turn).operator();
            owed[turn] = problem.owed().getOrDefault(operator, 0);
            share[turn] = shares.oneOf(asked.getOrDefault(operator, 1));
        }
    }

    /** Until no more than so many are left out and nobody is under the minimum, or so many looks are used up. */
    void bringIn(long least, long looks) {
        long until = chain.looks() + looks;
        while (fill() && !stopped.getAsBoolean()) {
            // as long as it helps
        }
        List<Integer> without = without();
        int inVain = 0;
        while (without.size() > least && inVain < MOST_IN_VAIN && chain.looks() < until && !stopped.getAsBoolean()) {
            count();
            List<Integer> owing = without.stream().filter(this::isOwed).toList();
            List<Integer> from = owing.isEmpty() || chance.nextBoolean() ? without : owing;
            int turn = from.get(chance.nextInt(from.size()));
            boolean onlyLonger = chance.nextInt(4) == 0;
            chain.placeInsteadOf(
                    turn, other -> mayGo(other) && (onlyLonger ? isLonger(other) : chance.nextInt(3) == 0), MOST_LOOKS);
            inVain = fill() ? 0 : inVain + 1;
            without = without();
        }
    }

    /**
     * As long as somebody who has least can get a turn of somebody with more. Turns of others change hands in between, which
     * makes no share smaller than the least, to come to trades that were not there before.
     *
     * @param spread largest less smallest share of every plan, as far as is known
     */
    void even(long spread, long looks) {
        long until = chain.looks() + looks;
        int inVain = 0;
        count();
        List<Integer> without = without();
        while (!without.isEmpty()
                && spread() > spread
                && inVain < MOST_IN_VAIN
                && chain.looks() < until
                && !stopped.getAsBoolean()) {
            long least = leastShare();
            long most = least + spread();
            List<Integer> poorest =
                    without.stream().filter(turn -> shareOf(turn) == least).toList();
            boolean fromPoorest = !poorest.isEmpty() && chance.nextBoolean();
            List<Integer> from = fromPoorest
                    ? poorest
                    : without.stream()
                            .filter(turn -> shareOf(turn) + share[turn] <= most)
                            .toList();
            if (from.isEmpty()) {
                inVain++;
                continue;
            }
            int turn = from.get(chance.nextInt(from.size()));
            boolean any = fromPoorest && chance.nextBoolean();
            inVain++;
            if (chain.placeInsteadOf(
                    turn,
                    other -> mayGo(other) && shareOf(other) - share[other] > least && (any || chance.nextInt(3) == 0),
                    MOST_LOOKS)) {
                inVain = shareOf(turn) == least ? 0 : inVain;
                count();
                without = without();
            }
        }
    }

    private long leastShare() {
        long least = Long.MAX_VALUE;
        for (int turn = 0; turn < board.turns(); turn++) {
            least = Math.min(least, shareOf(turn));
        }
        return least;
    }

    private long spread() {
        long most = 0;
        for (int turn = 0; turn < board.turns(); turn++) {
            most = Math.max(most, shareOf(turn));
        }
        return most - leastShare();
    }

    private boolean fill() {
        boolean helped = false;
        List<Integer> without = without();
        Collections.shuffle(without, chance);
        without.sort(Comparator.comparing((Integer turn) -> !board.turn(turn).makeUp())
                .thenComparing(this::isLonger));
        boolean first = true;
        for (int turn : without) {
            // what could not move for the one before cannot move for the next either
            boolean placed = first ? chain.place(turn, MOST_LOOKS) : chain.placeOn(turn, MOST_LOOKS);
            first = false;
            helped = helped || placed;
        }
        return helped;
    }

    private List<Integer> without() {
        List<Integer> without = new ArrayList<>();
        for (int turn = 0; turn < board.turns(); turn++) {
            if (board.held(turn) == null && board.seats(turn).length > 0) {
                without.add(turn);
            }
        }
        return without;
    }

    private void count() {
        got.clear();
        for (int turn = 0; turn < board.turns(); turn++) {
            if (board.held(turn) != null) {
                got.merge(board.operator(turn), 1, Integer::sum);
            }
        }
    }

    private boolean isOwed(int turn) {
        return got.getOrDefault(board.operator(turn), 0) < owed[turn];
    }

    private boolean mayGo(int turn) {
        return !board.turn(turn).makeUp() && got.getOrDefault(board.operator(turn), 0) > owed[turn];
    }

    private long shareOf(int turn) {
        return share[turn] * got.getOrDefault(board.operator(turn), 0);
    }

    private boolean isLonger(int turn) {
        Seat[] seats = board.seats(turn);
        return seats.length > 0 && seats[0].slots.length > 1;
    }
}
