package org.standclear.core.statistics;

import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Two counts, each over its own exposure. Given their sum, the first is binomial when both have the same rate: the exact
 * conditional test (J. Przyborowski and H. Wilenski, Biometrika 31, 1940).
 *
 * @param firstExposure above 0, in the unit of the other
 * @param secondExposure above 0, in the unit of the other
 */
public record CountComparison(EventCount first, double firstExposure, EventCount second, double secondExposure) {

    /** What a change has to be below to be called one. */
    public static final double SIGNIFICANT = 0.05;

    /** Outcomes as likely as the one seen count too, although rounding may make them look a little likelier. */
    private static final double ALIKE = 1 + 1e-7;

    public CountComparison {
        if (!(firstExposure > 0 && secondExposure > 0)
                || Double.isInfinite(firstExposure)
                || Double.isInfinite(secondExposure)) {
            throw new IllegalArgumentException("both counts need an exposure above 0");
        }
    }

    /** Two counts over equal exposure. */
    public static CountComparison atEqualExposure(int first, int second) {
        return new CountComparison(new EventCount(first), 1, new EventCount(second), 1);
    }

    /**
     * How likely a split of the same sum is that is no likelier than the one seen, were the rates the same. Two-sided: every
     * split counts that is at most as likely.
     */
    public double pValue() {
        int sum = Math.addExact(first.events(), second.events());
        if (sum == 0) {
            return 1;
        }
        BinomialDistribution split = BinomialDistribution.of(sum, firstExposure / (firstExposure + secondExposure));
        double seen = split.probability(first.events()) * ALIKE;
        double p = 0;
        for (int k = 0; k <= sum; k++) {
            double probability = split.probability(k);
            p += probability <= seen ? probability : 0;
        }
        return Math.min(1, p);
    }

    /** Whether the two counts speak against equal rates. What is not shown by them is not said. */
    public boolean showsChange() {
        return pValue() < SIGNIFICANT;
    }
}
