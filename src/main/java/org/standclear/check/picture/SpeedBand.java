package org.standclear.check.picture;

/** How a stretch of path is drawn: the faster, the heavier the line, so that it reads without colour. */
public enum SpeedBand {
    UNKNOWN("way-unknown", "speed not known"),
    SLOW("way-slow", "up to a third of the limit"),
    MEDIUM("way-medium", "up to two thirds"),
    NEAR("way-near", "up to the limit"),
    OVER("way-over", "above the limit");

    private static final double THIRD = 1.0 / 3;

    private final String look;
    private final String words;

    SpeedBand(String look, String words) {
        this.look = look;
        this.words = words;
    }

    /** The class in the style sheet. */
    public String look() {
        return look;
    }

    /** As the key beside the drawing says it. */
    public String words() {
        return words;
    }

    /** The band of a speed under a limit, mm/s; a speed that is no number is above it. */
    static SpeedBand of(double speed, double limit) {
        if (speed <= limit * THIRD) {
            return SLOW;
        }
        if (speed <= 2 * limit * THIRD) {
            return MEDIUM;
        }
        return speed <= limit * (1 + 1e-9) ? NEAR : OVER;
    }

    /** The faster of the two; what is not known counts least. */
    SpeedBand orFaster(SpeedBand other) {
        return other.compareTo(this) > 0 ? other : this;
    }
}
