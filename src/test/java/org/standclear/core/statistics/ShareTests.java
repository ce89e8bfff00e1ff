package org.standclear.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.quantity.Interval;

/** Wilson's interval and the rule of three beside other programs. */
class ShareTests {

    private static final Confidence C95 = Confidence.OF_REPORTS;
    private static final double PRINTED = 5e-5;
    private static final double COMPUTED = 1e-12;

    /** Newcombe, Statistics in Medicine 17 (1998), from memory (grade M); R's prop.test(correct=FALSE) agrees (grade C). */
    @ParameterizedTest
    @CsvSource({"81, 263, 0.2553, 0.3662", "0, 20, 0, 0.1611", "1, 29, 0.0061, 0.1718", "15, 148, 0.0624, 0.1605"})
    void agreesWithR(int part, int whole, double lower, double upper) {
        assertLimits(part, whole, lower, upper, PRINTED);
    }

    /** SciPy 1.17.1, binomtest(...).proportion_ci(method="wilson") (grade C). */
    @ParameterizedTest
    @CsvSource({
        "81, 263, 0.2552885198782742, 0.36620957698280004",
        "0, 20, 0, 0.16112515805281935",
        "20, 20, 0.8388748419471808, 1"
    })
    void agreesWithAnotherProgram(int part, int whole, double lower, double upper) {
        assertLimits(part, whole, lower, upper, COMPUTED);
    }

    private static void assertLimits(int part, int whole, double lower, double upper, double tolerance) {
        Interval limits = new Share(part, whole).limits(C95);
        assertThat(limits.min()).isEqualTo(lower, within(tolerance));
        assertThat(limits.max()).isEqualTo(upper, within(tolerance));
    }

    @Test
    void staysBetweenNoneAndAll() {
        for (int whole = 1; whole <= 40; whole++) {
            for (int part = 0; part <= whole; part++) {
                Interval limits = new Share(part, whole).limits(C95);
                assertThat(limits.min()).isBetween(0.0, new Share(part, whole).value());
                assertThat(limits.max()).isBetween(new Share(part, whole).value(), 1.0);
            }
        }
    }

    /** The rule of three (grade S): after none of n, about 3/n; exactly 1 - 0.05^(1/n). */
    @ParameterizedTest
    @ValueSource(ints = {30, 50, 300, 5000})
    void saysTheRuleOfThreeAfterNone(int whole) {
        double upper = new Share(0, whole).upperLimit(C95);
        assertThat(upper).isEqualTo(1 - Math.pow(0.05, 1.0 / whole), within(1e-9));
        assertThat(upper).isCloseTo(3.0 / whole, within(0.07 * 3.0 / whole));
    }

    @Test
    void saysAllAfterAll() {
        assertThat(new Share(7, 7).upperLimit(C95)).isEqualTo(1);
    }

    @Test
    void refusesWhatIsNoShare() {
        assertThatThrownBy(() -> new Share(0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Share(3, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Share(-1, 2)).isInstanceOf(IllegalArgumentException.class);
    }
}
