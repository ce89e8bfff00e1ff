package org.standclear.report;

import java.util.List;

/**
 * How the bench lists of a week were signed, of all people together: to ask about, never to score anybody.
 *
 * @param seconds from the first to the last signature of each full list, shortest first
 * @param sameAsBefore full lists that read the same values as the one before on the same cell
 * @param refused lists that ended without a release because two answers differed
 * @param disagreements answers that were read again
 */
public record SignoffQuality(List<Long> seconds, int sameAsBefore, int refused, int disagreements) {

    public SignoffQuality {
        seconds = List.copyOf(seconds);
    }

    /** Full lists that were signed by three people. */
    public int lists() {
        return seconds.size();
    }

    /** The middle one, of an even number the mean of the middle two; 0 when there is none. */
    public double medianSeconds() {
        int count = seconds.size();
        return count == 0 ? 0 : (seconds.get((count - 1) / 2) + seconds.get(count / 2)) / 2.0;
    }
}
