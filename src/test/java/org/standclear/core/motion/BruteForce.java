package org.standclear.core.motion;

import java.util.function.DoubleUnaryOperator;
import org.standclear.core.geometry.Vector;

/**
 * Kinematics written a second time, as plainly as can be, and speeds found by differences between thousands of
 * instants. Shares nothing with the code it is held against but the definition of the arms.
 */
final class BruteForce {

    static final int INSTANTS = 2000;

    /** Each look closer at a peak takes so many instants in the place of two. */
    private static final int CLOSER = 40;

    /** Every hump from this part of the highest one is looked at more closely. */
    private static final double WORTH_A_LOOK = 0.5;

    /** A peak that changes by no more than this part of it when looked at 20 times closer has converged. */
    private static final double CONVERGED = 2e-5;

    /** Half the way, of 1, over which a difference is taken. */
    private static final double STEP = 1e-9;

    private BruteForce() {}

    /** Place and yaw (deg) of the tool point. */
    interface Pose {
        double[] at(double[] axes);
    }

    static Pose scara(double l1, double l2, Vector offset) {
        return q -> {
            double a = Math.PI / 180 * q[0];
            double b = Math.PI / 180 * (q[0] + q[1]);
            double yaw = q[0] + q[1] + q[3];
            double c = Math.PI / 180 * yaw;
            return new double[] {
                l1 * Math.cos(a) + l2 * Math.cos(b) + offset.x() * Math.cos(c) - offset.y() * Math.sin(c),
                l1 * Math.sin(a) + l2 * Math.sin(b) + offset.x() * Math.sin(c) + offset.y() * Math.cos(c),
                q[2] + offset.z(),
                yaw
            };
        };
    }

    static Pose gantry(Vector offset) {
        return q -> {
            double c = Math.PI / 180 * q[3];
            return new double[] {
                q[0] + offset.x() * Math.cos(c) - offset.y() * Math.sin(c),
                q[1] + offset.x() * Math.sin(c) + offset.y() * Math.cos(c),
                q[2] + offset.z(),
                q[3]
            };
        };
    }

    /** How far along a unit way a move is, by the text-book formula of its trapezoid or triangle. */
    static double part(double t, double v, double a) {
        if (v * v >= a) {
            double half = 1 / Math.sqrt(a);
            return t < half ? a * t * t / 2 : 1 - a * (2 * half - t) * (2 * half - t) / 2;
        }
        double ramp = v / a;
        double total = 1 / v + ramp;
        if (t < ramp) {
            return a * t * t / 2;
        }
        return t > total - ramp ? 1 - a * (total - t) * (total - t) / 2 : v * (t - ramp / 2);
    }

    static double duration(double v, double a) {
        return v * v >= a ? 2 / Math.sqrt(a) : 1 / v + v / a;
    }

    /** Peaks of the tool point, the overhang bound, the elbow and each axis. */
    record Found(double tool, double overhang, double elbow, double[] axes) {}

    /** The axis values at a part of the way. */
    interface Way {
        double[] at(double part);
    }

    static Found peaks(Way way, Pose pose, double v, double a, double overhang, double elbowLink) {
        return peaks(way, pose, v, a, overhang, elbowLink, INSTANTS);
    }

    /** How far along a unit way a move goes each second at an instant. */
    private static double pace(double t, double v, double a) {
        return Math.max(0, Math.min(v, a * Math.min(t, duration(v, a) - t)));
    }

    /**
     * The greatest speed of an axis, found by looking again and again more closely at every hump until nothing new is
     * seen: what races past a singular place lasts less than any fixed number of instants shows. The speed at an instant
     * is a difference over a far shorter way than the distance to the next instant.
     */
    static double converged(Way way, double v, double a, int axis) {
        DoubleUnaryOperator speed = t -> {
            double place = part(t, v, a);
            double change = way.at(place + STEP)[axis] - way.at(place - STEP)[axis];
            return Math.abs(change) / (2 * STEP) * pace(t, v, a);
        };
        return greatest(speed, 0, duration(v, a), INSTANTS, 0);
    }

    private static double greatest(DoubleUnaryOperator speed, double from, double to, int instants, double seen) {
        double dt = (to - from) / instants;
        double[] speeds = new double[instants + 1];
        double most = 0;
        for (int i = 0; i <= instants; i++) {
            speeds[i] = speed.applyAsDouble(from + i * dt);
            most = Math.max(most, speeds[i]);
        }
        if (Math.abs(most - seen) <= CONVERGED * most) {
            return most;
        }
        double best = most;
        for (int i = 0; i <= instants; i++) {
            double before = i == 0 ? 0 : speeds[i - 1];
            double after = i == instants ? 0 : speeds[i + 1];
            if (speeds[i] >= before && speeds[i] >= after && speeds[i] >= WORTH_A_LOOK * most) {
                double left = Math.max(from, from + (i - 1) * dt);
                double right = Math.min(to, from + (i + 1) * dt);
                best = Math.max(best, greatest(speed, left, right, CLOSER, speeds[i]));
            }
        }
        return best;
    }

    static Found peaks(Way way, Pose pose, double v, double a, double overhang, double elbowLink, int instants) {
        double total = duration(v, a);
        double dt = total / instants;
        double tool = 0;
        double wide = 0;
        double elbow = 0;
        double[] axes = new double[4];
        double[] before = way.at(0);
        double[] poseBefore = pose.at(before);
        for (int i = 1; i <= instants; i++) {
            double[] now = way.at(part(i * dt, v, a));
            double[] poseNow = pose.at(now);
            double speed = Math.sqrt(square(poseNow[0] - poseBefore[0])
                            + square(poseNow[1] - poseBefore[1])
                            + square(poseNow[2] - poseBefore[2]))
                    / dt;
            tool = Math.max(tool, speed);
            wide = Math.max(wide, speed + Math.PI / 180 * Math.abs(poseNow[3] - poseBefore[3]) / dt * overhang);
            elbow = Math.max(elbow, elbowLink * Math.PI / 180 * Math.abs(now[0] - before[0]) / dt);
            for (int k = 0; k < 4; k++) {
                axes[k] = Math.max(axes[k], Math.abs(now[k] - before[k]) / dt);
            }
            before = now;
            poseBefore = poseNow;
        }
        return new Found(tool, wide, elbow, axes);
    }

    private static double square(double value) {
        return value * value;
    }

    /** Axis values of a scara for a pose, by the law of cosines, on the turn nearest to values before. */
    static double[] solved(double l1, double l2, Vector offset, double[] pose, double side, double[] before) {
        double c = Math.PI / 180 * pose[3];
        double x = pose[0] - offset.x() * Math.cos(c) + offset.y() * Math.sin(c);
        double y = pose[1] - offset.x() * Math.sin(c) - offset.y() * Math.cos(c);
        double cos = (x * x + y * y - l1 * l1 - l2 * l2) / (2 * l1 * l2);
        double q2 = side * Math.acos(Math.max(-1, Math.min(1, cos)));
        double q1 = Math.atan2(y, x) - Math.atan2(l2 * Math.sin(q2), l1 + l2 * Math.cos(q2));
        double shoulder = near(180 / Math.PI * q1, before[0]);
        double elbow = 180 / Math.PI * q2;
        return new double[] {shoulder, elbow, pose[2] - offset.z(), pose[3] - shoulder - elbow};
    }

    private static double near(double degrees, double other) {
        double best = degrees;
        for (int k = -3; k <= 3; k++) {
            if (Math.abs(degrees + 360 * k - other) < Math.abs(best - other)) {
                best = degrees + 360 * k;
            }
        }
        return best;
    }
}
