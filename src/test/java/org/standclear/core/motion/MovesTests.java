package org.standclear.core.motion;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.of;
import static org.standclear.core.Outcomes.outcome;

import org.junit.jupiter.api.Test;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.limits.Check;

/** What moves do at the edges of their definitions. */
class MovesTests {

    private static final CellText WIDE = CellText.scara()
            .with(
                    "space: {x: [-250, 250], y: [120, 380], z: [5, 150]}",
                    "space: {x: [-500, 500], y: [-500, 500], z: [5, 150]}")
            .without("camera post")
            .without("keep-out");

    private static SheetText gantry(String points, String... steps) {
        return SheetText.of(points, steps).startingAt("a").with("tool: G-02", "tool: V-02");
    }

    private static Peaks peaks(CheckAnswer answer, int index) {
        return requireNonNull(answer.motion().steps().get(index).peaks());
    }

    private static double seconds(CheckAnswer answer, int index) {
        return requireNonNull(answer.motion().steps().get(index).durationS());
    }

    @Test
    void keepsItsSideOfTheElbowOnAStraightMove() {
        SheetText sheet = SheetText.of(
                        "a: {x: -100, y: 250, z: 60, yaw: 0, elbow: right}\nb: {x: 100, y: 250, z: 60, yaw: 0, elbow: left}",
                        "{straight: b, speed-mm-s: 100}")
                .startingAt("a");
        CheckAnswer answer = sheet.checkedOn(WIDE);

        assertThat(outcome(answer, Check.REACH)).isEqualTo("outside");
        assertThat(details(answer, Check.REACH).says()).contains("keeps its side");
        assertThat(outcome(
                        sheet.with("{straight: b, speed-mm-s: 100}", "move: b").checkedOn(WIDE), Check.REACH))
                .isEqualTo("within");
    }

    @Test
    void changesSidesAtTheStretchedArm() {
        // 400 mm is the stretched arm: such a point belongs to both sides
        SheetText from = SheetText.of(
                        "a: {x: 0, y: 400, z: 60, yaw: 0, elbow: left}\nb: {x: 100, y: 250, z: 60, yaw: 0, elbow: right}",
                        "{straight: b, speed-mm-s: 5}")
                .startingAt("a");
        SheetText to = SheetText.of(
                        "a: {x: 100, y: 250, z: 60, yaw: 0, elbow: right}\nb: {x: 0, y: 400, z: 60, yaw: 0, elbow: left}",
                        "{straight: b, speed-mm-s: 5}")
                .startingAt("a");

        assertThat(outcome(from.checkedOn(WIDE), Check.REACH)).isEqualTo("within");
        assertThat(outcome(to.checkedOn(WIDE), Check.REACH)).isEqualTo("within");
    }

    /**
     * Straight out to the stretched arm: the elbow's speed has a limit that the sampled rates only approach. With r near
     * L, q2 is about sqrt(2 (L - r) L / (L1 L2)), so on the last ramp |dq2/dt| tends to sqrt(a L / (L1 L2)).
     */
    @Test
    void findsTheSpeedOfTheElbowAtTheStretchedArm() {
        CellText cell = WIDE.with("elbow, min: -140, max: 140, speed: 600", "elbow, min: -140, max: 140, speed: 10000");
        CheckAnswer answer = SheetText.of(
                        "a: {x: 0, y: 300, z: 60, yaw: 0, elbow: right}\nb: {x: 0, y: 400, z: 60, yaw: 0, elbow: right}",
                        "{straight: b, speed-mm-s: 200}")
                .startingAt("a")
                .checkedOn(cell);
        AxisUse shoulder = answer.motion().axisUses().get(0);
        double elbow = Math.toDegrees(Math.sqrt(4000.0 * 400 / (225.0 * 175)));

        // the shoulder turns by L2 / L of what the elbow bends, and is asked most of here
        assertThat(shoulder.axis().name()).isEqualTo("shoulder");
        assertThat(requireNonNull(shoulder.speed())).isCloseTo(elbow * 175 / 400, within(1e-3 * elbow));
    }

    @Test
    void isAJointMoveWhenOnlyTheToolTurns() {
        CheckAnswer answer = gantry(
                        "a: {x: 100, y: 100, z: 50, yaw: 0}\nb: {x: 100.0000009, y: 100, z: 50, yaw: 90}\n"
                                + "c: {x: 100.0000031, y: 100, z: 50, yaw: 90}",
                        "{straight: b, speed-mm-s: 1, acceleration-percent: 50}",
                        "{straight: c, speed-mm-s: 1}")
                .checkedOn(CellText.gantry());

        assertThat(answer.motion().steps())
                .extracting(StepMotion::kind)
                .containsExactly(StepKind.JOINT, StepKind.STRAIGHT);
        // 90 deg at 180 deg/s, 900 deg/s2
        assertThat(seconds(answer, 0)).isCloseTo(0.5 + 0.2, within(1e-6));
        assertThat(peaks(answer, 0).heldOverhang()).isCloseTo(25 * Math.PI, within(1e-3));
    }

