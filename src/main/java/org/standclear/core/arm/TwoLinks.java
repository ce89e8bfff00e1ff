package org.standclear.core.arm;

/**
 * Two links in a plane, the planar part of a scara. Angles in rad: the first link's against x, the second's against
 * the first; lengths in mm. The closed form with atan2 and half-angles stays exact near the stretched arm, where a
 * cosine would lose its digits. Spong, Hutchinson, Vidyasagar, Robot Modeling and Control, two-link inverse kinematics.
 */
public record TwoLinks(double first, double second) {

    /**
     * Nearer than this to the border of reach the rates are those of this distance, mm: there the distance has lost its
     * digits. At this distance rounding is a ten-thousandth of it.
     */
    private static final double NEAREST = 1e-9;

    /** Axis angles, or their rates. */
    public record Pair(double q1, double q2) {}

    public double farthest() {
        return first + second;
    }

    public double nearest() {
        return Math.abs(first - second);
    }

    /** The angles that bring the tip there; a place beyond the border counts as on it. */
    public Pair solve(double x, double y, Elbow side) {
        double r = Math.sqrt(x * x + y * y);
        double q2 = side.sign() * 2 * Math.atan2(Math.sqrt(Math.max(0, outer(r))), Math.sqrt(Math.max(0, inner(r))));
        double lead = Math.atan2(second * Math.sin(q2), first + second * Math.cos(q2));
        return new Pair(Math.atan2(y, x) - lead, q2);
    }

    /** How fast the angles change when the tip, there, goes with that velocity. */
    public Pair rates(double x, double y, double vx, double vy, Elbow side) {
        double r = Math.max(Math.sqrt(x * x + y * y), NEAREST);
        double inward = Math.max(inner(r), NEAREST * (r + nearest()));
        double outward = Math.max(outer(r), NEAREST * (r + farthest()));
        // sin of the elbow times the two lengths: half the product of the two roots
        double sine = side.sign() * Math.sqrt(inward * outward) / 2;
        double cosine = (r * r - first * first - second * second) / 2;
        double radial = (x * vx + y * vy) / r;
        double across = (x * vy - y * vx) / r;
        double q2 = -r * radial / sine;
        double q1 = across / r - (second * second + cosine) / (r * r) * q2;
        return new Pair(q1, q2);
    }

    private double outer(double r) {
        return (farthest() - r) * (farthest() + r);
    }

    private double inner(double r) {
        return (r - nearest()) * (r + nearest());
    }
}
