package org.standclear.core.geometry;

import org.standclear.core.quantity.Tolerance;

/** Turns of 360 degrees. */
public final class Angles {

    private Angles() {}

    /** The same direction in (-180, 180]; what is -180 but for rounding becomes 180. */
    public static double wrapped(double degrees) {
        double turned = degrees - 360 * Math.floor((degrees + 180) / 360);
        return turned <= -180 + Tolerance.LENGTH ? turned + 360 : turned;
    }

    /** The same direction, less than half a turn from another angle. */
    public static double nearest(double degrees, double other) {
        return degrees + 360 * Math.rint((other - degrees) / 360);
    }
}
