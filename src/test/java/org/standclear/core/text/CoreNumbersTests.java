package org.standclear.core.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The numbers of the core schema, YAML 1.2.2, 10.3.2 (S). */
class CoreNumbersTests {

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0, 0",
        "+12, 12",
        "0o14, 12",
        "0xC, 12",
        "0x1f, 31",
        "1., 1",
        ".5, 0.5",
        "-.5, -0.5",
        "1e3, 1000",
        "1.0E+2, 100",
        "12e03, 12000",
        "-2E-1, -0.2",
        "0123, 123",
        "1e999, Infinity",
        ".inf, Infinity",
        "-.INF, -Infinity",
        ".nan, NaN"
    })
    void readsThem(String text, double value) {
        assertThat(CoreNumbers.parse(text).getAsDouble() + 0.0).isEqualTo(Double.valueOf(value));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                "+",
                ".",
                "..",
                "e3",
                "1e",
                "1e+",
                "1_000",
                "0x",
                "0xg",
                "0o8",
                "1.2.3",
                "1 2",
                "inf",
                "nan",
                "NaN",
                "Infinity",
                "12d",
                "1f",
                "0x1p3",
                "１",
                "٣",
                "1,5",
                "--1"
            })
    void takesNothingElseForANumber(String text) {
        assertThat(CoreNumbers.parse(text)).isEmpty();
    }

    @Test
    void readsNoEndlessNumber() {
        assertThat(CoreNumbers.parse("9".repeat(400))).isPresent();
        assertThat(CoreNumbers.parse("9".repeat(401))).isEmpty();
    }

    @Test
    void acceptsByRuleAndNeverNaN() {
        for (NumberRule rule : NumberRule.values()) {
            assertThat(rule.accepts(Double.NaN)).isFalse();
            assertThat(rule.accepts(Double.POSITIVE_INFINITY)).isFalse();
            assertThat(rule.accepts(1_000_000.1)).isFalse();
        }
        assertThat(NumberRule.ANY.accepts(-1_000_000)).isTrue();
        assertThat(NumberRule.ANY.accepts(1_000_000)).isTrue();
        assertThat(NumberRule.ABOVE_ZERO.accepts(0)).isFalse();
        assertThat(NumberRule.ABOVE_ZERO.accepts(Double.MIN_VALUE)).isTrue();
        assertThat(NumberRule.NOT_BELOW_ZERO.accepts(0)).isTrue();
        assertThat(NumberRule.NOT_BELOW_ZERO.accepts(-Double.MIN_VALUE)).isFalse();
        assertThat(NumberRule.PERCENT.accepts(0)).isFalse();
        assertThat(NumberRule.PERCENT.accepts(100)).isTrue();
        assertThat(NumberRule.PERCENT.accepts(100.001)).isFalse();
    }
}
