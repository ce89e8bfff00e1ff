package org.standclear.core.allocation;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * A quick plan for a search to start from: make-ups first, then turn and turn about, those with the fewest places first;
 * whoever finds none free lets others move on. Keeps the rules, proves nothing.
 */
public final class FirstPlan {

    /** Looks of one search; more are seldom worth the time. */
    private static final long MOST_LOOKS = 400_000;

    private final Problem problem;
    private final Board board;

    public FirstPlan(Problem problem, Places places) {
        this.problem = problem;
        this.board = new Board(problem, places);
    }

    /** The plan. */
    public Plan find() {
        sortByRush();
        Chain chain = new Chain(board);
        for (int turn : order()) {
            chain.placeOn(turn, MOST_LOOKS);
        }
        return board.plan();
    }

    /** Places first that few want. */
    private void sortByRush() {
        int[] wanted = new int[problem.slots().size()];
        for (int turn = 0; turn < board.turns(); turn++) {
            for (Seat seat : board.seats(turn)) {
                for (int slot : seat.slots) {
                    wanted[slot]++;
                }
            }
        }
        Comparator<Seat> byRush = Comparator.comparingInt(
                seat -> Arrays.stream(seat.slots).map(slot -> wanted[slot]).sum());
        for (int turn = 0; turn < board.turns(); turn++) {
            Arrays.sort(board.seats(turn), byRush);
        }
    }

    /** Who owes turns comes before who only asks for more, and among these a longer turn after the shorter ones. */
    private List<Integer> order() {
        int[] round = new int[board.turns()];
        boolean[] longer = new boolean[board.turns()];
        Map<String, Integer> nth = new HashMap<>();
        for (int turn = 0; turn < board.turns(); turn++) {
            Turn one = board.turn(turn);
            int number = nth.merge(one.operator(), 1, Integer::sum);
            round[turn] = one.makeUp() ? 0 : number;
            Seat[] seats = board.seats(turn);
            longer[turn] = number > problem.owed().getOrDefault(one.operator(), 0)
                    && seats.length > 0
                    && seats[0].slots.length > 1;
        }
        return IntStream.range(0, board.turns())
                .boxed()
                .sorted(Comparator.comparing((Integer turn) -> longer[turn])
                        .thenComparing(turn -> round[turn])
                        .thenComparing(turn -> board.seats(turn).length))
                .toList();
    }
}
