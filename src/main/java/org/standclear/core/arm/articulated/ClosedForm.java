package org.standclear.core.arm.articulated;

import java.util.List;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.TwoLinks;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Tolerance;

/**
 * The inverse for an arm whose last three axes meet in one point, the wrist, and whose axes 2 and 3 are parallel and
 * square to axis 1: axis 1 turns the plane of the arm to the wrist, two links reach it in that plane, and the last three
 * axes turn the flange (Pieper's decoupling; Spong, Hutchinson, Vidyasagar, Robot Modeling and Control). Angles in rad
 * inside, deg at the door; lengths in mm. Exact but for rounding.
 */
final class ClosedForm {

    /** Sines and cosines this near to 0 or 1 are meant to be. */
    private static final double EXACT = 1e-12;

    /** With the sine of axis 5 below this, axes 4 and 6 turn about one line and only their sum is determined. */
    private static final double LINED_UP = 1e-9;

    private final List<DhRow> rows;
    private final TwoLinks links;
    private final double side;
    private final double elbowSense;
    private final double lead;
    private final double aside;
    private final Vector flangeToWrist;

    ClosedForm(List<DhRow> rows) {
        this.rows = rows;
        DhRow forearm = rows.get(2);
        double d4 = rows.get(3).d();
        this.links = new TwoLinks(Math.abs(rows.get(1).a()), Math.hypot(forearm.a(), d4 * forearm.sin()));
        this.side = rows.get(0).sin();
        this.elbowSense = rows.get(1).cos();
        this.lead = Stance.forearmLead(rows);
        this.aside = rows.get(1).d() + elbowSense * (forearm.d() + d4 * forearm.cos());
        DhRow last = rows.get(5);
        this.flangeToWrist = new Vector(-last.a(), -last.d() * last.sin(), -last.d() * last.cos());
    }

    /** Whether a table has this form. */
    static boolean fits(List<DhRow> rows) {
        DhRow fourth = rows.get(3);
        DhRow fifth = rows.get(4);
        boolean meet = fourth.a() == 0 && fifth.a() == 0 && fifth.d() == 0;
        double forearm = Math.hypot(rows.get(2).a(), fourth.d() * rows.get(2).sin());
        return meet
                && isOne(rows.get(0).sin())
                && isOne(rows.get(1).cos())
                && isOne(fourth.sin())
                && isOne(fifth.sin())
                && rows.get(1).a() != 0
                && forearm > Tolerance.LENGTH;
    }

    private static boolean isOne(double value) {
        return Math.abs(Math.abs(value) - 1) < EXACT;
    }

    /** How far the wrist is from what it can just reach. */
    record Reach(double toAxis, double aside, double fromShoulder, double nearest, double farthest) {

        /** How far inside the reach the wrist stands; below 0 outside, NaN nowhere. */
        double margin() {
            return Math.min(toAxis - aside, Math.min(farthest - fromShoulder, fromShoulder - nearest));
        }
    }

    /** Where the wrist stands when the flange stands there. */
    Vector wrist(Vector flange, Rotation turned) {
        return flange.plus(turned.times(flangeToWrist));
    }

    /** How far the shoulder stands out from axis 1, mm. */
    double shoulderOut() {
        return rows.get(0).a();
    }

    /** How far the wrist stands above the shoulder, mm. */
    double above(Vector wrist) {
        return wrist.z() - rows.get(0).d();
    }

    Reach reach(Vector wrist, Posture posture) {
        double out = out(wrist) * posture.shoulder().sign() - rows.get(0).a();
        double up = wrist.z() - rows.get(0).d();
        return new Reach(
                wrist.horizontal(),
                Math.abs(aside),
                Math.sqrt(out * out + up * up),
                Math.max(0, links.nearest()),
                links.farthest());
    }

    /** How far before axis 1 the wrist lies in the plane of the arm, either way. */
    private double out(Vector wrist) {
        double h = wrist.horizontal();
        return Math.sqrt(Math.max(0, (h - Math.abs(aside)) * (h + Math.abs(aside))));
    }

    /**
     * The axis values in deg, each on some turn; what is beyond the reach counts as on its border.
     *
     * @param near axis values to keep where the place leaves an axis open
     */
    double[] solve(Vector wrist, Rotation turned, Posture posture, double[] near) {
        double out = out(wrist) * posture.shoulder().sign();
        double[] q = new double[6];
        boolean onAxis = wrist.horizontal() <= Tolerance.LENGTH && Math.abs(aside) <= Tolerance.LENGTH;
        q[0] = onAxis
                ? Math.toRadians(near[0] + rows.get(0).theta())
                : Math.atan2(wrist.y(), wrist.x()) - Math.atan2(-side * aside, out);
        double x = out - rows.get(0).a();
        double y = side * (wrist.z() - rows.get(0).d());
        boolean isFolded = rows.get(1).a() < 0;
        // above the line in front, or below it behind, is a turn against the sense of the plane's normal
        double bend = -side * posture.shoulder().sign() * posture.bend().sign();
        TwoLinks.Pair pair = links.solve(x, y, bend < 0 ? Elbow.LEFT : Elbow.RIGHT);
        q[1] = pair.q1() - (isFolded ? Math.PI : 0);
        q[2] = elbowSense * (pair.q2() + (isFolded ? Math.PI : 0)) - lead;
        solveWrist(q, turned, posture.wrist().sign(), near);
        for (int i = 0; i < 6; i++) {
            q[i] = Math.toDegrees(q[i]) - rows.get(i).theta();
        }
        return q;
    }

    private void solveWrist(double[] q, Rotation turned, int sense, double[] near) {
        Rotation before = Rotation.NONE;
        for (int i = 0; i < 3; i++) {
            before = before.times(
                    rows.get(i).rotation(Math.toDegrees(q[i]) - rows.get(i).theta()));
        }
        DhRow last = rows.get(5);
        Rotation tip = new Rotation(1, 0, 0, 0, last.cos(), -last.sin(), 0, last.sin(), last.cos());
        Rotation left = before.inverse().times(turned).times(tip.inverse());
        double fourth = rows.get(3).sin();
        double fifth = rows.get(4).sin();
        double bent = Math.hypot(left.xz(), left.yz());
        q[3] = bent < LINED_UP
                ? Math.toRadians(near[3] + rows.get(3).theta())
                : Math.atan2(fifth * sense * left.yz(), fifth * sense * left.xz());
        q[4] = Math.atan2(sense * bent, -fourth * fifth * left.zz());
        Rotation upTo = rows.get(3)
                .rotation(Math.toDegrees(q[3]) - rows.get(3).theta())
                .times(rows.get(4).rotation(Math.toDegrees(q[4]) - rows.get(4).theta()));
        Rotation rest = upTo.inverse().times(left);
        q[5] = Math.atan2(rest.yx(), rest.xx());
    }
}
