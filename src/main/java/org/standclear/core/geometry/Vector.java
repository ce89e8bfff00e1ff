package org.standclear.core.geometry;

/** A place or a direction in the base frame; mm where it is a place. */
public record Vector(double x, double y, double z) {

    /** The difference. */
    public Vector minus(Vector other) {
        return new Vector(x - other.x, y - other.y, z - other.z);
    }

    /** The sum. */
    public Vector plus(Vector other) {
        return new Vector(x + other.x, y + other.y, z + other.z);
    }

    /** As long as so many of it. */
    public Vector times(double factor) {
        return new Vector(x * factor, y * factor, z * factor);
    }

    /** The cross product, right-handed. */
    public Vector cross(Vector other) {
        return new Vector(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    /** The place part of the way to another one: 0 here, 1 there. */
    public Vector towards(Vector other, double part) {
        return new Vector(x + (other.x - x) * part, y + (other.y - y) * part, z + (other.z - z) * part);
    }

    /** Its length. */
    public double length() {
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** The distance from the z axis. */
    public double horizontal() {
        return Math.sqrt(x * x + y * y);
    }
}
