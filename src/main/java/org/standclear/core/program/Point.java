package org.standclear.core.program;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.arm.articulated.ArticulatedArm;
import org.standclear.core.geometry.Vector;

/**
 * A named place of the tool point.
 *
 * @param given the place as the file gives it; null when the file gives axis values instead
 * @param branch null when the file names none
 * @param axes null when the file gives a place
 * @param line where the file defines it, counted from 1
 */
public record Point(
        String name,
        @Nullable ToolPose given,
        @Nullable Branch branch,
        @Nullable AxisValues axes,
        int line) {

    public Point {
        if (given == null && axes == null) {
            throw new IllegalArgumentException("a point has a place or axis values");
        }
    }

    /** A point that the file gives as a place. */
    public Point(String name, ToolPose pose, @Nullable Branch branch, int line) {
        this(name, pose, branch, null, line);
    }

    /** A point that the file gives as axis values, in the order of the axes. */
    public static Point ofAxes(String name, AxisValues axes, int line) {
        return new Point(name, null, null, axes, line);
    }

    /** The place; a point of axis values has one only when an arm is known. */
    public ToolPose pose() {
        if (given == null) {
            throw new IllegalStateException("the point " + name + " has axis values and no arm");
        }
        return given;
    }

    /** The same point with the place and the posture that its axis values mean on an arm. */
    public Point on(Arm arm, Vector offset) {
        if (axes == null || !(arm instanceof ArticulatedArm six)) {
            return this;
        }
        return new Point(name, arm.toolPose(axes, offset), six.posture(axes), axes, line);
    }
}
