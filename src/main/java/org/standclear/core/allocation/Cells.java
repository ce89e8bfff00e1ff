package org.standclear.core.allocation;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The cells of a board with their slots in order of time, and how often each changes its tool. */
final class Cells {

    private final Board board;
    private final int[][] slots;
    private final int[] fitted;
    private final int[] cellOf;
    private final int[] tools;

    Cells(Problem problem, Board board) {
        this.board = board;
        Map<String, Integer> numbers = new HashMap<>();
        List<Bench> benches = problem.benches();
        slots = new int[benches.size()][];
        fitted = new int[benches.size()];
        cellOf = new int[problem.slots().size()];
        for (int cell = 0; cell < benches.size(); cell++) {
            String name = benches.get(cell).cell();
            fitted[cell] = numbers.computeIfAbsent(benches.get(cell).fitted(), key -> numbers.size());
            slots[cell] = IntStream.range(0, cellOf.length)
                    .filter(slot -> problem.slots().get(slot).cell().equals(name))
                    .boxed()
                    .sorted(Comparator.comparing(
                            slot -> problem.slots().get(slot).span().from()))
                    .mapToInt(Integer::intValue)
                    .toArray();
            for (int slot : slots[cell]) {
                cellOf[slot] = cell;
            }
        }
        tools = problem.turns().stream()
                .mapToInt(turn -> numbers.computeIfAbsent(turn.work().tool(), key -> numbers.size()))
                .toArray();
    }

    int count() {
        return slots.length;
    }

    /** The slots of a cell in order of time. */
    int[] slots(int cell) {
        return slots[cell];
    }

    /** The cell of a place. */
    int of(@Nullable Seat seat) {
        return seat == null ? 0 : cellOf[seat.slots[0]];
    }

    /** The number of a turn's tool. */
    int tool(int turn) {
        return tools[turn];
    }

    /** How often the cell's tool is changed. */
    int changes(int cell) {
        int before = fitted[cell];
        int changes = 0;
        for (int slot : slots[cell]) {
            int turn = board.holder(slot);
            if (turn != Board.NONE && tools[turn] != before) {
                changes++;
                before = tools[turn];
            }
        }
        return changes;
    }

    /** How often any is. */
    int changes() {
        return IntStream.range(0, slots.length).map(this::changes).sum();
    }

    /** Whether the turn before or after on its cell has another tool. */
    boolean isBesideAnother(int cell, int turn) {
        int before = fitted[cell];
        int last = Board.NONE;
        for (int slot : slots[cell]) {
            int there = board.holder(slot);
            if (there != Board.NONE) {
                if (tools[there] != before && (there == turn || last == turn)) {
                    return true;
                }
                before = tools[there];
                last = there;
            }
        }
        return false;
    }
}
