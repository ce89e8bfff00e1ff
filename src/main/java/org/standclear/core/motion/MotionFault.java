package org.standclear.core.motion;

import org.standclear.core.arm.Axis;
import org.standclear.core.arm.Branch;
import org.standclear.core.geometry.Vector;

/** Something that the arm cannot do as the program wants it. */
public sealed interface MotionFault {

    /** The step, counted from 1; 0 for the start. */
    int step();

    /** The line, counted from 1. */
    int line();

    /** A point that no axis values reach: the flange would be that far from axis 1, mm. */
    record OutOfReach(int step, int line, String point, double radius, double nearest, double farthest)
            implements MotionFault {}

    /** A point for which no axis values were found, and why. */
    record Unsolved(int step, int line, String point, String why) implements MotionFault {}

    /** A straight move or an arc that leaves the reach of the arm on its way. */
    record LeavesReach(int step, int line, String point, Vector where) implements MotionFault {}

    /** A straight move or an arc to a point on another branch: the other side of the elbow, another posture. */
    record OtherSide(int step, int line, String point, Branch from, Branch named) implements MotionFault {}

    /** An arc whose two ends are not equally far from its centre, by so many mm. */
    record NotRound(int step, int line, String point, double mismatch) implements MotionFault {}

    /**
     * An axis that would have to stand outside its range.
     *
     * @param onTheWay whether it happens between the ends of a straight move
     */
    record OutOfRange(int step, int line, String point, Axis axis, double value, boolean onTheWay)
            implements MotionFault {}
}
