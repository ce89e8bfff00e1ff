package org.standclear.core.arm;

import org.standclear.core.geometry.Vector;

/**
 * A straight line of the tool point with the tool turning evenly along it.
 *
 * @param turn how far the tool turns from one end to the other, deg
 */
public record ToolLine(ToolPose from, Vector to, double turn) implements ToolWay {

    @Override
    public double length() {
        return to.minus(from.place()).length();
    }

    @Override
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

    @Override
    public Vector direction(double mm) {
        return direction();
    }

    @Override
    public double curvature() {
        return 0;
    }

    @Override
    public int parts() {
        return 1;
    }
}
