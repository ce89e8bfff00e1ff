package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.outcome;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckAnswer.Answer;

/** Every limit at its value, just under and just over; limits are inclusive and only rounding is forgiven. */
class LimitBoundaryTests {

    /** A gantry in full power at 100 %, so that a straight move has the speed that is written. */
    private static CellText fastGantry() {
        return CellText.gantry()
                .with("power: reduced", "power: full")
                .with("override-percent: 50", "override-percent: 100")
                .with("straight: {speed: 400, acceleration: 2000}", "straight: {speed: 5000, acceleration: 90000}")
                .with("{name: x, min: 0, max: 600, speed: 500", "{name: x, min: 0, max: 600, speed: 5000");
    }

    private static SheetText line(double speed) {
        return SheetText.of(
                        "a: {x: 20, y: 100, z: 50, yaw: 0}\nb: {x: 520, y: 100, z: 50, yaw: 0}",
                        "{straight: b, speed-mm-s: " + speed + "}")
                .startingAt("a")
                .with("tool: G-02", "tool: V-02")
                .with("power: reduced", "power: full")
                .with("override-percent: 50", "override-percent: 100")
                .with("max-tool-speed-mm-s: 200", "max-tool-speed-mm-s: 5000");
    }

    /** ISO 10218-1 reduced speed, 250 mm/s (S); 10 in/s = 254 mm/s is above it (C). */
    @ParameterizedTest
    @CsvSource({"249.9, within", "250.0, within", "250.0000002, within", "250.0001, outside", "254, outside"})
    void limitsTheToolSpeed(double speed, String outcome) {
        CheckAnswer answer = line(speed).checkedOn(fastGantry());

        assertThat(outcome(answer, Check.TOOL_SPEED)).isEqualTo(outcome);
        assertThat(details(answer, Check.TOOL_SPEED).observed()).isEqualTo(speed);
        assertThat(answer.answer()).isEqualTo(outcome.equals("within") ? Answer.WITHIN : Answer.OUTSIDE);
    }

    /** ISO 10218-2:2025 5.5.6.1 as quoted publicly, 250 mm/s (S). */
    @ParameterizedTest
    @CsvSource({
        "required, 250.0, within",
        "required, 250.0001, outside",
        "advised, 250.0, within",
        "advised, 250.0001, caution"
    })
    void limitsTheFastestPart(String rule, double speed, String outcome) {
        CheckAnswer answer = line(speed)
                .checkedOn(fastGantry()
                        .with("tool-speed-mm-s: 250", "tool-speed-mm-s: 1000")
                        .with("moving-part-rule: advised", "moving-part-rule: " + rule));

        assertThat(outcome(answer, Check.MOVING_PART_SPEED)).isEqualTo(outcome);
        assertThat(answer.answer() == Answer.OUTSIDE).isEqualTo(outcome.equals("outside"));
    }

    @ParameterizedTest
    @CsvSource({"49, within", "50, within", "50.00000004, within", "50.0000001, outside", "51, outside"})
    void limitsTheOverride(String percent, String outcome) {
        CheckAnswer answer = SheetText.scara()
                .with("override-percent: 50", "override-percent: " + percent)
                .checkedOn(CellText.scara());

        assertThat(outcome(answer, Check.OVERRIDE)).isEqualTo(outcome);
    }

    @ParameterizedTest
    @CsvSource({
        "0.57, 3.0, within",
        "0.58, 3.0, within",
        "0.5800001, 3.0, outside",
        "0.08, 0.5, within",
        "0.0800001, 0.5, outside"
    })
    void limitsThePayload(String part, String rated, String outcome) {
        CheckAnswer answer = SheetText.scara()
                .with("part-kg: 0.06", "part-kg: " + part)
                .checkedOn(CellText.scara().with("rated-payload-kg: 3.0", "rated-payload-kg: " + rated));

        assertThat(outcome(answer, Check.PAYLOAD)).isEqualTo(outcome);
    }

    @ParameterizedTest
    @CsvSource({"-250, within", "-250.0000009, within", "-250.000002, outside", "-251, outside"})
    void limitsTheSpace(String x, String outcome) {
        CheckAnswer answer = SheetText.scara()
                .with("tray-above: {x: -120, y: 200", "tray-above: {x: " + x + ", y: 200")
                .checkedOn(CellText.scara());

        assertThat(outcome(answer, Check.SPACE)).isEqualTo(outcome);
    }

