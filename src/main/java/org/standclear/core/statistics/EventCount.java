package org.standclear.core.statistics;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.standclear.core.quantity.Interval;

/**
 * How many events were seen. They are taken as a Poisson count: rare, and one does not bring the next.
 *
 * @param events as counted, from 0
 */
public record EventCount(int events) {

    public EventCount {
        if (events < 0) {
            throw new IllegalArgumentException("a count is 0 or more, not " + events);
        }
    }

    /**
     * The exact two-sided limits of the mean that the count was drawn from: F. Garwood, Biometrika 28 (1936), by the link
     * between Poisson sums and the chi-squared distribution. The lower limit of no event is 0.
     */
    public Interval limits(Confidence confidence) {
        double lower = events == 0
                ? 0
                : ChiSquaredDistribution.of(2.0 * events).inverseCumulativeProbability(confidence.tail()) / 2;
        double upper = ChiSquaredDistribution.of(2.0 * events + 2).inverseSurvivalProbability(confidence.tail()) / 2;
        return new Interval(lower, upper);
    }

    /**
     * The limits of the rate: events per {@code unit} of exposure.
     *
     * @param exposure what the events were counted over, for example starts or attended minutes; above 0
     * @param unit for example 1000 starts
     */
    public Interval rateLimits(double exposure, double unit, Confidence confidence) {
        if (!(exposure > 0 && unit > 0)) {
            throw new IllegalArgumentException("a rate needs an exposure and a unit above 0");
        }
        Interval limits = limits(confidence);
        return new Interval(limits.min() * unit / exposure, limits.max() * unit / exposure);
    }
}
