package org.standclear.core.motion;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.GantryArm;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.arm.ToolLine;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

/** Peaks of thousands of random moves against brute force (grade C: computed a second time). */
class DenseSamplingTests {

    private static final long SEED = 20261125L;
    private static final int MOVES = Integer.getInteger("dense.moves", 200);

    /** Brute force itself is good to about this: it takes differences between instants. */
    private static final double CLOSE = 0.002;

    /** What the peaks have to be good to, beside brute force that converges. */
    private static final double PRECISE = 0.001;

    private final Random random = new Random(SEED);

    DenseSamplingTests() {
        System.out.println("DenseSamplingTests: seed " + SEED);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private List<Axis> axes(boolean rotary) {
        List<Axis> axes = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            boolean turns = rotary ? i != 2 : i == 3;
            axes.add(new Axis("axis" + i, turns, new Interval(-2000, 2000), between(100, 900), between(500, 9000)));
        }
        return axes;
    }

    private Vector offset() {
        return random.nextBoolean()
                ? new Vector(0, 0, -60)
                : new Vector(between(-90, 90), between(-90, 90), between(-120, 0));
    }

    @Test
    void findsThePeaksOfScaraJointMoves() {
        for (int i = 0; i < MOVES; i++) {
            double l1 = between(100, 400);
            double l2 = between(100, 400);
            Vector offset = offset();
            AxisValues from =
                    AxisValues.of(between(-170, 170), between(-160, 160), between(0, 200), between(-180, 180));
            AxisValues to = AxisValues.of(between(-170, 170), between(-160, 160), between(0, 200), between(-180, 180));
            compare(new ScaraArm(l1, l2, axes(true)), BruteForce.scara(l1, l2, offset), offset, l1, from, to);
        }
    }

    @Test
    void findsThePeaksOfGantryJointMoves() {
        for (int i = 0; i < MOVES; i++) {
            Vector offset = offset();
            AxisValues from = AxisValues.of(between(0, 600), between(0, 400), between(0, 200), between(-180, 180));
            AxisValues to = AxisValues.of(between(0, 600), between(0, 400), between(0, 200), between(-180, 180));
            compare(new GantryArm(axes(false)), BruteForce.gantry(offset), offset, 0, from, to);
        }
    }

    private void compare(
            Arm arm, BruteForce.Pose pose, Vector offset, double elbowLink, AxisValues from, AxisValues to) {
        double overhang = between(0, 80);
        double ceiling = random.nextInt(4) == 0 ? Double.POSITIVE_INFINITY : between(20, 600);
        JointPath path = new JointPath(arm, offset, from, to.minus(from));
        MoveMotion motion = new JointMotion(path, new MoveConditions(between(0.05, 1), ceiling, overhang))
                .at(between(5, 100), between(5, 100));
        Peaks peaks = requireNonNull(motion.peaks());
        Profile full = requireNonNull(requireNonNull(motion.trace()).fullPower());
        Profile held = requireNonNull(motion.trace().held());
        BruteForce.Way way = part -> values(from.plus(to.minus(from), part));
        var inFull = BruteForce.peaks(way, pose, full.cruise(), full.acceleration(), overhang, elbowLink);
        var inHeld = BruteForce.peaks(way, pose, held.cruise(), held.acceleration(), overhang, elbowLink);
        close("full", peaks.fullPowerTool(), inFull.tool());
        close("held", peaks.heldTool(), inHeld.tool());
        close("overhang", peaks.heldOverhang(), inHeld.overhang());
        close("elbow", peaks.heldElbow(), inHeld.elbow());
        close("time", requireNonNull(motion.durationS()), BruteForce.duration(held.cruise(), held.acceleration()));
        assertThat(peaks.heldTool()).isLessThanOrEqualTo(ceiling);
        if (inFull.tool() > ceiling * 1.005) {
            // the hold takes away no more than it must: a little faster would be too fast
            var faster = BruteForce.peaks(way, pose, held.cruise() * 1.01, held.acceleration(), overhang, elbowLink);
            assertThat(faster.tool()).isGreaterThan(ceiling * 1.002);
        }
    }

    private static double[] values(AxisValues axes) {
        return new double[] {axes.get(0), axes.get(1), axes.get(2), axes.get(3)};
    }

