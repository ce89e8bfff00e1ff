package org.standclear.core.geometry;

import org.standclear.core.quantity.Interval;

/** A box along the axes of the base frame, mm. */
public record Box(Interval x, Interval y, Interval z) {

    /** The distance of a place from the box; below 0 inside it, by the distance to the nearest face. */
    public double distance(Vector place) {
        double dx = beyond(x, place.x());
        double dy = beyond(y, place.y());
        double dz = beyond(z, place.z());
        if (dx <= 0 && dy <= 0 && dz <= 0) {
            return Math.max(dx, Math.max(dy, dz));
        }
        double ox = Math.max(dx, 0);
        double oy = Math.max(dy, 0);
        double oz = Math.max(dz, 0);
        return Math.sqrt(ox * ox + oy * oy + oz * oz);
    }

    /** How far a coordinate lies beyond the nearer end; below 0 between the ends. */
    private static double beyond(Interval side, double value) {
        return Math.max(side.min() - value, value - side.max());
    }

    /** How far the place lies outside the box along its worst axis; below 0 when inside. */
    public double excess(Vector place) {
        return Math.max(beyond(x, place.x()), Math.max(beyond(y, place.y()), beyond(z, place.z())));
    }
}
