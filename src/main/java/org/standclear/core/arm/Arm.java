package org.standclear.core.arm;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

/**
 * The geometry of one arm. Axis values and their rates are in the axes' own units (deg, mm); a rate is per whatever
 * runs along the path. The tool's offset is from the flange to the tool point, turning with the yaw, in mm.
 */
public interface Arm {

    /** The name that cell files use. */
    String kind();

    /** The axes in their order. */
    List<Axis> axes();

    /** Whether points must name which of several ways to reach them is meant: the side of the elbow, or a posture. */
    boolean hasElbow();

    /** Whether the branch that a point names, or names not, is one of this arm's. */
    boolean takes(@Nullable Branch branch);

    /** What points of this arm must say, to follow the name of one that does not. */
    String needs();

    /** Where the tool stands at these axis values. */
    ToolPose toolPose(AxisValues at, Vector offset);

    /** How fast the tool point goes, mm. */
    double toolSpeed(AxisValues at, AxisValues rates, Vector offset);

    /** A speed that the tool point never exceeds at these rates, wherever the axes stand, mm. */
    double toolSpeedBound(AxisValues rates, Vector offset);

    /** How far the parts that carry the tool point turn at these rates, taken together, rad. */
    double turning(AxisValues rates, Vector offset);

    /** Whether the speeds of the tool's turning and of the link ends follow from the rates alone, wherever it stands. */
    boolean turnsEvenly();

    /** How fast the tool turns, rad. */
    double turnRate(AxisValues at, AxisValues rates);

    /** How many places of the arm itself count as moving parts beside the tool point; the elbow of a scara is one. */
    int linkEnds();

    /** How fast one of them goes, mm. */
    double linkEndSpeed(int end, AxisValues at, AxisValues rates);

    /** How far one of them is from axis 1 horizontally, mm. */
    double linkEndRadius(int end, AxisValues at);

    /**
     * The arm as somebody draws it who looks on: the places where its links begin and end, from its foot to the tool
     * point, mm. An arm that does not say draws as its tool point alone.
     */
    default List<Vector> outline(AxisValues at, Vector offset) {
        return List.of(toolPose(at, offset).place());
    }

    /** From where to where the flange gets around axis 1, horizontally, mm; empty when that is not a ring. */
    default Optional<Interval> ring() {
        return Optional.empty();
    }

    /** What distances are counted from horizontally, as people say it. */
    default String middle() {
        return "axis 1";
    }

    /** How far the arm itself reaches out horizontally wherever it stands, mm: the elbow of a scara. */
    double ownRadius();

    /**
     * The axis values that bring the tool there.
     *
     * @param branch needed when the arm has an elbow, else not looked at
     * @param before where the axes stood; an axis that turns takes the turn nearest to it, on a tie the greater
     */
    Solution solve(ToolPose target, @Nullable Branch branch, Vector offset, @Nullable AxisValues before);

    /** Whether solutions are looked for from many first guesses, which takes long where there is none. */
    default boolean searches() {
        return false;
    }

    /** The branch on which a line from one point to another runs; null when they lie on different ones. */
    @Nullable
    Branch shared(Reached from, Reached to, Vector offset);

    /** A pose and the branch on which it is reached. */
    record Reached(ToolPose pose, @Nullable Branch branch) {}

    /** The axes along a straight line or an arc of the tool point. */
    LineFollowing follow(ToolWay line, AxisValues from, @Nullable Branch branch, Vector offset);
}
