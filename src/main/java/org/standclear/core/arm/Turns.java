package org.standclear.core.arm;

import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.Tolerance;

/** Chooses among directions that are whole turns of 360 degrees apart. */
public final class Turns {

    private Turns() {}

    /**
     * The turn inside the range that is nearest to where the axis stood, on a tie the greater; when none is inside, the
     * nearest of all.
     */
    public static double choose(double degrees, Interval range, double before) {
        double least = Math.ceil((range.min() - Tolerance.LENGTH - degrees) / 360);
        double most = Math.floor((range.max() + Tolerance.LENGTH - degrees) / 360);
        double wanted = Math.rint((before - degrees) / 360);
        if (least > most) {
            return degrees + 360 * wanted;
        }
        double best = degrees + 360 * clamped(wanted - 1, least, most);
        for (double k = wanted; k <= wanted + 1; k++) {
            double other = degrees + 360 * clamped(k, least, most);
            // rising order: an equally near one that comes later is the greater
            if (Math.abs(other - before) <= Math.abs(best - before) + Tolerance.LENGTH) {
                best = other;
            }
        }
        return best;
    }

    private static double clamped(double k, double least, double most) {
        return Math.max(least, Math.min(most, k));
    }
}
