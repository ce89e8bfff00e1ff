package org.standclear.core.limits;

import org.jspecify.annotations.Nullable;

/** The limits of a course; null where it sets none. The smaller of the cell's and the course's counts. */
public record CourseLimits(
        @Nullable Double overridePercent, @Nullable Double toolSpeedMmS) {

    /** A course without limits of its own. */
    public static final CourseLimits NONE = new CourseLimits(null, null);

    /** What counts for a course when its instructor sets nothing else. */
    public static final CourseLimits USUAL = new CourseLimits(50.0, null);

    public CourseLimits {
        if (overridePercent != null && !(overridePercent > 0 && overridePercent <= 100)) {
            throw new IllegalArgumentException("an override is above 0 % and at most 100 %");
        }
        if (toolSpeedMmS != null && !(toolSpeedMmS > 0)) {
            throw new IllegalArgumentException("a speed is above 0 mm/s");
        }
    }
}
