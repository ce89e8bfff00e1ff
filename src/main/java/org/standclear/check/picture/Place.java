package org.standclear.check.picture;

/** A place on a drawing, in its own units, y growing downwards. */
record Place(double x, double y) {

    Place {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("a place on a drawing is finite");
        }
    }

    /** How far another one is. */
    double distance(Place other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
