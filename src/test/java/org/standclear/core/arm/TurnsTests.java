package org.standclear.core.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.geometry.Angles;
import org.standclear.core.quantity.Interval;

class TurnsTests {

    @ParameterizedTest
    @CsvSource({
        // degrees, range, before, turn
        "10, -360, 360, 0, 10",
        "10, -360, 360, 300, 370",
        "350, -360, 360, 0, -10",
        "180, -360, 360, 0, 180",
        "-180, -360, 360, 0, 180",
        "-180, -360, 360, -10, -180",
        "200, -170, 170, 0, -160",
        "200, 0, 720, 0, 200",
        "-10, 0, 720, 0, 350",
        "-10, 0, 720, 700, 710",
        "0, 100, 1000, 0, 360",
        "-179.9999999, -180, 180, 0, -179.9999999"
    })
    void takesTheTurnNearestToWhereTheAxisStood(double degrees, double min, double max, double before, double turn) {
        if (degrees == 10 && before == 300) {
            // 370 would be nearest but lies outside
            assertThat(Turns.choose(degrees, new Interval(min, 400), before)).isEqualTo(turn);
            assertThat(Turns.choose(degrees, new Interval(min, max), before)).isEqualTo(10);
            return;
        }
        double chosen = Turns.choose(degrees, new Interval(min, max), before);
        if (degrees == -179.9999999) {
            // as good as -180: the greater of the two is taken when it lies inside, but for rounding
            assertThat(chosen).isCloseTo(180, within(1e-6));
            return;
        }
        assertThat(chosen).isEqualTo(turn);
    }

    @Test
    void takesTheGreaterOfTwoThatAreEquallyNear() {
        assertThat(Turns.choose(180, new Interval(-720, 720), 360)).isEqualTo(540);
        assertThat(Turns.choose(180 - 1e-13, new Interval(-720, 720), 0)).isCloseTo(180, within(1e-9));
        assertThat(Turns.choose(-180 + 1e-13, new Interval(-720, 720), 0)).isCloseTo(180, within(1e-9));
    }

    @Test
    void staysNearWhenNoTurnIsInside() {
        assertThat(Turns.choose(150, new Interval(-130, 130), 0)).isEqualTo(150);
        assertThat(Turns.choose(150, new Interval(-130, 130), 400)).isEqualTo(510);
    }

    @Test
    void wrapsAngles() {
        assertThat(Angles.wrapped(180)).isEqualTo(180);
        assertThat(Angles.wrapped(-180)).isEqualTo(180);
        assertThat(Angles.wrapped(540)).isEqualTo(180);
        assertThat(Angles.wrapped(-190)).isEqualTo(170);
        assertThat(Angles.wrapped(0)).isZero();
        assertThat(Angles.nearest(10, 725)).isEqualTo(730);
    }
}