    @Test
    void doesNotHoldAToolThatTurnsOnTheSpot() {
        SheetText sheet = gantry("a: {x: 100, y: 100, z: 50, yaw: 0}\nb: {x: 100, y: 100, z: 50, yaw: 180}", "move: b");
        CheckAnswer answer = sheet.checkedOn(CellText.gantry().with("overhang-mm: 25", "overhang-mm: 200"));

        assertThat(answer.figures().toolPeakMmS()).isEqualTo(0.0);
        assertThat(peaks(answer, 0).part()).isEqualTo(FastestPart.OVERHANG);
        assertThat(outcome(answer, Check.MOVING_PART_SPEED)).isEqualTo("caution");
    }

    @Test
    void holdsStraightMovesToTheCeiling() {
        SheetText sheet = gantry(
                "a: {x: 20, y: 100, z: 50, yaw: 0}\nb: {x: 520, y: 100, z: 50, yaw: 0}",
                "{straight: b, speed-mm-s: 400}");
        CheckAnswer held = sheet.checkedOn(CellText.gantry());
        CheckAnswer never = sheet.checkedOn(CellText.gantry().without("reduced-power-speed-mm-s"));

        assertThat(peaks(held, 0).heldTool()).isEqualTo(125.0);
        assertThat(peaks(held, 0).fullPowerTool()).isEqualTo(200.0);
        assertThat(seconds(held, 0)).isCloseTo(500 / 125.0 + 125 / 2000.0, within(1e-12));
        assertThat(peaks(never, 0).heldTool()).isEqualTo(200.0);
    }

    @Test
    void acceptsNoStraightMoveFasterThanTheArm() {
        CheckAnswer answer = gantry(
                        "a: {x: 20, y: 100, z: 50, yaw: 0}\nb: {x: 520, y: 100, z: 50, yaw: 0}",
                        "{straight: b, speed-mm-s: 2000}")
                .checkedOn(CellText.gantry());

        // 1000 after the override, but the arm's fastest is 400, which no override lowers
        assertThat(peaks(answer, 0).fullPowerTool()).isEqualTo(400.0);
    }

    @Test
    void endsTheWristOnTheTurnThatALineReached() {
        // 170 to -170: the shorter way is through 180, so the yaw axis ends at 190
        CheckAnswer answer = gantry(
                        "a: {x: 100, y: 100, z: 50, yaw: 170}\nb: {x: 200, y: 100, z: 50, yaw: -170}\n"
                                + "c: {x: 300, y: 100, z: 50, yaw: 0}",
                        "{straight: b, speed-mm-s: 50}",
                        "{move: c, speed-percent: 40, acceleration-percent: 20}")
                .checkedOn(CellText.gantry());
        JointPath path = (JointPath)
                requireNonNull(answer.motion().steps().get(1).trace()).path();

        assertThat(path.from().get(3)).isCloseTo(190, within(1e-9));
        // 0 and 360 are 190 and 170 away
        assertThat(path.from().plus(path.way(), 1).get(3)).isCloseTo(360, within(1e-9));
    }

    @Test
    void leavesTheRangeWhenALineTurnsTheWristTooFar() {
        CheckAnswer answer = gantry(
                        "a: {x: 100, y: 100, z: 50, yaw: 170}\nb: {x: 200, y: 100, z: 50, yaw: -170}",
                        "{straight: b, speed-mm-s: 50}")
                .checkedOn(CellText.gantry().with("min: -360, max: 360", "min: -180, max: 180"));

        assertThat(outcome(answer, Check.AXIS_RANGE)).isEqualTo("outside");
        assertThat(details(answer, Check.AXIS_RANGE).observed()).isCloseTo(190.0, within(1e-9));
    }

    @Test
    void leavesTheRangeOnTheWayBetweenTwoPointsInside() {
        // both ends are 300 mm out; half-way the line passes 100 mm from the base axis, where the elbow bends most
        SheetText sheet = SheetText.of(
                        "a: {x: -280, y: 100, z: 60, yaw: 0, elbow: right}\nb: {x: 280, y: 100, z: 60, yaw: 0, elbow: right}",
                        "{straight: b, speed-mm-s: 5}")
                .startingAt("a");
        CellText cell = WIDE.with("{name: shoulder, min: -40, max: 220", "{name: shoulder, min: -200, max: 220");

        assertThat(outcome(sheet.checkedOn(cell.with("min: -140, max: 140", "min: -160, max: 160")), Check.AXIS_RANGE))
                .isEqualTo("within");
        CheckAnswer outside = sheet.checkedOn(cell.with("min: -140, max: 140", "min: -150, max: 150"));
        // law of cosines at 100 mm
        double bent = 180 - Math.toDegrees(Math.acos((225.0 * 225 + 175 * 175 - 100 * 100) / (2.0 * 225 * 175)));
        assertThat(details(outside, Check.AXIS_RANGE).observed()).isCloseTo(bent, within(1e-6));
    }