    /** The way runs 25 mm beside the box, and 25 mm is the overhang. */
    @ParameterizedTest
    @CsvSource({
        "125, 25, within",
        "124.9999991, 25, within",
        "124.999998, 25, outside",
        "124.9, 25, outside",
        // touching passes, entering does not
        "100, 0, within",
        "99.999998, 0, outside",
        "80, 0, outside"
    })
    void keepsOutOfBoxes(String y, String overhang, String outcome) {
        CellText cell = fastGantry()
                .with(
                        "{name: camera post, x: [180, 220], y: [300, 340], z: [0, 400]}",
                        "{name: feeder, x: [200, 260], y: [" + y + ", 180], z: [0, 120]}")
                .with("overhang-mm: 25", "overhang-mm: " + overhang);

        assertThat(outcome(line(100).checkedOn(cell), Check.KEEP_OUT)).isEqualTo(outcome);
    }

    /** The stretched arm is 225 + 175 mm long. */
    @ParameterizedTest
    @CsvSource({"399, within", "400, within", "400.0000009, within", "400.000002, outside", "410, outside"})
    void limitsTheReach(String y, String outcome) {
        CheckAnswer answer = SheetText.scara()
                .with("tray-above: {x: -120, y: 200", "tray-above: {x: 0, y: " + y)
                .without("- straight: tray")
                .without("speed-mm-s: 80")
                .checkedOn(CellText.scara());

        assertThat(outcome(answer, Check.REACH)).isEqualTo(outcome);
    }

    /** The tool hangs 60 mm below the flange and the lift goes to 150 mm. */
    @ParameterizedTest
    @CsvSource({"89, within", "90, within", "90.0000009, within", "90.000002, outside"})
    void limitsTheAxisRange(String z, String outcome) {
        CheckAnswer answer =
                SheetText.scara().with("y: 200, z: 80", "y: 200, z: " + z).checkedOn(CellText.scara());

        assertThat(outcome(answer, Check.AXIS_RANGE)).isEqualTo(outcome);
    }

    @ParameterizedTest
    @CsvSource({"199, within", "200, within", "200.0001, outside"})
    void limitsTheSpeedOfAnAxis(double speed, String outcome) {
        CellText cell =
                fastGantry().with("{name: x, min: 0, max: 600, speed: 5000", "{name: x, min: 0, max: 600, speed: 200");
        CheckAnswer answer = line(speed).checkedOn(cell);

        assertThat(outcome(answer, Check.AXIS_SPEED)).isEqualTo(outcome);
        assertThat(outcome(answer, Check.TOOL_SPEED)).isEqualTo("within");
    }

    /** Upper arm, m_R 1 kg, transient 300 N: 2.000 m/s exactly by hand (C). */
    @ParameterizedTest
    @CsvSource({"1999, within", "2000, within", "2000.001, outside"})
    void limitsTheSpeedOfContact(double speed, String outcome) {
        CellText cell = fastGantry()
                .with("tool-speed-mm-s: 250", "tool-speed-mm-s: 9000")
                .with("moving-part-speed-mm-s: 250", "moving-part-speed-mm-s: 9000")
                .with("moving-mass-kg: 14.0", "moving-mass-kg: 1.0")
                .with("mass-kg: 0.18", "mass-kg: 0.44")
                .with(
                        "contact: {regions: [hand-and-fingers, lower-arm-and-wrist], rule: advised}",
                        "contact: {regions: [upper-arm-and-elbow], rule: required}");

        assertThat(outcome(line(speed).checkedOn(cell), Check.CONTACT)).isEqualTo(outcome);
    }

    /** Radius 530.0 (at x 520, y 100 mm) + 25 + S_p at 250 mm/s with T_r 0.1, T_s 0.3: 1052.5 (C). */
    @ParameterizedTest
    @CsvSource({"0.0001, within", "0, within", "-0.0000009, within", "-0.000002, outside"})
    void limitsTheStandLine(double spare, String outcome) {
        double needed = Math.sqrt(520 * 520 + 100 * 100) + 25 + 1052.5;
        CellText cell = fastGantry()
                .with("separation: {rule: advised", "separation: {rule: required")
                .with("stand-line-mm: 2100", "stand-line-mm: " + (needed + spare));

        assertThat(outcome(line(250).checkedOn(cell), Check.SEPARATION)).isEqualTo(outcome);
    }

    @Test
    void takesNoNumberThatIsNone() {
        for (String number : new String[] {".nan", ".inf", "-.inf", "1e999", "NaN"}) {
            assertThat(SheetText.scara()
                            .with("speed-mm-s: 80", "speed-mm-s: " + number)
                            .read(CellText.scara())
                            .badInput())
                    .isPresent();
        }
    }
}
