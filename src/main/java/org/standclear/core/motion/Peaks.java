package org.standclear.core.motion;

import org.standclear.core.quantity.Tolerance;

/**
 * The greatest speeds of one move, mm/s.
 *
 * @param fullPowerTool of the tool point when the power is not reduced
 * @param heldTool of the tool point as the power mode holds it
 * @param heldElbow of the elbow, 0 for an arm without one
 * @param heldOverhang a bound for the farthest part of tool and part
 */
public record Peaks(double fullPowerTool, double heldTool, double heldElbow, double heldOverhang) {

    /** Nothing moves. */
    public static final Peaks STILL = new Peaks(0, 0, 0, 0);

    /** The largest of the three held ones. */
    public double fastest() {
        return Math.max(heldTool, Math.max(heldElbow, heldOverhang));
    }

    /** Which of the three it is; on equal values the tool before the elbow before the overhang. */
    public FastestPart part() {
        if (isFastest(heldTool)) {
            return FastestPart.TOOL;
        }
        return isFastest(heldElbow) ? FastestPart.ELBOW : FastestPart.OVERHANG;
    }

    private boolean isFastest(double speed) {
        return Tolerance.isSame(speed, fastest());
    }

    boolean isFinite() {
        return Double.isFinite(fullPowerTool)
                && Double.isFinite(heldTool)
                && Double.isFinite(heldElbow)
                && Double.isFinite(heldOverhang);
    }
}