    @Test
    void closesALoopWithItsFirstStep() {
        CheckAnswer answer = gantry(
                        "a: {x: 100, y: 100, z: 50, yaw: 0}\nb: {x: 200, y: 100, z: 50, yaw: 0}",
                        "wait-s: 1",
                        "{straight: a, speed-mm-s: 100}",
                        "{straight: b, speed-mm-s: 100}")
                .with("part-kg: 0.06", "part-kg: 0.06\n  loop: forever")
                .checkedOn(CellText.gantry());
        StepMotion closing = answer.motion().steps().get(3);

        assertThat(closing.closing()).isTrue();
        assertThat(closing.step()).isEqualTo(2);
        assertThat(closing.kind()).isEqualTo(StepKind.STRAIGHT);
        double line = 100 / 50.0 + 50 / 2000.0;
        assertThat(answer.motion().cycleTimeS()).isCloseTo(1 + 2 * line, within(1e-9));
        assertThat(details(answer, Check.LOOP).says()).contains("attended throughout");
    }

    @Test
    void listsAClosingMoveWithoutLength() {
        CheckAnswer answer = gantry(
                        "a: {x: 100, y: 100, z: 50, yaw: 0}\nb: {x: 200, y: 100, z: 50, yaw: 0}",
                        "{straight: b, speed-mm-s: 100}")
                .with("part-kg: 0.06", "part-kg: 0.06\n  loop: 2")
                .checkedOn(CellText.gantry());
        StepMotion closing = answer.motion().steps().get(1);

        assertThat(closing.closing()).isTrue();
        assertThat(closing.kind()).isEqualTo(StepKind.JOINT);
        assertThat(closing.durationS()).isEqualTo(0.0);
        assertThat(answer.motion().cycleTimeS()).isEqualTo(0.0);
    }

    @Test
    void noticesAWristThatWindsUp() {
        SheetText sheet = gantry(
                        "a: {x: 100, y: 100, z: 50, yaw: 0}\nb: {x: 200, y: 100, z: 50, yaw: 120}\n"
                                + "c: {x: 300, y: 100, z: 50, yaw: 240}",
                        "{move: a, speed-percent: 20}",
                        "{move: b, speed-percent: 20}",
                        "{move: c, speed-percent: 20}",
                        "wait-s: 2")
                .with("part-kg: 0.06", "part-kg: 0.06\n  loop: 3");

        CheckAnswer winding = sheet.checkedOn(CellText.gantry());
        assertThat(of(winding, Check.LOOP))
                .extracting(finding -> finding.details().says())
                .anyMatch(says -> says.contains("winds up"))
                .anyMatch(says -> says.contains("waits 2 s"));
        CheckAnswer unwinding = sheet.checkedOn(CellText.gantry().with("max: 360, speed: 360", "max: 300, speed: 360"));
        assertThat(of(unwinding, Check.LOOP))
                .extracting(finding -> finding.details().says())
                .noneMatch(says -> says.contains("winds up"));
    }

    @Test
    void goesOnFromAPointOutOfReachWithoutGuessing() {
        CheckAnswer answer = SheetText.scara()
                .with("tray-above: {x: -120, y: 200", "tray-above: {x: -1200, y: 200")
                .checkedOn(WIDE.with("[-500, 500], y: [-500, 500]", "[-5000, 5000], y: [-5000, 5000]"));

        assertThat(answer.motion().steps().get(0).durationS()).isNull();
        assertThat(answer.motion().steps().get(1).peaks()).isNull();
        assertThat(answer.motion().cycleTimeS()).isNull();
        assertThat(outcome(answer, Check.REACH)).isEqualTo("outside");
        assertThat(outcome(answer, Check.SPACE)).isEqualTo("not-checkable");
    }

    @Test
    void cannotGoThroughTheBaseAxisOfEqualLinks() {
        CellText equal = WIDE.with("links-mm: [225, 175]", "links-mm: [200, 200]")
                .with("shoulder, min: -40, max: 220", "shoulder, min: -400, max: 400")
                .with("elbow, min: -140, max: 140", "elbow, min: -180, max: 180");
        SheetText sheet = SheetText.of(
                        "a: {x: -100, y: 0, z: 60, yaw: 0, elbow: right}\nb: {x: 100, y: 0, z: 60, yaw: 0, elbow: right}",
                        "{straight: b, speed-mm-s: 10}")
                .startingAt("a");

        assertThat(outcome(sheet.checkedOn(equal), Check.AXIS_SPEED)).isEqualTo("outside");
        SheetText past =
                sheet.with("y: 0, z: 60, yaw: 0, elbow: right}\n  b", "y: 0.001, z: 60, yaw: 0, elbow: right}\n  b");
        assertThat(outcome(past.with("{x: 100, y: 0,", "{x: 100, y: 0.001,").checkedOn(equal), Check.AXIS_SPEED))
                .isEqualTo("outside");
    }
}
