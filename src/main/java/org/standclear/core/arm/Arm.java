package org.standclear.core.arm;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Vector;

/**
 * The geometry of one arm. Axis values and their rates are in the axes' own units (deg, mm); a rate is per whatever
 * runs along the path. The tool's offset is from the flange to the tool point, turning with the yaw, in mm.
 */
public interface Arm {

    /** The name that cell files use. */
    String kind();

    /** The axes in their order. */
    List<Axis> axes();

    /** Whether points must name the side of the elbow. */
    boolean hasElbow();

    /** Where the tool stands at these axis values. */
    ToolPose toolPose(AxisValues at, Vector offset);

    /** How fast the tool point goes, mm. */
    double toolSpeed(AxisValues at, AxisValues rates, Vector offset);

    /** A speed that the tool point never exceeds at these rates, wherever the axes stand, mm. */
    double toolSpeedBound(AxisValues rates, Vector offset);

    /** How far the parts that carry the tool point turn at these rates, taken together, rad. */
    double turning(AxisValues rates, Vector offset);

    /** How fast the tool turns, rad. */
    double turnRate(AxisValues rates);

    /** How fast the elbow goes, mm; 0 for an arm without one. */
    double elbowSpeed(AxisValues rates);

    /** How far the arm itself reaches out horizontally wherever it stands, mm: the elbow of a scara. */
    double ownRadius();

    /**
     * The axis values that bring the tool there.
     *
     * @param side needed when the arm has an elbow, else not looked at
     * @param before where the axes stood; an axis that turns takes the turn nearest to it, on a tie the greater
     */
    Solution solve(ToolPose target, @Nullable Elbow side, Vector offset, @Nullable AxisValues before);

    /** Whether both sides of the elbow are the same there, so that the place belongs to either. */
    boolean isOnBothSides(ToolPose at, Vector offset);

    /** The axes along a straight line or an arc of the tool point. */
    LineFollowing follow(ToolWay line, AxisValues from, @Nullable Elbow side, Vector offset);
}
