package org.standclear.check;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.people.Course;
import org.standclear.platform.digest.Sha256;

/**
 * The limits of courses that an answer is asked under, and whose they are where that is not the course that was named.
 *
 * @param overrideOf the code of the course that sets the override; null for the named course or the usual limits
 * @param toolSpeedOf the same for the tool speed
 */
record LimitsAsked(
        CourseLimits limits,
        @Nullable String overrideOf,
        @Nullable String toolSpeedOf) {

    private static final LimitsAsked USUAL = new LimitsAsked(CourseLimits.USUAL, null, null);

    /** Those of a course that the work is for. */
    static LimitsAsked of(Course named) {
        return new LimitsAsked(new CourseLimits(named.overridePercent(), named.toolSpeedMmS()), null, null);
    }

    /**
     * Those of work that is for no course: the strictest of all that the person takes, so that leaving the course out
     * gains nothing, and the usual ones.
     */
    static LimitsAsked strictest(List<Course> taken) {
        LimitsAsked strictest = USUAL;
        for (Course course : taken) {
            strictest = strictest.and(course);
        }
        return strictest;
    }

    private LimitsAsked and(Course course) {
        boolean override = isLess(course.overridePercent(), limits.overridePercent());
        boolean speed = isLess(course.toolSpeedMmS(), limits.toolSpeedMmS());
        return new LimitsAsked(
                new CourseLimits(
                        override ? Double.valueOf(course.overridePercent()) : limits.overridePercent(),
                        speed ? course.toolSpeedMmS() : limits.toolSpeedMmS()),
                override ? course.code() : overrideOf,
                speed ? course.code() : toolSpeedOf);
    }

    private static boolean isLess(@Nullable Double one, @Nullable Double other) {
        return one != null && (other == null || one < other);
    }

    /** The limits in a fixed form of at most 80 characters: equal ones of equal origin are one question. */
    String key() {
        String numbers = "override " + shown(limits.overridePercent()) + ", tool speed " + shown(limits.toolSpeedMmS());
        return overrideOf == null && toolSpeedOf == null
                ? numbers
                : numbers + " of " + Sha256.of(overrideOf + "/" + toolSpeedOf).substring(0, 16);
    }

    private static String shown(@Nullable Double limit) {
        return limit == null ? "none" : ShownNumber.plain(limit);
    }
}
