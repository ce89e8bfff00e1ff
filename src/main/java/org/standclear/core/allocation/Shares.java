package org.standclear.core.allocation;

import java.util.Collection;

/**
 * The part of the asked turns that each person gets, as whole numbers of one common part, so that it can be compared and
 * solved without rounding.
 *
 * @param scale parts that make the whole: the least number that every asked number divides; at most 27,720
 */
public record Shares(long scale) {

    /** The scale for people who ask for that many turns each, none more than {@link Problem#MOST_TURNS_EACH}. */
    public static Shares of(Collection<Integer> asked) {
        long scale = 1;
        for (int one : asked) {
            scale = scale / divisor(scale, one) * one;
        }
        return new Shares(scale);
    }

    /** The share of one of the asked turns. */
    public long oneOf(int asked) {
        return scale / asked;
    }

    private static long divisor(long one, long other) {
        return other == 0 ? one : divisor(other, one % other);
    }
}
