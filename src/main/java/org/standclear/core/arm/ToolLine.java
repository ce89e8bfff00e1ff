package org.standclear.core.arm;

import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/**
 * A straight line of the tool point with the tool turning evenly along it.
 *
 * @param turn how far the tool turns from one end to the other, deg
 * @param about the direction about which it turns, of length 1
 */
public record ToolLine(ToolPose from, Vector to, double turn, Vector about) implements ToolWay {

    /** A line along which the tool turns about z. */
    public ToolLine(ToolPose from, Vector to, double turn) {
        this(from, to, turn, UP);
    }

    /** The line from one pose to another, the tool turning the shortest way. */
    public static ToolLine between(ToolPose from, ToolPose to) {
        if (from.isUpright() && to.isUpright()) {
            return new ToolLine(from, to.place(), Angles.wrapped(to.yaw() - from.yaw()));
        }
        Vector turn = to.rotation().times(from.rotation().inverse()).turn();
        double angle = turn.length();
        return angle == 0
                ? new ToolLine(from, to.place(), 0)
                : new ToolLine(from, to.place(), Math.toDegrees(angle), turn.times(1 / angle));
    }

    @Override
    public double length() {
        return to.minus(from.place()).length();
    }

    @Override
    public ToolPose at(double mm) {
        double part = mm / length();
        Vector place = from.place().towards(to, part);
        return about.equals(UP) && from.isUpright()
                ? new ToolPose(place, from.yaw() + turn * part)
                : ToolPose.of(place, Rotation.about(about, turn * part).times(from.rotation()));
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
