package org.standclear.platform.strip;

import org.jspecify.annotations.Nullable;

/**
 * A full hour on a strip.
 *
 * @param x its place in percent of the strip's width
 * @param hour the hour in two digits
 */
public record HourMark(String x, String hour) {

    private static final double EDGE = 1.5;
    private static final double COVERED = 2.5;

    /** How the digits stand at their place, so that the first and the last hour are not cut at the strip's ends. */
    public String anchor() {
        double place = percent(x);
        return place < EDGE ? "start" : place > 100 - EDGE ? "end" : "middle";
    }

    /** Whether the word for this moment stands where the digits would. */
    public boolean coveredBy(@Nullable String now) {
        return now != null && Math.abs(percent(now) - percent(x)) < COVERED;
    }

    private static double percent(String words) {
        return Double.parseDouble(words.substring(0, words.length() - 1));
    }
}
