package org.standclear.core.arm;

import org.standclear.core.geometry.Vector;

/**
 * A straight line of the tool point with the tool turning evenly along it.
 *
 * @param turn how far the tool turns from one end to the other, deg
 */
public record ToolLine(ToolPose from, Vector to, double turn) {

    /** Its length, mm. */
    public double length() {
        return to.minus(from.place()).length();
    }

    /** The tool after so many mm. */
    public ToolPose at(double mm) {
        double part = mm / length();
        return new ToolPose(from.place().towards(to, part), from.yaw() + turn * part);
    }

    /** The direction: mm per mm. */
    public Vector direction() {
        double length = length();
        Vector way = to.minus(from.place());
        return new Vector(way.x() / length, way.y() / length, way.z() / length);
    }

    /** How far the tool turns per mm, deg. */
    public double turnPerMm() {
        return turn / length();
    }
}
