package org.standclear.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.quantity.Interval;

/** Garwood's limits beside printed tables and beside other programs. */
class EventCountTests {

    private static final Confidence C95 = Confidence.OF_REPORTS;

    private static final double PRINTED_THREE = 5e-4;
    private static final double PRINTED_TWO = 5e-3;
    private static final double PRINTED_FOUR = 5e-5;
    private static final double COMPUTED = 1e-9;

    /** Read in public tables of exact Poisson limits, to the digits printed there (grade S). */
    @Test
    void agreesWithPrintedTables() {
        assertThat(new EventCount(0).limits(C95).min()).isZero();
        assertThat(new EventCount(0).limits(C95).max()).isEqualTo(3.689, within(PRINTED_THREE));
        assertLimits(10, 4.80, 18.39, PRINTED_TWO);
        assertLimits(25, 16.18, 36.90, PRINTED_TWO);
    }

    /** R's poisson.test (grade C), four digits. */
    @ParameterizedTest
    @CsvSource({"3, 0.6187, 8.7673", "5, 1.6235, 11.6683", "20, 12.2165, 30.8884"})
    void agreesWithR(int events, double lower, double upper) {
        assertLimits(events, lower, upper, PRINTED_FOUR);
    }

    /** SciPy 1.17.1, scipy.stats.chi2.ppf (grade C): a program with its own gamma function. */
    @ParameterizedTest
    @CsvSource({
        "1, 0.025317807984289897, 5.571643390938898",
        "3, 0.6186721228956015, 8.767273069742323",
        "100, 81.36399125092315, 121.62679379242638",
        "1000, 938.9730184076952, 1063.952136016302"
    })
    void agreesWithAnotherProgram(int events, double lower, double upper) {
        assertLimits(events, lower, upper, COMPUTED * events + COMPUTED);
    }

    private static void assertLimits(int events, double lower, double upper, double tolerance) {
        Interval limits = new EventCount(events).limits(C95);
        assertThat(limits.min()).isEqualTo(lower, within(tolerance));
        assertThat(limits.max()).isEqualTo(upper, within(tolerance));
    }

    /** The definition itself: at the limits the count seen is just as rare as the tail says. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 40})
    void leavesTheSameTailOnBothSides(int events) {
        Interval limits = new EventCount(events).limits(C95);
        assertThat(1 - poissonUpTo(events - 1, limits.min())).isEqualTo(0.025, within(COMPUTED));
        assertThat(poissonUpTo(events, limits.max())).isEqualTo(0.025, within(COMPUTED));
    }

    private static double poissonUpTo(int k, double mean) {
        double term = Math.exp(-mean);
        double sum = 0;
        for (int i = 0; i <= k; i++) {
            sum += term;
            term *= mean / (i + 1);
        }
        return sum;
    }

    @Test
    void saysARatePerUnitOfExposure() {
        Interval rate = new EventCount(3).rateLimits(400, 1000, C95);
        assertThat(rate.min()).isEqualTo(0.6186721228956015 * 2.5, within(COMPUTED));
        assertThat(rate.max()).isEqualTo(8.767273069742323 * 2.5, within(COMPUTED));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void refusesAnExposureThatIsNone(double exposure) {
        assertThatThrownBy(() -> new EventCount(3).rateLimits(exposure, 1000, C95))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesCountsAndLevelsThatAreNone() {
        assertThatThrownBy(() -> new EventCount(-1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Confidence(1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Confidence(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Confidence(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
