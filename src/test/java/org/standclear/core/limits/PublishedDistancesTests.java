package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.check.CheckAnswer;

/**
 * The part of the separation that a person walks, against published distances for light curtains: with the arm at rest
 * and no uncertainty, S_p = v_h (T_r + T_s) + C is their S = K T + C.
 */
class PublishedDistancesTests {

    private static final double MM_PER_INCH = 25.4;

    private static double separation(double humanSpeedMmS, double seconds, double intrusionMm) {
        CellText cell = CellText.gantry()
                .with("human-speed-mm-s: 1600", "human-speed-mm-s: " + humanSpeedMmS)
                .with("intrusion-mm: 200", "intrusion-mm: " + intrusionMm)
                .with("person-uncertainty-mm: 100", "person-uncertainty-mm: 0")
                .with("robot-uncertainty-mm: 50", "robot-uncertainty-mm: 0")
                .with("reaction-s: 0.10", "reaction-s: " + seconds / 4)
                .with("stopping-s: 0.30", "stopping-s: " + seconds * 3 / 4);
        CheckAnswer answer =
                SheetText.of("a: {x: 20, y: 100, z: 50, yaw: 0}", "wait-s: 1").checkedOn(cell);
        return Objects.requireNonNull(answer.figures().separationMm());
    }

    /**
     * ISO 13855 as public texts quote it (S): K 2000 mm/s to 500 mm, 1600 mm/s beyond and no less than 500 mm; C = 8 (d -
     * 14) mm to a resolution d of 40 mm, 850 mm above, 1200 mm for a beam that can be passed beneath. T 0.32 s, d 14 mm:
     * 640, over 500, so 512 mm. T 0.0257 s: d 30 gives 179.4, d 47 gives 891.12, d 98 gives 1241.12 mm.
     */
    @ParameterizedTest
    @CsvSource({
        "2000, 0.32, 0, 640",
        "1600, 0.32, 0, 512",
        "2000, 0.0257, 128, 179.4",
        "1600, 0.0257, 850, 891.12",
        "1600, 0.0257, 1200, 1241.12"
    })
    void agreesWithPublishedDistances(double k, double seconds, double c, double distance) {
        assertThat(separation(k, seconds, c)).isCloseTo(distance, within(1e-9));
    }

    /**
     * The walked part alone, with either speed as the cell gives it: the rule that takes the slower speed beyond 500 mm,
     * and no less than 500 mm, is not the check's. By hand (C): T 0.26 s, d 14 mm is 520 with 2000 mm/s, 416 with 1600.
     */
    @ParameterizedTest
    @CsvSource({"2000, 520", "1600, 416"})
    void takesTheSpeedAsGivenOnEitherSideOfTheBorder(double k, double distance) {
        assertThat(separation(k, 0.26, 0)).isCloseTo(distance, within(1e-9));
    }

    /**
     * 29 CFR 1910.217(c)(3)(iii)(e), Ds = 63 in/s x Ts (S): 0.25 s and 1.2 in more is 16.95 in; its chart has 10, 20 and 26
     * in for 0.158, 0.317 and 0.412 s, rounded to what a chart shows (0.062 in).
     */
    @ParameterizedTest
    @CsvSource({"0.25, 1.2, 16.95, 1e-9", "0.158, 0, 10, 0.062", "0.317, 0, 20, 0.062", "0.412, 0, 26, 0.062"})
    void agreesWithTheHandSpeedConstant(double seconds, double moreInches, double inches, double tolerance) {
        double found = separation(63 * MM_PER_INCH, seconds, moreInches * MM_PER_INCH) / MM_PER_INCH;
        assertThat(found).isCloseTo(inches, within(tolerance));
    }
}
