package org.standclear.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ToleranceTests {

    @Test
    void forgivesOnlyRounding() {
        assertThat(Tolerance.isWithin(250, 250)).isTrue();
        assertThat(Tolerance.isWithin(250 * (1 + 0.9e-9), 250)).isTrue();
        assertThat(Tolerance.isWithin(250 * (1 + 1.1e-9), 250)).isFalse();
        assertThat(Tolerance.isWithin(0, 0)).isTrue();
        assertThat(Tolerance.isWithin(1e-12, 0)).isFalse();
    }

    @Test
    void failsWhatIsNotANumber() {
        assertThat(Tolerance.isWithin(Double.NaN, 250)).isFalse();
        assertThat(Tolerance.isWithin(1, Double.NaN)).isFalse();
        assertThat(Tolerance.isOutside(Double.NaN)).isTrue();
        assertThat(Tolerance.isSame(Double.NaN, Double.NaN)).isFalse();
    }

    @Test
    void forgivesAMillionthOfAMillimetre() {
        Interval range = new Interval(-10, 20);
        assertThat(range.holds(20.0000009)).isTrue();
        assertThat(range.holds(20.0000011)).isFalse();
        assertThat(range.holds(-10.0000009)).isTrue();
        assertThat(range.holds(-10.0000011)).isFalse();
        assertThat(range.holds(Double.NaN)).isFalse();
    }

    @Test
    void showsTowardsTheUnsafeSide() {
        assertThat(ShownNumber.up(250.0001, 1)).isEqualTo("250.1");
        assertThat(ShownNumber.up(125.00000000000001, 1)).isEqualTo("125");
        assertThat(ShownNumber.up(0.52, 3)).isEqualTo("0.52");
        assertThat(ShownNumber.down(1429.1974, 1)).isEqualTo("1429.1");
        assertThat(ShownNumber.down(1429.2, 1)).isEqualTo("1429.2");
        assertThat(ShownNumber.up(-0.01, 1)).isEqualTo("0");
        assertThat(ShownNumber.plain(100)).isEqualTo("100");
        assertThat(ShownNumber.plain(0.1)).isEqualTo("0.1");
        assertThat(ShownNumber.up(Double.NaN, 1)).isEqualTo("not known");
    }
}
