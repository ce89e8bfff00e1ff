package org.standclear.core.arm;

import org.standclear.core.geometry.Vector;

/**
 * An arc of the tool point about an axis that is parallel to z, with z and the tool's yaw changing evenly along it (a
 * helix when z changes). The radius goes evenly from that of the beginning to that of the end, which differ by no more
 * than the program's rounding.
 *
 * @param centreX of the arc's axis, mm
 * @param centreY of the arc's axis, mm
 * @param sweep how far it goes round seen from above, deg; above 0 counter-clockwise
 * @param turn how far the tool turns from one end to the other, deg
 */
public record ToolArc(ToolPose from, Vector to, double centreX, double centreY, double sweep, double turn)
        implements ToolWay {

    /** A part of an arc goes round less than this, rad. */
    private static final double FINE = 0.2;

    private static final int FEWEST = 8;

    /** Distance of a place from the arc's axis, mm. */
    private double radius(Vector place) {
        return Math.hypot(place.x() - centreX, place.y() - centreY);
    }

    private double firstRadius() {
        return radius(from.place());
    }

    private double meanRadius() {
        return (firstRadius() + radius(to)) / 2;
    }

    /** By how much the two ends differ in their distance from the centre, mm. */
    public double mismatch() {
        return Math.abs(radius(to) - firstRadius());
    }

    @Override
    public double length() {
        return Math.hypot(
                meanRadius() * Math.toRadians(sweep), to.z() - from.place().z());
    }

    @Override
    public ToolPose at(double mm) {
        double part = mm / length();
        double angle = angle(part);
        double radius = firstRadius() + (radius(to) - firstRadius()) * part;
        double z = from.place().z() + (to.z() - from.place().z()) * part;
        Vector place = new Vector(centreX + radius * Math.cos(angle), centreY + radius * Math.sin(angle), z);
        return new ToolPose(place, from.yaw() + turn * part, from.pitch(), from.roll());
    }

    private double angle(double part) {
        double first = Math.atan2(from.place().y() - centreY, from.place().x() - centreX);
        return first + Math.toRadians(sweep) * part;
    }

    @Override
    public Vector direction(double mm) {
        double angle = angle(mm / length());
        double round = meanRadius() * Math.toRadians(sweep) / length();
        return new Vector(
                -round * Math.sin(angle),
                round * Math.cos(angle),
                (to.z() - from.place().z()) / length());
    }

    @Override
    public double curvature() {
        return 1 / Math.min(firstRadius(), radius(to));
    }

    @Override
    public int parts() {
        return (int) Math.max(FEWEST, Math.ceil(Math.abs(Math.toRadians(sweep)) / FINE));
    }
}
