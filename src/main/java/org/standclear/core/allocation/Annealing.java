package org.standclear.core.allocation;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Random;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Exchanges of two places by chance, worse ones too as long as it is warm (simulated annealing): the same turns stay in the
 * plan, and wishes and tool changes become fewer. Seeded, and ended by counted tries.
 */
final class Annealing {

    /** A wish weighs as much as so many tool changes while it is warm; in the end wishes come first. */
    private static final int WISH = 12;

    private static final double WARM = 20;

    /** Warm enough for tool changes, where wishes are kept anyway. */
    private static final double TEPID = 3;

    private static final double COLD = 0.4;

    /** Where a long walk among tool changes comes by the fewest: of 0.2 to 1 that was tried at a college's size. */
    private static final double COOL = 0.35;

    private static final int A_LOOK_AT_THE_STOP = 1 << 12;

    private final Board board;
    private final Cells cells;
    private final Random chance;
    private int mostCost;
    private long changed;
    private final IdentityHashMap<Seat[], Map<Integer, Seat>> byFirstSlot = new IdentityHashMap<>();

    Annealing(Board board, Cells cells, Random chance) {
        this.board = board;
        this.cells = cells;
        this.chance = chance;
    }

    /** So many tries, colder and colder. */
    void run(long tries, BooleanSupplier stopped) {
        run(tries, WARM, Integer.MAX_VALUE, stopped);
    }

    /** The same for tool changes alone: no exchange passes over more wishes, or moves more bookings. */
    void tools(long tries, BooleanSupplier stopped) {
        run(tries, TEPID, 0, stopped);
    }

    /**
     * So many tries at one warmth, for tool changes alone: colder and colder comes to rest in the first hollow, while at
     * one warmth ways lead out of it again. Ends when there are no more changes than that, and the fewest on the way stand.
     */
    Plan fewestTools(long tries, long least, BooleanSupplier stopped) {
        mostCost = 0;
        changed = cells.changes();
        long fewest = changed;
        Plan best = board.plan();
        for (long done = 0; done < tries && fewest > least && board.turns() > 0; done++) {
            if (done % A_LOOK_AT_THE_STOP == 0 && stopped.getAsBoolean()) {
                break;
            }
            attempt(-COOL * Math.log(1 - chance.nextDouble()));
            if (changed < fewest) {
                fewest = changed;
                best = board.plan();
            }
        }
        return best;
    }

    private void run(long tries, double warm, int most, BooleanSupplier stopped) {
        double warmth = warm;
        mostCost = most;
        double factor = Math.pow(COLD / warm, (double) A_LOOK_AT_THE_STOP / tries);
        for (long done = 0; done < tries && board.turns() > 0; done++) {
            if (done % A_LOOK_AT_THE_STOP == 0) {
                if (stopped.getAsBoolean()) {
                    return;
                }
                warmth *= factor;
            }
            attempt(-warmth * Math.log(1 - chance.nextDouble()));
        }
    }

    private void attempt(double allowed) {
        int turn = chance.nextInt(board.turns());
        Seat from = board.held(turn);
        if (from == null) {
            return;
        }
        Seat[] seats = board.seats(turn);
        Seat to = seats[chance.nextInt(seats.length)];
        int other = board.holder(to.slots[0]);
        if (other == turn) {
            return;
        }
        int cost = Chain.cost(to) - Chain.cost(from);
        Seat back = null;
        if (other != Board.NONE) {
            back = seatAt(other, from.slots[0]);
            if (back == null) {
                return;
            }
            cost += Chain.cost(back) - Chain.cost(board.held(other));
        }
        // each of the two places can save two changes
        if (cost <= mostCost && WISH * cost - 4 <= allowed) {
            exchange(turn, to, other, back, allowed - WISH * cost);
        }
    }

    private void exchange(int turn, Seat to, int other, @Nullable Seat back, double allowed) {
        int mark = board.mark();
        int old = cells.of(board.held(turn));
        int cell = cells.of(to);
        boolean sameTool = back != null && cells.tool(other) == cells.tool(turn);
        int before = sameTool ? 0 : cells.changes(cell) + (old == cell ? 0 : cells.changes(old));
        board.put(turn, null, Board.NONE);
        if (back != null) {
            board.put(other, null, Board.NONE);
        }
        if (board.putIfFree(turn, to) && (back == null || board.putIfFree(other, back))) {
            int after = sameTool ? 0 : cells.changes(cell) + (old == cell ? 0 : cells.changes(old));
            if (after - before <= allowed) {
                board.forget(mark);
                changed += after - before;
                return;
            }
        }
        board.takeBack(mark);
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
