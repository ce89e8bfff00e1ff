package org.standclear.core.motion;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Axis;

/**
 * The axis that a straight move asks most of, against its own speed.
 *
 * @param speed deg/s or mm/s, infinite where the axis would have to jump; null when the cell file gives no speed of the
 *     axis to compare with
 */
public record AxisUse(
        int step, int line, Axis axis, @Nullable Double speed) {}
