package org.standclear.core.arm;

import org.standclear.core.geometry.Vector;

/**
 * A way of the tool point on which its speed is given and the axes follow, the tool turning evenly along it. Places are
 * counted in mm from its beginning.
 */
public interface ToolWay {

    /** About z. */
    Vector UP = new Vector(0, 0, 1);

    /** Where it begins. */
    ToolPose from();

    /** Its length, mm. */
    double length();

    /** How far the tool turns from one end to the other, deg. */
    double turn();

    /** The direction about which it turns, of length 1. */
    default Vector about() {
        return UP;
    }

    /** The tool after so many mm. */
    ToolPose at(double mm);

    /** The direction there: mm per mm. */
    Vector direction(double mm);

    /** How much the direction changes at most, per mm: 0 for a line, 1 / radius for a circle. */
    double curvature();

    /** Into how many equal parts it is cut so that it bends only a little in each. */
    int parts();

    /** Whether it is a straight line. */
    default boolean isStraight() {
        return curvature() == 0;
    }

    /** How far the tool turns per mm, deg. */
    default double turnPerMm() {
        return turn() / length();
    }
}