    private static void close(String what, double found, double brute) {
        assertThat(found).as(what).isCloseTo(brute, within(CLOSE * brute + 0.02));
    }

    @Test
    void findsThePeaksOfScaraStraightMoves() {
        int compared = 0;
        // brute force that converges takes its time
        while (compared < MOVES / 8) {
            double l1 = between(100, 400);
            double l2 = between(100, 400);
            Vector offset = offset();
            double side = random.nextBoolean() ? 1 : -1;
            BruteForce.Pose pose = BruteForce.scara(l1, l2, offset);
            double[] from = {between(-170, 170), side * between(3, 170), between(0, 200), between(-180, 180)};
            double[] to = {between(-170, 170), side * between(3, 170), between(0, 200), between(-180, 180)};
            compared += compareLine(l1, l2, offset, side, from, pose.at(from), pose.at(to)) ? 1 : 0;
        }
    }

    private boolean compareLine(
            double l1, double l2, Vector offset, double side, double[] from, double[] start, double[] end) {
        double turn = Angles.wrapped(end[3] - start[3]);
        ToolLine line = new ToolLine(
                new ToolPose(new Vector(start[0], start[1], start[2]), start[3]),
                new Vector(end[0], end[1], end[2]),
                turn);
        double nearest = Double.POSITIVE_INFINITY;
        double farthest = 0;
        for (int i = 0; i <= 2000; i++) {
            double radius = flangeRadius(line.at(line.length() * i / 2000), offset);
            nearest = Math.min(nearest, radius);
            farthest = Math.max(farthest, radius);
        }
        Arm arm = new ScaraArm(l1, l2, axes(true));
        AxisValues axes = AxisValues.of(from);
        LineFollowing following = arm.follow(line, axes, side > 0 ? Elbow.RIGHT : Elbow.LEFT, offset);
        boolean inside = nearest > Math.abs(l1 - l2) && farthest < l1 + l2;
        assertThat(following.leavesReach().isEmpty()).isEqualTo(inside);
        if (!inside) {
            return false;
        }
        double speed = between(20, 900);
        double acceleration = between(100, 4000);
        AxisTrack track = new AxisTrack(arm, following, line, axes);
        MoveConditions conditions = new MoveConditions(1, Double.POSITIVE_INFINITY, 40);
        Peaks peaks = requireNonNull(new StraightMotion(arm, line, conditions, speed, acceleration)
                .motion(track)
                .peaks());
        double[][] last = {from};
        BruteForce.Way way = part -> {
            double[] at = {
                start[0] + (end[0] - start[0]) * part,
                start[1] + (end[1] - start[1]) * part,
                start[2] + (end[2] - start[2]) * part,
                start[3] + turn * part
            };
            last[0] = BruteForce.solved(l1, l2, offset, at, side, last[0]);
            return last[0];
        };
        double d = line.length();
        BruteForce.Pose pose = BruteForce.scara(l1, l2, offset);
        var brute = BruteForce.peaks(way, pose, speed / d, acceleration / d, 40, l1);
        Profile profile = new Profile(d, speed, acceleration);
        for (int axis = 0; axis < 4; axis++) {
            assertThat(track.end().get(axis)).isCloseTo(last[0][axis], within(1e-4));
        }
        assertThat(peaks.heldTool()).isCloseTo(brute.tool(), within(CLOSE * brute.tool() + 0.02));
        assertThat(peaks.heldOverhang()).isCloseTo(brute.overhang(), within(CLOSE * brute.overhang() + 0.02));
        for (int axis = 0; axis < 4; axis++) {
            double converged = BruteForce.converged(way, speed / d, acceleration / d, axis);
            precise("axis " + axis, track.peak(axis, profile), converged);
            if (axis == 0) {
                precise("elbow", peaks.heldElbow(), Math.toRadians(l1) * converged);
            }
        }
        return true;
    }

    private static void precise(String what, double found, double brute) {
        assertThat(found).as(what).isCloseTo(brute, within(PRECISE * brute + 1e-4));
    }

    private static double flangeRadius(ToolPose pose, Vector offset) {
        double c = Math.toRadians(pose.yaw());
        double x = pose.place().x() - offset.x() * Math.cos(c) + offset.y() * Math.sin(c);
        double y = pose.place().y() - offset.x() * Math.sin(c) - offset.y() * Math.cos(c);
        return Math.hypot(x, y);
    }
}
