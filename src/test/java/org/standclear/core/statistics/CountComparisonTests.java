package org.standclear.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The exact conditional test beside hand computation and another program. */
class CountComparisonTests {

    private static final double COMPUTED = 1e-12;

    /** Binomial splits of a fair coin, by hand (grade C): 74/256, 112/1024, 2/64. */
    @ParameterizedTest
    @CsvSource({"6, 2, 0.2890625", "8, 2, 0.109375", "6, 0, 0.03125", "5, 5, 1", "0, 0, 1", "10, 4, 0.1795654296875"})
    void agreesWithTheHandAtEqualExposure(int first, int second, double p) {
        assertThat(CountComparison.atEqualExposure(first, second).pValue()).isEqualTo(p, within(COMPUTED));
        assertThat(CountComparison.atEqualExposure(second, first).pValue()).isEqualTo(p, within(COMPUTED));
    }

    /** SciPy 1.17.1, binomtest(a, a + b, ta / (ta + tb)) (grade C); R's poisson.test computes the same. */
    @ParameterizedTest
    @CsvSource({
        "11, 800, 23, 1011, 0.22620433917106636",
        "6, 100, 2, 300, 0.0042266845703125",
        "3, 40, 9, 500, 0.05391618140178986",
        "0, 50, 4, 50, 0.125",
        "12, 1000, 3, 700, 0.11817066259524421"
    })
    void agreesWithAnotherProgramAtUnequalExposure(int a, double ta, int b, double tb, double p) {
        assertThat(compared(a, ta, b, tb).pValue()).isEqualTo(p, within(COMPUTED));
        assertThat(compared(b, tb, a, ta).pValue()).isEqualTo(p, within(COMPUTED));
    }

    private static CountComparison compared(int a, double ta, int b, double tb) {
        return new CountComparison(new EventCount(a), ta, new EventCount(b), tb);
    }

    @Test
    void saysChangeOnlyBelowFivePercent() {
        assertThat(CountComparison.atEqualExposure(6, 0).showsChange()).isTrue();
        assertThat(CountComparison.atEqualExposure(5, 0).showsChange()).isFalse();
        assertThat(CountComparison.atEqualExposure(8, 2).showsChange()).isFalse();
        assertThat(compared(6, 100, 2, 300).showsChange()).isTrue();
        assertThat(compared(3, 40, 9, 500).showsChange()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -2, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesAnExposureThatIsNone(double exposure) {
        assertThatThrownBy(() -> compared(1, exposure, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> compared(1, 1, 1, exposure)).isInstanceOf(IllegalArgumentException.class);
    }
}
