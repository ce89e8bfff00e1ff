package org.standclear.core.motion;

/**
 * Speed along a path from rest to rest: an even ramp up, a cruise, the same ramp down; a triangle where the path is too
 * short to reach the cruise. The unit of length is that of the path (mm for a line, the whole move for a joint move);
 * times are in s. Spong, Hutchinson, Vidyasagar, Robot Modeling and Control, linear segments with parabolic blends.
 */
public record Profile(double length, double cruise, double acceleration) {

    /** The greatest speed that is reached. */
    public double peak() {
        return isTriangle() ? Math.sqrt(acceleration * length) : cruise;
    }

    private boolean isTriangle() {
        return cruise * cruise >= acceleration * length;
    }

    /** How long it takes, s. */
    public double duration() {
        return isTriangle() ? 2 * Math.sqrt(length / acceleration) : length / cruise + cruise / acceleration;
    }

    /** The length of one ramp. */
    public double ramp() {
        return isTriangle() ? length / 2 : cruise * cruise / (2 * acceleration);
    }

    /** The speed at a place of the path. */
    public double speedAt(double place) {
        double ramps = Math.sqrt(2 * acceleration * Math.max(0, Math.min(place, length - place)));
        return isTriangle() ? ramps : Math.min(cruise, ramps);
    }

    /** Where it is after so many seconds. */
    public double placeAfter(double seconds) {
        double t = Math.max(0, Math.min(seconds, duration()));
        double left = duration() - t;
        double rampTime = peak() / acceleration;
        if (t < rampTime) {
            return acceleration * t * t / 2;
        }
        return left < rampTime ? length - acceleration * left * left / 2 : ramp() + peak() * (t - rampTime);
    }

    /** The same ramps with another cruise. */
    Profile cruisingAt(double other) {
        return new Profile(length, other, acceleration);
    }
}
