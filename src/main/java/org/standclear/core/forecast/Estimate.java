package org.standclear.core.forecast;

import java.util.List;

/**
 * A number found by simulation and how far it may be off by chance.
 *
 * @param standardError of the value, from the scatter between groups of days
 */
public record Estimate(double value, double standardError) {

    /** The value over all days with the scatter of the same value over each of several groups of days. */
    static Estimate of(double value, List<Double> groups) {
        double mean = groups.stream().mapToDouble(Double::doubleValue).average().orElse(value);
        double squares = groups.stream()
                .mapToDouble(group -> (group - mean) * (group - mean))
                .sum();
        int count = groups.size();
        return new Estimate(value, count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count));
    }
}
