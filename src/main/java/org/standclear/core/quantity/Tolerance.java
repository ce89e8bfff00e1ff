package org.standclear.core.quantity;

/**
 * When a value counts as above its limit: limits are inclusive, and only rounding in the arithmetic is forgiven. All
 * comparisons are written so that NaN fails.
 */
public final class Tolerance {

    /** A value fails above its limit by more than this part of it. */
    public static final double RELATIVE = 1e-9;

    /** A length (mm) or an angle (deg) fails when it is outside by more than this. */
    public static final double LENGTH = 1e-6;

    private Tolerance() {}

    /** Whether a value is at or below its limit. */
    public static boolean isWithin(double value, double limit) {
        return value <= limit + Math.abs(limit) * RELATIVE;
    }

    /** Whether the two are the same but for rounding. */
    public static boolean isSame(double a, double b) {
        return Math.abs(a - b) <= RELATIVE * Math.max(Math.abs(a), Math.abs(b));
    }

    /** Whether a length or angle is outside by that much; NaN is. */
    public static boolean isOutside(double by) {
        return !(by <= LENGTH);
    }
}
