package org.standclear.core.arm;

import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/**
 * Where the tool point stands and how the tool is turned: first about x by the roll, then about the base's y by the
 * pitch, then about its z by the yaw. Arms that keep the tool upright have pitch and roll 0.
 *
 * @param yaw deg, counter-clockwise seen from above
 * @param pitch deg
 * @param roll deg
 */
public record ToolPose(Vector place, double yaw, double pitch, double roll) {

    /** An upright tool. */
    public ToolPose(Vector place, double yaw) {
        this(place, yaw, 0, 0);
    }

    /** A tool turned in space. */
    public static ToolPose of(Vector place, Rotation turned) {
        Vector angles = turned.yawPitchRoll();
        return new ToolPose(place, angles.x(), angles.y(), angles.z());
    }

    /** Whether it is turned about z alone. */
    public boolean isUpright() {
        return pitch == 0 && roll == 0;
    }

    /** How the tool is turned. */
    public Rotation rotation() {
        return Rotation.of(yaw, pitch, roll);
    }
}
