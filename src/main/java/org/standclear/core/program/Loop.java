package org.standclear.core.program;

/**
 * How a program ends: after so many passes, or never by itself.
 *
 * @param passes at least 1; not looked at when forever
 */
public record Loop(int passes, boolean forever) {

    /** The most passes that can be declared. */
    public static final int MOST_PASSES = 1_000_000;

    /** Loops until somebody stops it. */
    public static final Loop FOREVER = new Loop(1, true);

    public Loop {
        if (passes < 1 || passes > MOST_PASSES) {
            throw new IllegalArgumentException("passes are from 1 to " + MOST_PASSES);
        }
    }

    /** So many passes. */
    public static Loop times(int passes) {
        return new Loop(passes, false);
    }

    /** Whether it goes back to its first step. */
    public boolean repeats() {
        return forever || passes > 1;
    }

    /** As files write it: a number, or {@code forever}. */
    public String word() {
        return forever ? "forever" : Integer.toString(passes);
    }
}
