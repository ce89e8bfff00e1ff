package org.standclear.signoff;

/**
 * One thing that stands in the way of a release.
 *
 * @param code stable, for tests and the record
 * @param says what is the matter
 * @param mend who can mend it, by name where known, and how
 */
public record Obstacle(String code, String says, String mend) {

    /** Both sentences, for a place that has one line. */
    public String line() {
        return mend.isEmpty() ? says : says + " " + mend;
    }
}
