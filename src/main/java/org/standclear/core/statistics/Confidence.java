package org.standclear.core.statistics;

/** How often an interval made in this way holds the true value, as a share between 0 and 1. */
public record Confidence(double level) {

    /** The level of every interval that the reports show. */
    public static final Confidence OF_REPORTS = new Confidence(0.95);

    public Confidence {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a confidence level lies between 0 and 1, not at " + level);
        }
    }

    /** The share left out on each side of a two-sided interval. */
    double tail() {
        return (1 - level) / 2;
    }
}
