package org.standclear.core.arm;

import org.jspecify.annotations.Nullable;
import org.standclear.core.quantity.Interval;

/**
 * One axis of an arm: deg, deg/s and deg/s2 when rotary, else mm, mm/s and mm/s2.
 *
 * @param speed null when the cell file leaves it out; then moves of this axis cannot be computed
 */
public record Axis(
        String name,
        boolean rotary,
        Interval range,
        @Nullable Double speed,
        double acceleration) {

    public Axis {
        if (!(acceleration > 0) || speed != null && !(speed > 0)) {
            throw new IllegalArgumentException("speed and acceleration of an axis are above 0");
        }
    }

    /** The unit of its values. */
    public String unit() {
        return rotary ? "deg" : "mm";
    }
}
