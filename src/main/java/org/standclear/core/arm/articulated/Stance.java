package org.standclear.core.arm.articulated;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Posture;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Tolerance;

/**
 * Three numbers that tell the posture of six axes by their signs; each is 0 where two postures meet.
 *
 * @param shoulder how far the wrist lies before axis 1, mm
 * @param bend the sine of the elbow's angle, above 0 with the elbow up in front or down behind
 * @param wrist the sine of axis 5
 */
record Stance(double shoulder, double bend, double wrist) {

    /** An angle (rad) this small makes no difference to where the arm stands. */
    private static final double NO_ANGLE = 1e-7;

    static Stance of(List<DhRow> rows, AxisValues at) {
        LinkFrames frames = new LinkFrames(rows, at);
        double q1 = Math.toRadians(at.get(0) + rows.get(0).theta());
        Vector wristPlace = frames.origin(4);
        double out = Math.cos(q1) * wristPlace.x() + Math.sin(q1) * wristPlace.y();
        double angle = Math.toRadians(at.get(2) + rows.get(2).theta()) + forearmLead(rows);
        double up = -sign(rows.get(0).sin())
                * sign(rows.get(1).a())
                * sign(rows.get(1).cos())
                * Math.sin(angle);
        double q5 = Math.sin(Math.toRadians(at.get(4) + rows.get(4).theta()));
        return new Stance(out, up, q5);
    }

    /** The angle of the forearm in the frame of axis 3, from elbow to wrist, rad. */
    static double forearmLead(List<DhRow> rows) {
        DhRow forearm = rows.get(2);
        double across = -rows.get(3).d() * forearm.sin();
        return across == 0 && forearm.a() == 0 ? 0 : Math.atan2(across, forearm.a());
    }

    static double sign(double value) {
        return value < 0 ? -1 : 1;
    }

    Posture posture() {
        Posture.Shoulder side = shoulder >= 0 ? Posture.Shoulder.FRONT : Posture.Shoulder.BACK;
        return new Posture(
                side,
                bend * side.sign() >= 0 ? Posture.Bend.UP : Posture.Bend.DOWN,
                wrist >= 0 ? Posture.Wrist.PLAIN : Posture.Wrist.TURNED);
    }

    /** The part of a posture that another one leaves open here, taken from that other one; null when they differ. */
    @Nullable
    Posture agreed(Posture own, Posture other) {
        boolean anyShoulder = Math.abs(shoulder) <= Tolerance.LENGTH;
        boolean anyBend = Math.abs(bend) <= NO_ANGLE;
        boolean anyWrist = Math.abs(wrist) <= NO_ANGLE;
        if (!anyShoulder && own.shoulder() != other.shoulder()
                || !anyBend && own.bend() != other.bend()
                || !anyWrist && own.wrist() != other.wrist()) {
            return null;
        }
        return other;
    }
}
