package org.standclear.core.arm;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.Tolerance;

/**
 * Two links that turn in the plane and carry a lift and a wrist: flange x = L1 cos q1 + L2 cos(q1+q2), flange y = L1
 * sin q1 + L2 sin(q1+q2), flange z = q3, yaw = q1 + q2 + q4.
 */
public final class ScaraArm implements Arm {

    private static final int SHOULDER = 0;
    private static final int ELBOW = 1;
    private static final int LIFT = 2;
    private static final int WRIST = 3;

    private final TwoLinks links;
    private final List<Axis> axes;

    /** An arm with links of those lengths (mm) and the axes shoulder, elbow, lift and wrist. */
    public ScaraArm(double firstLink, double secondLink, List<Axis> axes) {
        if (!(firstLink > 0) || !(secondLink > 0) || axes.size() != 4) {
            throw new IllegalArgumentException("a scara has two links and four axes");
        }
        this.links = new TwoLinks(firstLink, secondLink);
        this.axes = List.copyOf(axes);
    }

    @Override
    public String kind() {
        return "scara";
    }

    @Override
    public List<Axis> axes() {
        return axes;
    }

    @Override
    public boolean hasElbow() {
        return true;
    }

    @Override
    public boolean takes(@Nullable Branch branch) {
        return branch instanceof Elbow;
    }

    @Override
    public String needs() {
        return "names no side of the elbow; write elbow: left or elbow: right";
    }

    /** Length from shoulder to elbow, mm. */
    public double firstLink() {
        return links.first();
    }

    /** Length from elbow to flange, mm. */
    public double secondLink() {
        return links.second();
    }

    /** The farthest that the flange gets from axis 1, mm. */
    public double farthest() {
        return links.farthest();
    }

    /** The nearest that the flange gets to axis 1, mm. */
    public double nearest() {
        return links.nearest();
    }

    @Override
    public ToolPose toolPose(AxisValues at, Vector offset) {
        double q1 = Math.toRadians(at.get(SHOULDER));
        double q12 = Math.toRadians(at.get(SHOULDER) + at.get(ELBOW));
        double yaw = at.get(SHOULDER) + at.get(ELBOW) + at.get(WRIST);
        Vector turned = GantryArm.turned(offset, yaw);
        double x = links.first() * Math.cos(q1) + links.second() * Math.cos(q12) + turned.x();
        double y = links.first() * Math.sin(q1) + links.second() * Math.sin(q12) + turned.y();
        return new ToolPose(new Vector(x, y, at.get(LIFT) + turned.z()), yaw);
    }

    @Override
    public double toolSpeed(AxisValues at, AxisValues rates, Vector offset) {
        double q1 = Math.toRadians(at.get(SHOULDER));
        double q12 = Math.toRadians(at.get(SHOULDER) + at.get(ELBOW));
        Vector turned = GantryArm.turned(offset, at.get(SHOULDER) + at.get(ELBOW) + at.get(WRIST));
        double first = links.first() * Math.toRadians(rates.get(SHOULDER));
        double second = links.second() * Math.toRadians(rates.get(SHOULDER) + rates.get(ELBOW));
        double turn = Math.toRadians(rates.get(SHOULDER) + rates.get(ELBOW) + rates.get(WRIST));
        double vx = -first * Math.sin(q1) - second * Math.sin(q12) - turned.y() * turn;
        double vy = first * Math.cos(q1) + second * Math.cos(q12) + turned.x() * turn;
        return new Vector(vx, vy, rates.get(LIFT)).length();
    }

    @Override
    public double toolSpeedBound(AxisValues rates, Vector offset) {
        double planar = links.first() * Math.abs(Math.toRadians(rates.get(SHOULDER)))
                + links.second() * Math.abs(Math.toRadians(rates.get(SHOULDER) + rates.get(ELBOW)))
                + offset.horizontal() * turn(rates);
        return planar + Math.abs(rates.get(LIFT));
    }

