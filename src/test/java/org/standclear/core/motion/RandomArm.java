package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.GantryArm;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.arm.articulated.ArticulatedArm;
import org.standclear.core.arm.articulated.SixAxes;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

/** An arm drawn at random with its tool, once as the check knows it and once as a plain chain. */
record RandomArm(String kind, Arm arm, PlainChain chain, Vector offset) {

    private static final Interval ANYWHERE = new Interval(-1e6, 1e6);
    private static final int TRIES = 40;
    private static final double NEAREST = 1e-5;

    static RandomArm scara(Random random) {
        double l1 = between(random, 100, 400);
        // two equal links reach axis 1 itself
        double l2 = random.nextInt(3) == 0 ? l1 : between(random, 100, 400);
        Vector offset = offset(random);
        Arm arm = new ScaraArm(l1, l2, axes(random, true, true, false, true));
        return new RandomArm("scara", arm, PlainChain.scara(l1, l2, offset), offset);
    }

    static RandomArm gantry(Random random) {
        Vector offset = offset(random);
        Arm arm = new GantryArm(axes(random, false, false, false, true));
        return new RandomArm("gantry", arm, PlainChain.gantry(offset), offset);
    }

    /** Six axes; the wrist axes meet in one point, or miss each other by a few centimetres. */
    static RandomArm sixAxes(Random random, boolean meet) {
        double[] table = {
            between(random, -20, 150),
            quarter(random),
            between(random, 0, 400),
            between(random, 200, 450),
            random.nextBoolean() ? 0 : 180,
            between(random, -60, 60),
            between(random, -60, 110),
            quarter(random),
            between(random, -150, 150),
            meet ? 0 : between(random, -40, 40),
            quarter(random),
            between(random, 200, 450),
            0,
            quarter(random),
            meet ? 0 : between(random, 20, 90),
            meet ? 0 : between(random, 0, 30),
            meet ? 0 : between(random, -50, 50),
            between(random, 0, 120)
        };
        Vector offset = offset(random);
        ArticulatedArm plain = SixAxes.of(table);
        Arm arm = new ArticulatedArm(plain.rows(), axes(random, true, true, true, true, true, true));
        return new RandomArm(meet ? "six axes" : "six axes, numeric", arm, PlainChain.sixAxes(table, offset), offset);
    }

    private static double quarter(Random random) {
        return random.nextBoolean() ? 90 : -90;
    }

    static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Evenly in the number of digits. */
    static double decades(Random random, double low, double high) {
        return Math.exp(between(random, Math.log(low), Math.log(high)));
    }

    private static Vector offset(Random random) {
        return random.nextBoolean()
                ? new Vector(0, 0, -60)
                : new Vector(between(random, -90, 90), between(random, -90, 90), between(random, -120, 0));
    }

    private static List<Axis> axes(Random random, boolean... rotary) {
        List<Axis> axes = new ArrayList<>();
        for (boolean turns : rotary) {
            axes.add(new Axis(
                    "axis" + axes.size(), turns, ANYWHERE, between(random, 100, 900), between(random, 500, 9000)));
        }
        return axes;
    }

    /** Axis values anywhere. */
    double[] anywhere(Random random) {
        double[] q = new double[chain.axes()];
        for (int i = 0; i < q.length; i++) {
            q[i] = arm.axes().get(i).rotary() ? between(random, -200, 200) : between(random, 0, 400);
        }
        return q;
    }

    /**
     * Axis values beside a singular place: between two places with determinants of different sign there is one; it is
     * found by halving, and left by a little.
     */
    double[] nearSingular(Random random, double degrees) {
        for (int i = 0; i < TRIES; i++) {
            double[] from = anywhere(random);
            double[] to = anywhere(random);
            boolean sign = determinant(from) > 0;
            if (sign != determinant(to) > 0) {
                double low = 0;
                double high = 1;
                for (int round = 0; round < 60; round++) {
                    double middle = (low + high) / 2;
                    boolean same = determinant(between(from, to, middle)) > 0 == sign;
                    low = same ? middle : low;
                    high = same ? high : middle;
                }
                double length = 0;
                for (int k = 0; k < from.length; k++) {
                    length = Math.max(length, Math.abs(to[k] - from[k]));
                }
                return between(from, to, low + (random.nextBoolean() ? 1 : -1) * degrees / length);
            }
        }
        return anywhere(random);
    }

    /**
     * Whether axis rates can still be told there: nearer to a singular place than a hundred-thousandth of what the arm's
     * determinant is elsewhere, a stretched arm is a few millionths of a millionth of a metre from the border of its
     * reach, and what doubles leave of that distance is not good to a thousandth.
     */
    boolean canTell(double determinant, Random random) {
        double elsewhere = 0;
        for (int i = 0; i < TRIES; i++) {
            elsewhere += Math.abs(determinant(anywhere(random))) / TRIES;
        }
        return determinant > NEAREST * elsewhere;
    }

    private double determinant(double[] q) {
        return PlainEquations.determinant(chain.at(q).jacobian(100));
    }

    private static double[] between(double[] from, double[] to, double part) {
        double[] q = from.clone();
        for (int i = 0; i < q.length; i++) {
            q[i] += (to[i] - from[i]) * part;
        }
        return q;
    }

    /** The branch on which these axis values stand; null for an arm without branches. */
    @Nullable
    Branch branch(double[] q) {
        if (arm instanceof ArticulatedArm six) {
            return six.posture(AxisValues.of(q));
        }
        return arm.hasElbow() ? (q[1] > 0 ? Elbow.RIGHT : Elbow.LEFT) : null;
    }
}
