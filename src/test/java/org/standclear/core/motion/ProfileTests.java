package org.standclear.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.ReferenceTable;

class ProfileTests {

    /** Published table for v 0.8, a 2 (S), KDL agrees. */
    @ParameterizedTest
    @CsvSource({"0.5, 1.025", "1.2, 1.900", "1.5707963267948966, 2.363", "3.141592653589793, 4.327"})
    void takesThePublishedTime(double way, double seconds) {
        assertThat(new Profile(way, 0.8, 2).duration()).isCloseTo(seconds, within(5e-4));
    }

    /** The same table: a triangle below 0.32; 0.2 has peak and time 0.6325; without a speed limit pi takes 2.507 s. */
    @Test
    void isATriangleWhenTooShort() {
        assertThat(new Profile(0.2, 0.8, 2).peak()).isCloseTo(0.6325, within(5e-5));
        assertThat(new Profile(0.2, 0.8, 2).duration()).isCloseTo(0.6325, within(5e-5));
        assertThat(new Profile(0.32, 0.8, 2).peak()).isCloseTo(0.8, within(1e-12));
        assertThat(new Profile(0.3199, 0.8, 2).peak()).isLessThan(0.8);
        assertThat(new Profile(Math.PI, Double.POSITIVE_INFINITY, 2).duration()).isCloseTo(2.507, within(5e-4));
    }

    /** KDL, 400 random profiles around the border between triangle and trapezoid (C). */
    @Test
    void agreesWithKdl() {
        for (double[] row : ReferenceTable.rows("trapezoid.csv")) {
            Profile profile = new Profile(row[0], row[1], row[2]);

            assertThat(profile.duration()).isCloseTo(row[3], within(1e-9 * row[3]));
            assertThat(profile.peak()).isCloseTo(row[4], within(1e-9 * row[4]));
        }
    }

    @Test
    void goesFromRestToRest() {
        for (Profile profile : new Profile[] {new Profile(0.2, 0.8, 2), new Profile(3, 0.8, 2)}) {
            assertThat(profile.placeAfter(0)).isZero();
            assertThat(profile.placeAfter(profile.duration())).isCloseTo(profile.length(), within(1e-12));
            assertThat(profile.speedAt(0)).isZero();
            assertThat(profile.speedAt(profile.length())).isZero();
            double dt = profile.duration() / 1000;
            for (int i = 1; i < 1000; i++) {
                double speed = (profile.placeAfter((i + 0.5) * dt) - profile.placeAfter((i - 0.5) * dt)) / dt;
                assertThat(profile.speedAt(profile.placeAfter(i * dt))).isCloseTo(speed, within(2e-3));
            }
        }
    }
}
