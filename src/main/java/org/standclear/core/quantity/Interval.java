package org.standclear.core.quantity;

/** From one value to another, both included; the unit is that of the place where it stands. */
public record Interval(double min, double max) {

    public Interval {
        if (!(min <= max)) {
            throw new IllegalArgumentException("an interval needs min <= max");
        }
    }

    /** How far the value lies outside: 0 when inside. */
    public double outside(double value) {
        return Math.max(0, Math.max(min - value, value - max));
    }

    /** Whether a length or angle lies inside, but for rounding. */
    public boolean holds(double value) {
        return !Tolerance.isOutside(outside(value));
    }
}
