package org.standclear.core.arm;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Vector;

/** Three linear axes x, y, z that carry a turning one: flange = (q1, q2, q3), yaw = q4. */
public final class GantryArm implements Arm {

    private static final int YAW = 3;

    private final List<Axis> axes;

    /** An arm with the axes x, y, z and yaw. */
    public GantryArm(List<Axis> axes) {
        if (axes.size() != 4) {
            throw new IllegalArgumentException("a gantry has four axes");
        }
        this.axes = List.copyOf(axes);
    }

    @Override
    public String kind() {
        return "gantry";
    }

    @Override
    public String middle() {
        return "the frame's origin";
    }

    @Override
    public List<Axis> axes() {
        return axes;
    }

    @Override
    public boolean hasElbow() {
        return false;
    }

    @Override
    public boolean takes(@Nullable Branch branch) {
        return branch == null;
    }

    @Override
    public String needs() {
        return "names a side of the elbow; a gantry has none, leave elbow out";
    }

    @Override
    public ToolPose toolPose(AxisValues at, Vector offset) {
        Vector turned = turned(offset, at.get(YAW));
        return new ToolPose(
                new Vector(at.get(0) + turned.x(), at.get(1) + turned.y(), at.get(2) + turned.z()), at.get(YAW));
    }

    /** The offset turned by the yaw. */
    static Vector turned(Vector offset, double yawDegrees) {
        if (offset.x() == 0 && offset.y() == 0) {
            return offset;
        }
        double yaw = Math.toRadians(yawDegrees);
        double cos = Math.cos(yaw);
        double sin = Math.sin(yaw);
        return new Vector(offset.x() * cos - offset.y() * sin, offset.x() * sin + offset.y() * cos, offset.z());
    }

    @Override
    public double toolSpeed(AxisValues at, AxisValues rates, Vector offset) {
        Vector turned = turned(offset, at.get(YAW));
        double turn = turn(rates);
        double vx = rates.get(0) - turned.y() * Math.copySign(turn, rates.get(YAW));
        double vy = rates.get(1) + turned.x() * Math.copySign(turn, rates.get(YAW));
        return new Vector(vx, vy, rates.get(2)).length();
    }

    @Override
    public double toolSpeedBound(AxisValues rates, Vector offset) {
        return new Vector(rates.get(0), rates.get(1), rates.get(2)).length() + offset.horizontal() * turn(rates);
    }

    @Override
    public double turning(AxisValues rates, Vector offset) {
        return offset.horizontal() == 0 ? 0 : turn(rates);
    }

    private static double turn(AxisValues rates) {
        return Math.abs(Math.toRadians(rates.get(YAW)));
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
        return 0;
    }

    @Override
    public double linkEndSpeed(int end, AxisValues at, AxisValues rates) {
        throw new IndexOutOfBoundsException(end);
    }

    @Override
    public double linkEndRadius(int end, AxisValues at) {
        throw new IndexOutOfBoundsException(end);
    }

    @Override
    public List<Vector> outline(AxisValues at, Vector offset) {
        Vector flange = new Vector(at.get(0), at.get(1), at.get(2));
        Vector rail = new Vector(flange.x(), axes.get(1).range().min(), flange.z());
        return List.of(rail, flange, toolPose(at, offset).place());
    }

    @Override
    public double ownRadius() {
        return 0;
    }

    @Override
    public Solution solve(ToolPose target, @Nullable Branch branch, Vector offset, @Nullable AxisValues before) {
        Vector turned = turned(offset, target.yaw());
        Vector flange = target.place().minus(turned);
        double yaw = Turns.choose(target.yaw(), axes.get(YAW).range(), before == null ? 0 : before.get(YAW));
        AxisValues found = AxisValues.of(flange.x(), flange.y(), flange.z(), yaw);
        return new Solution.Found(found, faults(axes, found));
    }

    /** The axes that stand outside their range. */
    public static List<RangeFault> faults(List<Axis> axes, AxisValues at) {
        return IntStream.range(0, axes.size())
                .filter(i -> !axes.get(i).range().holds(at.get(i)))
                .mapToObj(i -> new RangeFault(axes.get(i), at.get(i)))
                .toList();
    }

    @Override
    public @Nullable Branch shared(Reached from, Reached to, Vector offset) {
        return null;
    }

    @Override
    public LineFollowing follow(ToolWay line, AxisValues from, @Nullable Branch branch, Vector offset) {
        return new LineFollowing() {
            @Override
            public OptionalDouble leavesReach() {
                return OptionalDouble.empty();
            }

            @Override
            public AxisValues at(double mm, AxisValues near) {
                ToolPose pose = line.at(mm);
                Vector flange = pose.place().minus(turned(offset, pose.yaw()));
                return AxisValues.of(
                        flange.x(),
                        flange.y(),
                        flange.z(),
                        from.get(YAW) + pose.yaw() - line.from().yaw());
            }

            @Override
            public AxisValues ratesPerMm(double mm) {
                Vector way = line.direction(mm);
                Vector turned = turned(offset, line.at(mm).yaw());
                double turn = Math.toRadians(line.turnPerMm());
                return AxisValues.of(
                        way.x() + turned.y() * turn, way.y() - turned.x() * turn, way.z(), line.turnPerMm());
            }
        };
    }
}
