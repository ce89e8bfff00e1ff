package org.standclear.core.allocation;

import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Better places for the turns of a plan, the same turns staying in it: fewer bookings moved, fewer wishes passed over, then
 * fewer tool changes.
 */
final class Exchanges {

    private static final long MOST_LOOKS = 60_000;
    private static final int MOST_IN_VAIN = 40;
    private static final long MORE_THAN_CHANGES = 1_000_000;
    private static final int ALSO_AS_GOOD = 4;

    private final Board board;
    private final Chain chain;
    private final BooleanSupplier stopped;
    private final Cells cells;
    private boolean alsoAsGood;
    private final IdentityHashMap<Seat[], Map<Integer, Seat>> byFirstSlot = new IdentityHashMap<>();

    Exchanges(Board board, Cells cells, Chain chain, BooleanSupplier stopped) {
        this.board = board;
        this.cells = cells;
        this.chain = chain;
        this.stopped = stopped;
    }

    /** Chains in which those who move lose less than the first gains, the dearest places first. */
    void wishes(long looks) {
        long until = chain.looks() + looks;
        boolean helped = true;
        while (helped) {
            helped = false;
            for (int turn : dearest()) {
                while (chain.looks() < until && !stopped.getAsBoolean() && chain.better(turn, MOST_LOOKS)) {
                    helped = true;
                }
            }
        }
    }

    private List<Integer> dearest() {
        return IntStream.range(0, board.turns())
                .filter(turn -> Chain.cost(board.held(turn)) > 0)
                .boxed()
                .sorted(Comparator.comparingInt((Integer turn) -> -Chain.cost(board.held(turn))))
                .toList();
    }

    /**
     * Two turns that take each other's place, or one that goes to a free one. What is as good is taken now and then, to come
     * to what is better from there; the best in the end stands.
     */
    void tools(Random chance) {
        int best = board.mark();
        long least = worth();
        int inVain = 0;
        while (inVain < MOST_IN_VAIN && !stopped.getAsBoolean()) {
            pass(chance);
            inVain++;
            if (worth() < least) {
                least = worth();
                best = board.mark();
                inVain = 0;
            }
        }
        board.takeBack(best);
    }

    /** Costs of places and, below these, tool changes. */
    private long worth() {
        long costs = 0;
        for (int turn = 0; turn < board.turns(); turn++) {
            costs += Chain.cost(board.held(turn));
        }
        return costs * MORE_THAN_CHANGES + cells.changes();
    }

    private void pass(Random chance) {
        for (int cell = 0; cell < cells.count(); cell++) {
            for (int slot : cells.slots(cell)) {
                int turn = board.holder(slot);
                if (turn != Board.NONE && cells.isBesideAnother(cell, turn)) {
                    alsoAsGood = chance.nextInt(ALSO_AS_GOOD) == 0;
                    exchange(turn, chance);
                }
            }
        }
    }

    private void exchange(int turn, Random chance) {
        Seat from = board.held(turn);
        Seat[] seats = board.seats(turn);
        int first = chance.nextInt(seats.length);
        for (int index = 0; from != null && index < seats.length; index++) {
            Seat to = seats[(first + index) % seats.length];
            int other = board.holder(to.slots[0]);
            if (other != turn && isBetter(turn, from, to, other)) {
                return;
            }
        }
    }

    private boolean isBetter(int turn, Seat from, Seat to, int other) {
        Seat back = null;
        int cost = Chain.cost(to) - Chain.cost(from);
        if (other != Board.NONE) {
            if (cells.tool(other) == cells.tool(turn)) {
                return false;
            }
            Seat others = board.held(other);
            back = seatAt(other, from.slots[0]);
            if (back == null || others == null) {
                return false;
            }
            cost += Chain.cost(back) - Chain.cost(others);
        }
        return cost <= 0 && isDone(turn, to, other, back, cost);
    }

    private boolean isDone(int turn, Seat to, int other, @Nullable Seat back, int cost) {
        int cell = cells.of(to);
        int old = cells.of(board.held(turn));
        int before = cells.changes(cell) + (old == cell ? 0 : cells.changes(old));
        int mark = board.mark();
        board.put(turn, null, Board.NONE);
        if (back != null) {
            board.put(other, null, Board.NONE);
        }
        if (board.putIfFree(turn, to) && (back == null || board.putIfFree(other, back))) {
            int after = cells.changes(cell) + (old == cell ? 0 : cells.changes(old));
            if (cost < 0 || after < before || (alsoAsGood && after == before)) {
                return true;
            }
        }
        board.takeBack(mark);
        return false;
    }

    private @Nullable Seat seatAt(int turn, int slot) {
        return byFirstSlot
                .computeIfAbsent(board.seats(turn), seats -> {
                    Map<Integer, Seat> found = new HashMap<>();
                    for (Seat seat : seats) {
                        found.put(seat.slots[0], seat);
                    }
                    return found;
                })
                .get(slot);
    }
}
