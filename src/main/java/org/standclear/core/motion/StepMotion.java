package org.standclear.core.motion;

import org.jspecify.annotations.Nullable;
import org.standclear.core.program.Point;

/**
 * What is known of the motion of one step; null where it cannot be computed.
 *
 * @param closing whether this is the move of a loop back to its first step
 * @param fromUnknownStart whether this is the first move of a program that does not say where the arm stands
 * @param target where a move goes
 */
public record StepMotion(
        int step,
        StepKind kind,
        int line,
        boolean closing,
        boolean fromUnknownStart,
        @Nullable Double durationS,
        @Nullable Double fullPowerDurationS,
        @Nullable Peaks peaks,
        @Nullable Point target,
        @Nullable Trace trace) {

    /**
     * The way of the tool point and the speed along it, for those who draw or search it.
     *
     * @param held the profile as the power mode holds it; null when its speeds are not known or nothing moves
     * @param fullPower the profile in full power
     */
    public record Trace(
            ToolPath path, @Nullable Profile held, @Nullable Profile fullPower) {}

    /** Whether the arm moves, or would. */
    public boolean isMove() {
        return target != null;
    }

    /** Whether its speeds are missing for a reason that leaves the whole program uncertain. */
    public boolean isUnknown() {
        return peaks == null && !fromUnknownStart;
    }
}
