package org.standclear.core.geometry;

/**
 * A rotation in space as a matrix: row by row, right-handed, columns are the turned axes x, y, z. Angles in deg.
 * Spong, Hutchinson, Vidyasagar, Robot Modeling and Control, rotations and their axis-angle form.
 */
public record Rotation(
        double xx, double xy, double xz, double yx, double yy, double yz, double zx, double zy, double zz) {

    /** Nothing is turned. */
    public static final Rotation NONE = new Rotation(1, 0, 0, 0, 1, 0, 0, 0, 1);

    /** A matrix whose antisymmetric part is below this is no turn or half a turn. */
    private static final double TINY = 1e-9;

    /** About x by the roll, then about the base's y by the pitch, then about its z by the yaw: Rz Ry Rx. */
    public static Rotation of(double yaw, double pitch, double roll) {
        double cy = Math.cos(Math.toRadians(yaw));
        double sy = Math.sin(Math.toRadians(yaw));
        double cp = Math.cos(Math.toRadians(pitch));
        double sp = Math.sin(Math.toRadians(pitch));
        double cr = Math.cos(Math.toRadians(roll));
        double sr = Math.sin(Math.toRadians(roll));
        return new Rotation(
                cy * cp,
                cy * sp * sr - sy * cr,
                cy * sp * cr + sy * sr,
                sy * cp,
                sy * sp * sr + cy * cr,
                sy * sp * cr - cy * sr,
                -sp,
                cp * sr,
                cp * cr);
    }

    /** About a direction of length 1. */
    public static Rotation about(Vector axis, double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        double t = 1 - c;
        double x = axis.x();
        double y = axis.y();
        double z = axis.z();
        return new Rotation(
                t * x * x + c,
                t * x * y - s * z,
                t * x * z + s * y,
                t * x * y + s * z,
                t * y * y + c,
                t * y * z - s * x,
                t * x * z - s * y,
                t * y * z + s * x,
                t * z * z + c);
    }

    /** This one after the other: the matrix product. */
    public Rotation times(Rotation o) {
        return new Rotation(
                xx * o.xx + xy * o.yx + xz * o.zx,
                xx * o.xy + xy * o.yy + xz * o.zy,
                xx * o.xz + xy * o.yz + xz * o.zz,
                yx * o.xx + yy * o.yx + yz * o.zx,
                yx * o.xy + yy * o.yy + yz * o.zy,
                yx * o.xz + yy * o.yz + yz * o.zz,
                zx * o.xx + zy * o.yx + zz * o.zx,
                zx * o.xy + zy * o.yy + zz * o.zy,
                zx * o.xz + zy * o.yz + zz * o.zz);
    }

    /** The rotation back. */
    public Rotation inverse() {
        return new Rotation(xx, yx, zx, xy, yy, zy, xz, yz, zz);
    }

    /** A vector turned. */
    public Vector times(Vector v) {
        return new Vector(
                xx * v.x() + xy * v.y() + xz * v.z(),
                yx * v.x() + yy * v.y() + yz * v.z(),
                zx * v.x() + zy * v.y() + zz * v.z());
    }

    /** Yaw, pitch and roll in (-180, 180]; with the pitch at 90 either way the yaw takes the roll's part too. */
    public Vector yawPitchRoll() {
        double level = Math.sqrt(xx * xx + yx * yx);
        double yaw = level > TINY ? Math.atan2(yx, xx) : Math.atan2(-xy, yy);
        double c = Math.cos(yaw);
        double s = Math.sin(yaw);
        // the roll of what is left when the yaw is taken off makes up for what rounding did to the yaw
        double roll = Math.atan2(-(c * yz - s * xz), c * yy - s * xy);
        return new Vector(Math.toDegrees(yaw), Math.toDegrees(Math.atan2(-zx, level)), Math.toDegrees(roll));
    }

    /** The axis times the angle in rad, the angle from 0 to pi: the shortest way to turn like this. */
    public Vector turn() {
        Vector twist = new Vector((zy - yz) / 2, (xz - zx) / 2, (yx - xy) / 2);
        double sine = twist.length();
        double cosine = (xx + yy + zz - 1) / 2;
        double angle = Math.atan2(sine, cosine);
        if (sine > TINY) {
            return twist.times(angle / sine);
        }
        return cosine > 0 ? twist : halfTurn(angle);
    }

    /** For half a turn the axis stands in the symmetric part: R = 2 n n' - 1. */
    private Vector halfTurn(double angle) {
        double x = (xx + 1) / 2;
        double y = (yy + 1) / 2;
        double z = (zz + 1) / 2;
        Vector axis;
        if (x >= y && x >= z) {
            axis = new Vector(x, (xy + yx) / 4, (xz + zx) / 4);
        } else {
            axis = y >= z ? new Vector((xy + yx) / 4, y, (yz + zy) / 4) : new Vector((xz + zx) / 4, (yz + zy) / 4, z);
        }
        return axis.times(angle / axis.length());
    }
}
