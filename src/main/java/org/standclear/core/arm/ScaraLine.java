package org.standclear.core.arm;

import java.util.OptionalDouble;
import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Tolerance;

/** A scara's axes along a straight line or an arc of the tool point, on one side of the elbow. */
final class ScaraLine implements LineFollowing {

    /** A line is looked at no finer than this, mm. */
    private static final double FINEST = 1e-7;

    private final TwoLinks links;
    private final ToolWay line;
    private final Elbow side;
    private final Vector offset;
    private final double yawOfAxes;
    private final double bend;

    ScaraLine(TwoLinks links, ToolWay line, AxisValues from, Elbow side, Vector offset) {
        this.links = links;
        this.line = line;
        this.side = side;
        this.offset = offset;
        this.yawOfAxes = from.get(0) + from.get(1) + from.get(3);
        this.bend = bend();
    }

    /** A bound on the second derivative of the squared radius of the flange along the way. */
    private double bend() {
        double turn = Math.abs(Math.toRadians(line.turnPerMm()));
        double reach = line.from().place().horizontal() + line.length() + offset.horizontal();
        double speed = 1 + offset.horizontal() * turn;
        return 2 * (speed * speed + reach * (line.curvature() + offset.horizontal() * turn * turn));
    }

    private Vector flange(double mm) {
        ToolPose pose = line.at(mm);
        return pose.place().minus(GantryArm.turned(offset, pose.yaw()));
    }

    private double radius(double mm) {
        return flange(mm).horizontal();
    }

    @Override
    public OptionalDouble leavesReach() {
        return beyond(0, radius(0), line.length(), radius(line.length()));
    }

    private boolean isBeyond(double radius) {
        return Tolerance.isOutside(radius - links.farthest()) || Tolerance.isOutside(links.nearest() - radius);
    }

    private OptionalDouble beyond(double from, double first, double to, double last) {
        if (isBeyond(first)) {
            return OptionalDouble.of(from);
        }
        // a function lies no further from its chord than an eighth of its bend times the squared width
        double sag = bend * (to - from) * (to - from) / 8;
        double most = Math.max(first, last);
        double least = Math.min(first, last);
        boolean inside = most * most + sag <= square(links.farthest() + Tolerance.LENGTH)
                && (links.nearest() <= Tolerance.LENGTH
                        || least * least - sag >= square(links.nearest() - Tolerance.LENGTH));
        if (inside) {
            return OptionalDouble.empty();
        }
        if (to - from < FINEST) {
            return isBeyond(last) ? OptionalDouble.of(to) : OptionalDouble.empty();
        }
        double middle = (from + to) / 2;
        double between = radius(middle);
        OptionalDouble early = beyond(from, first, middle, between);
        return early.isPresent() ? early : beyond(middle, between, to, last);
    }

    private static double square(double value) {
        return value * value;
    }

    @Override
    public AxisValues at(double mm, AxisValues near) {
        ToolPose pose = line.at(mm);
        Vector flange = pose.place().minus(GantryArm.turned(offset, pose.yaw()));
        TwoLinks.Pair angles = links.solve(flange.x(), flange.y(), side);
        double shoulder = Angles.nearest(Math.toDegrees(angles.q1()), near.get(0));
        double elbow = Math.toDegrees(angles.q2());
        double yaw = yawOfAxes + pose.yaw() - line.from().yaw();
        return AxisValues.of(shoulder, elbow, flange.z(), yaw - shoulder - elbow);
    }

    @Override
    public AxisValues ratesPerMm(double mm) {
        ToolPose pose = line.at(mm);
        Vector turned = GantryArm.turned(offset, pose.yaw());
        Vector flange = pose.place().minus(turned);
        Vector way = line.direction(mm);
        double turn = Math.toRadians(line.turnPerMm());
        TwoLinks.Pair rates =
                links.rates(flange.x(), flange.y(), way.x() + turned.y() * turn, way.y() - turned.x() * turn, side);
        double shoulder = Math.toDegrees(rates.q1());
        double elbow = Math.toDegrees(rates.q2());
        return AxisValues.of(shoulder, elbow, way.z(), line.turnPerMm() - shoulder - elbow);
    }
}
