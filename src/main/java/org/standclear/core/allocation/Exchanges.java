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
    private static final int ALSO_AS_GOOD = 4;

    private final Board board;
    private final Chain chain;
    private final BooleanSupplier stopped;
    private final int[][] slotsByCell;
    private final String[] fitted;
    private final int[] cellOf;
    private boolean alsoAsGood;
    private final IdentityHashMap<Seat[], Map<Integer, Seat>> byFirstSlot = new IdentityHashMap<>();

    Exchanges(Problem problem, Board board, Chain chain, BooleanSupplier stopped) {
        this.board = board;
        this.chain = chain;
        this.stopped = stopped;
        List<Bench> benches = problem.benches();
        slotsByCell = new int[benches.size()][];
        fitted = new String[benches.size()];
        cellOf = new int[problem.slots().size()];
        for (int cell = 0; cell < benches.size(); cell++) {
            String name = benches.get(cell).cell();
            fitted[cell] = benches.get(cell).fitted();
            slotsByCell[cell] = IntStream.range(0, cellOf.length)
                    .filter(slot -> problem.slots().get(slot).cell().equals(name))
                    .boxed()
                    .sorted(Comparator.comparing(
                            slot -> problem.slots().get(slot).span().from()))
                    .mapToInt(Integer::intValue)
                    .toArray();
            for (int slot : slotsByCell[cell]) {
                cellOf[slot] = cell;
            }
        }
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
        return costs * (cellOf.length + 1L)
                + IntStream.range(0, slotsByCell.length).map(this::changes).sum();
    }

    private void pass(Random chance) {
        for (int[] slots : slotsByCell) {
            for (int slot : slots) {
                int turn = board.holder(slot);
                if (turn != Board.NONE && isBesideAnother(slots, turn)) {
                    alsoAsGood = chance.nextInt(ALSO_AS_GOOD) == 0;
                    exchange(turn, chance);
                }
            }
        }
    }

    /** Whether the turn before or after on the cell has another tool. */
    private boolean isBesideAnother(int[] slots, int turn) {
        String before = fitted[cellOf[slots[0]]];
        int last = Board.NONE;
        for (int slot : slots) {
            int there = board.holder(slot);
            if (there != Board.NONE) {
                String now = tool(there);
                if (!now.equals(before) && (there == turn || last == turn)) {
                    return true;
                }
                before = now;
                last = there;
            }
        }
        return false;
    }

    private String tool(int turn) {
        return board.turn(turn).work().tool();
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
            if (tool(other).equals(tool(turn))) {
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
        int cell = cellOf[to.slots[0]];
        Seat from = board.held(turn);
        int old = from == null ? cell : cellOf[from.slots[0]];
        int before = changes(cell) + (old == cell ? 0 : changes(old));
        int mark = board.mark();
        board.put(turn, null, Board.NONE);
        if (back != null) {
            board.put(other, null, Board.NONE);
        }
        if (isPut(turn, to) && (back == null || isPut(other, back))) {
            int after = changes(cell) + (old == cell ? 0 : changes(old));
            if (cost < 0 || after < before || (alsoAsGood && after == before)) {
                return true;
            }
        }
        board.takeBack(mark);
        return false;
    }

    private boolean isPut(int turn, Seat seat) {
        int attendant = board.attendantIfFree(turn, seat);
        if (attendant == Board.NONE) {
            return false;
        }
        board.put(turn, seat, attendant);
        return true;
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

    private int changes(int cell) {
        String before = fitted[cell];
        int changes = 0;
        for (int slot : slotsByCell[cell]) {
            int turn = board.holder(slot);
            if (turn != Board.NONE && !tool(turn).equals(before)) {
                changes++;
                before = tool(turn);
            }
        }
        return changes;
    }
}
