package org.standclear.core.allocation;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * Gives a turn a place by letting others move on, one after the other, as augmenting paths do in a matching; here a turn
 * may stand in the way by its slots, its operator or its attendant. Each turn moves at most once in a search, and a search
 * counts its looks, so that it ends at the same point on any machine.
 */
final class Chain {

    /** Enough for every cost there can be. */
    private static final int ANY_COST = 1 << 28;

    /** What passing over one wish is to moving a booking: moving one is worse than all wishes together. */
    private static final int MOVED = 1 << 14;

    private static final int FAILED = Integer.MIN_VALUE;
    private static final int DEEPEST = 24;

    private final Board board;
    private final int[] seen;
    private int search = 1;
    private long looks;
    private long until;
    private IntPredicate mayGo = turn -> false;
    private boolean gone;

    Chain(Board board) {
        this.board = board;
        this.seen = new int[board.turns()];
    }

    /** How many places have been looked at, in all searches. */
    long looks() {
        return looks;
    }

    /** Finds a place for a turn that has none; whoever moves keeps one. */
    boolean place(int turn, long most) {
        search++;
        return placeOn(turn, most);
    }

    /** The same, but turns that could not move since the last success or fresh search are not asked again. */
    boolean placeOn(int turn, long most) {
        return found(turn, ANY_COST, most, one -> false);
    }

    /** The same, and one of those that may is left without a place when that is what it takes. */
    boolean placeInsteadOf(int turn, IntPredicate mayGoWithout, long most) {
        search++;
        return found(turn, ANY_COST, most, mayGoWithout);
    }

    /** Finds a turn a place that it likes better, so that all who move for it lose less than it gains. */
    boolean better(int turn, long most) {
        search++;
        Seat seat = board.held(turn);
        if (seat == null) {
            return false;
        }
        int mark = board.mark();
        board.put(turn, null, Board.NONE);
        if (found(turn, cost(seat) - 1, most, one -> false)) {
            return true;
        }
        board.takeBack(mark);
        return false;
    }

    /** What a place costs its turn on the levels of moved bookings and wishes. */
    static int cost(@Nullable Seat seat) {
        return seat == null ? 0 : (seat.moved ? MOVED : 0) + seat.passed;
    }

    private boolean found(int turn, int slack, long most, IntPredicate mayGoWithout) {
        mayGo = mayGoWithout;
        gone = false;
        until = looks + most;
        seen[turn] = search;
        int mark = board.mark();
        if (find(turn, slack, DEEPEST) != FAILED) {
            search++;
            return true;
        }
        board.takeBack(mark);
        return false;
    }

    /** Takes the turn in for at most so much, and says what is left of it when all who had to move have a place again. */
    private int find(int turn, int slack, int depth) {
        Seat[] seats = board.seats(turn);
        for (Seat seat : seats) {
            looks++;
            int cost = cost(seat);
            if (cost <= slack) {
                int attendant = board.attendantIfFree(turn, seat);
                if (attendant != Board.NONE) {
                    board.put(turn, seat, attendant);
                    return slack - cost;
                }
            }
        }
        if (depth > 0) {
            for (Seat seat : seats) {
                int left = looks < until ? findInsteadOfOthers(turn, seat, slack - cost(seat), depth) : FAILED;
                if (left != FAILED) {
                    return left;
                }
            }
        }
        return FAILED;
    }

    private int findInsteadOfOthers(int turn, Seat seat, int slack, int depth) {
        int[] others = new int[seat.slots.length + 1];
        looks++;
        int count = board.inTheWay(turn, seat, others);
        if (count > others.length || count == 0) {
            return FAILED;
        }
        int worth = 0;
        for (int other = 0; other < count; other++) {
            if (seen[others[other]] == search) {
                return FAILED;
            }
            worth += cost(board.held(others[other]));
        }
        if (slack + worth < 0) {
            return FAILED;
        }
        int mark = board.mark();
        boolean goneBefore = gone;
        for (int other = 0; other < count; other++) {
            seen[others[other]] = search;
            board.put(others[other], null, Board.NONE);
        }
        int attendant = board.attendantIfFree(turn, seat);
        if (attendant != Board.NONE) {
            board.put(turn, seat, attendant);
            int left = moveOn(Arrays.copyOf(others, count), slack + worth, depth - 1);
            if (left != FAILED) {
                return left;
            }
        }
        board.takeBack(mark);
        gone = goneBefore;
        return FAILED;
    }

    private int moveOn(int[] others, int slack, int depth) {
        int left = slack;
        for (int other : others) {
            if (!gone && mayGo.test(other)) {
                gone = true;
            } else {
                left = find(other, left, depth);
                if (left == FAILED) {
                    return FAILED;
                }
            }
        }
        return left;
    }
}
