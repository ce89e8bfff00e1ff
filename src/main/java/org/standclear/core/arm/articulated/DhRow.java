package org.standclear.core.arm.articulated;

import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/**
 * One row of a standard Denavit-Hartenberg table: about z by the axis value and theta, along z by d, along x by a, about
 * x by alpha. Spong, Hutchinson, Vidyasagar, Robot Modeling and Control.
 *
 * @param a mm
 * @param alpha deg
 * @param d mm
 * @param theta what is added to the axis value, deg
 */
public record DhRow(double a, double alpha, double d, double theta) {

    /** The sine of alpha, exact for quarter turns. */
    double sin() {
        return quarters() ? Math.rint(Math.sin(Math.toRadians(alpha))) : Math.sin(Math.toRadians(alpha));
    }

    /** The cosine of alpha, exact for quarter turns. */
    double cos() {
        return quarters() ? Math.rint(Math.cos(Math.toRadians(alpha))) : Math.cos(Math.toRadians(alpha));
    }

    private boolean quarters() {
        return alpha % 90 == 0;
    }

    /** How far apart its two ends are, mm. */
    double length() {
        return Math.hypot(a, d);
    }

    /** How the next frame is turned against this one at an axis value. */
    Rotation rotation(double axisValue) {
        double turn = Math.toRadians(axisValue + theta);
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        double sa = sin();
        double ca = cos();
        return new Rotation(c, -s * ca, s * sa, s, c * ca, -c * sa, 0, sa, ca);
    }

    /** Where the next frame's origin is, seen in this frame, when it is turned so. */
    Vector step(Rotation turned) {
        return new Vector(a * turned.xx(), a * turned.yx(), d);
    }
}
