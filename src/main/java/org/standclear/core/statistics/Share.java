package org.standclear.core.statistics;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.standclear.core.quantity.Interval;

/**
 * So many of so many.
 *
 * @param part how many it was true of
 * @param whole how many were looked at, at least 1
 */
public record Share(int part, int whole) {

    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    public Share {
        if (!(part >= 0 && whole >= 1 && part <= whole)) {
            throw new IllegalArgumentException("a share is 0 to n of n, not " + part + " of " + whole);
        }
    }

    /** The share as a number from 0 to 1. */
    public double value() {
        return (double) part / whole;
    }

    /**
     * The score interval of the true share: E. B. Wilson, JASA 22 (1927). Does not leave 0 to 1, and holds for shares of 0
     * and 1 too.
     */
    public Interval limits(Confidence confidence) {
        double z = STANDARD.inverseSurvivalProbability(confidence.tail());
        double n = whole;
        double centre = value() + z * z / (2 * n);
        double spread = z * Math.sqrt(value() * (1 - value()) / n + z * z / (4 * n * n));
        double scale = 1 + z * z / n;
        // at 0 and at n of n the limit is 0 or 1 by algebra; rounding would leave a trace beside it
        double lower = part == 0 ? 0 : (centre - spread) / scale;
        double upper = part == whole ? 1 : (centre + spread) / scale;
        return new Interval(lower, upper);
    }

    /**
     * The exact one-sided upper limit of the true share (C. J. Clopper and E. S. Pearson, Biometrika 26, 1934). After none
     * of n it is close to 3/n at 95 %: the rule of three.
     */
    public double upperLimit(Confidence confidence) {
        return part == whole
                ? 1
                : BetaDistribution.of(part + 1.0, (double) whole - part)
                        .inverseSurvivalProbability(1 - confidence.level());
    }
}