    @Override
    public double turning(AxisValues rates, Vector offset) {
        double links = Math.abs(Math.toRadians(rates.get(SHOULDER)))
                + Math.abs(Math.toRadians(rates.get(SHOULDER) + rates.get(ELBOW)));
        return offset.horizontal() == 0 ? links : links + turn(rates);
    }

    private static double turn(AxisValues rates) {
        return Math.abs(Math.toRadians(rates.get(SHOULDER) + rates.get(ELBOW) + rates.get(WRIST)));
    }

    @Override
    public boolean turnsEvenly() {
        return true;
    }

    @Override
    public double turnRate(AxisValues at, AxisValues rates) {
        return turn(rates);
    }

    @Override
    public int linkEnds() {
        return 1;
    }

    @Override
    public double linkEndSpeed(int end, AxisValues at, AxisValues rates) {
        return links.first() * Math.abs(Math.toRadians(rates.get(SHOULDER)));
    }

    @Override
    public double linkEndRadius(int end, AxisValues at) {
        return links.first();
    }

    @Override
    public List<Vector> outline(AxisValues at, Vector offset) {
        double q1 = Math.toRadians(at.get(SHOULDER));
        double q12 = Math.toRadians(at.get(SHOULDER) + at.get(ELBOW));
        double height = at.get(LIFT);
        Vector elbow = new Vector(links.first() * Math.cos(q1), links.first() * Math.sin(q1), height);
        Vector flange = new Vector(
                elbow.x() + links.second() * Math.cos(q12), elbow.y() + links.second() * Math.sin(q12), height);
        Vector tool = toolPose(at, offset).place();
        return List.of(new Vector(0, 0, height), elbow, flange, tool);
    }

    @Override
    public Optional<Interval> ring() {
        return Optional.of(new Interval(nearest(), farthest()));
    }

    @Override
    public double ownRadius() {
        return links.first();
    }

    @Override
    public Solution solve(ToolPose target, @Nullable Branch branch, Vector offset, @Nullable AxisValues before) {
        Elbow side = side(branch);
        Vector flange = target.place().minus(GantryArm.turned(offset, target.yaw()));
        double radius = flange.horizontal();
        if (Tolerance.isOutside(radius - links.farthest()) || Tolerance.isOutside(links.nearest() - radius)) {
            return new Solution.OutOfReach(radius, links.nearest(), links.farthest());
        }
        TwoLinks.Pair angles = links.solve(flange.x(), flange.y(), side);
        double shoulder = turn(SHOULDER, Math.toDegrees(angles.q1()), before);
        double elbow = Math.toDegrees(angles.q2());
        double wrist = turn(WRIST, target.yaw() - shoulder - elbow, before);
        AxisValues found = AxisValues.of(shoulder, elbow, flange.z(), wrist);
        return new Solution.Found(found, GantryArm.faults(axes, found));
    }

    private double turn(int axis, double degrees, @Nullable AxisValues before) {
        return Turns.choose(degrees, axes.get(axis).range(), before == null ? 0 : before.get(axis));
    }

    private static Elbow side(@Nullable Branch branch) {
        if (branch instanceof Elbow side) {
            return side;
        }
        throw new IllegalArgumentException("a scara needs the side of the elbow");
    }

    /** At full stretch both sides of the elbow are the same, so that the place belongs to either. */
    @Override
    public @Nullable Branch shared(Reached from, Reached to, Vector offset) {
        if (isStretched(from.pose(), offset)) {
            return to.branch();
        }
        return from.branch() == to.branch() || isStretched(to.pose(), offset) ? from.branch() : null;
    }

    private boolean isStretched(ToolPose at, Vector offset) {
        Vector flange = at.place().minus(GantryArm.turned(offset, at.yaw()));
        return !Tolerance.isOutside(links.farthest() - flange.horizontal());
    }

    @Override
    public LineFollowing follow(ToolWay line, AxisValues from, @Nullable Branch branch, Vector offset) {
        return new ScaraLine(links, line, from, side(branch), offset);
    }
}
