package org.standclear.core.motion;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.SixAxisText;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.articulated.ArticulatedArm;
import org.standclear.core.arm.articulated.SixAxes;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.Finding;

/** Moves of six-axis arms against brute force (grade C: computed a second time), and whole programs. */
class SixAxisMotionTests {

    private static final long SEED = 20261127L;
    private static final int MOVES = Integer.getInteger("dense.moves", 12);
    private static final double PRECISE = 0.001;
    private static final double STEP = 1e-6;

    private static final ArticulatedArm LECTURE = SixAxes.lecture();

    private final Random random = new Random(SEED);

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private AxisValues axes() {
        return AxisValues.of(
                between(-170, 170),
                between(-100, 60),
                between(-150, 60),
                between(-180, 180),
                between(-110, 110),
                between(-180, 180));
    }

    /** Differences between two near instants, of places that KDL agrees with ({@code ArticulatedArmTests}). */
    @Test
    void findsThePeaksOfJointMoves() {
        Vector offset = new Vector(40, -30, 120);
        Arm arm = LECTURE;
        for (int i = 0; i < MOVES; i++) {
            AxisValues from = axes();
            AxisValues way = axes().minus(from);
            double overhang = between(0, 80);
            JointPath path = new JointPath(arm, offset, from, way);
            MoveMotion motion = new JointMotion(path, new MoveConditions(1, Double.POSITIVE_INFINITY, overhang))
                    .at(between(5, 100), between(5, 100));
            Peaks peaks = requireNonNull(motion.peaks());
            Profile profile = requireNonNull(requireNonNull(motion.trace()).held());
            double[] brute = brute(arm, from, way, offset, profile, overhang);
            assertThat(peaks.heldTool()).isCloseTo(brute[0], within(PRECISE * brute[0]));
            assertThat(peaks.heldElbow()).isCloseTo(brute[1], within(PRECISE * brute[1]));
            assertThat(peaks.heldOverhang()).isCloseTo(brute[2], within(PRECISE * brute[2]));
        }
    }

    private static double[] brute(
            Arm arm, AxisValues from, AxisValues way, Vector offset, Profile profile, double overhang) {
        double[] best = new double[3];
        for (int i = 1; i < 6000; i++) {
            double place = i / 6000.0;
            AxisValues before = from.plus(way, place - STEP);
            AxisValues after = from.plus(way, place + STEP);
            double pace = profile.speedAt(place) / (2 * STEP);
            Rotation turned = arm.toolPose(after, offset)
                    .rotation()
                    .times(arm.toolPose(before, offset).rotation().inverse());
            double tool = distance(arm, before, after, offset) * pace;
            best[0] = Math.max(best[0], tool);
            best[2] = Math.max(best[2], tool + turned.turn().length() * pace * overhang);
            // the lecture's arm has three places that move: elbow, corner of the forearm, wrist; the flange is the
            // wrist
            best[1] = Math.max(best[1], fastestEnd(before, after) * pace);
        }
        return best;
    }

    private static double distance(Arm arm, AxisValues before, AxisValues after, Vector offset) {
        return arm.toolPose(after, offset)
                .place()
                .minus(arm.toolPose(before, offset).place())
                .length();
    }

    private static double fastestEnd(AxisValues before, AxisValues after) {
        double fastest = 0;
        List<Vector> now = LECTURE.skeleton(after);
        List<Vector> then = LECTURE.skeleton(before);
        for (int end = 0; end < now.size(); end++) {
            fastest = Math.max(fastest, now.get(end).minus(then.get(end)).length());
        }
        return fastest;
    }

    private static Finding finding(CheckAnswer answer, Check check) {
        return answer.findings().stream()
                .filter(finding -> finding.details().check() == check)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void answersAProgramOfAxisValuesAndPoses() {
        CheckAnswer answer = SixAxisText.sheet().checkedOn(SixAxisText.cell());

        assertThat(answer.answer()).isEqualTo(CheckAnswer.Answer.WITHIN);
        // straight moves at 80 mm/s and 50 %, 80 mm long, 4000 mm/s2: 80/40 + 40/4000 s (text-book trapezoid)
        assertThat(answer.motion().steps().get(1).durationS()).isCloseTo(2.01, within(1e-9));
        // 30 deg on 80 mm at 40 mm/s with 25 mm of overhang
        Peaks peaks = requireNonNull(answer.motion().steps().get(1).peaks());
        assertThat(peaks.heldOverhang()).isCloseTo(40 * (1 + Math.toRadians(30) / 80 * 25), within(1e-9));
        assertThat(finding(answer, Check.MOVING_PART_SPEED).details().says()).contains("the ends of all links");
    }

    /** With all axes at 0 the wrist is straight and the tool at (525, 0, 695) points ahead; past there axes 4 and 6 race. */
    @Test
    void asksMoreOfTheForearmTheStraighterTheWristGets() {
        double far = forearm(430);
        double near = forearm(494);

        assertThat(far).isLessThan(near);
        assertThat(near).isGreaterThan(400);
    }

    /** The greatest speed that a straight move sideways at 250 mm/s asks of an axis, in deg/s. */
    private static double forearm(double x) {
        SheetText sheet = SheetText.of("""
                left: {x: %s, y: -60, z: 695, roll: 0, pitch: -90, yaw: 180, shoulder: front, elbow: up, wrist: plain}
                right: {x: %s, y: 60, z: 695, roll: 0, pitch: -90, yaw: 180, shoulder: front, elbow: up, wrist: plain}
                """.formatted(x, x), "{straight: right, speed-mm-s: 1000}")
                .startingAt("left");
        CheckAnswer answer = sheet.with("power: reduced", "power: full").checkedOn(SixAxisText.cell());
        assertThat(finding(answer, Check.REACH).outcome()).isEqualTo("within");
        return requireNonNull(answer.motion().axisUses().get(0).speed());
    }

    @Test
    void refusesAStraightMoveToAnotherPosture() {
        SheetText sheet = SixAxisText.sheet()
                .with(
                        "z: 220, roll: 180, pitch: 0, yaw: 30, shoulder: front, elbow: up, wrist: plain",
                        "z: 220, roll: 180, pitch: 0, yaw: 30, shoulder: front, elbow: up, wrist: turned");

        Finding reach = finding(sheet.checkedOn(SixAxisText.cell()), Check.REACH);

        assertThat(reach.outcome()).isEqualTo("outside");
        assertThat(reach.details().says())
                .contains(
                        "begins with shoulder front, elbow up, wrist plain and its point is named shoulder front, elbow up,"
                                + " wrist turned");
    }

    @Test
    void refusesPointsThatTheArmHasNot() {
        assertThat(SheetText.scara()
                        .read(SixAxisText.cell())
                        .badInput()
                        .orElseThrow()
                        .says())
                .contains("needs six axis values");
        assertThat(SixAxisText.sheet()
                        .read(CellText.scara())
                        .badInput()
                        .orElseThrow()
                        .says())
                .contains("is one of a six-axis arm; this cell's arm is a scara");
        assertThat(SixAxisText.sheet()
                        .with("axes: [0, 0, 0, 0, 60, 0]", "axes: [0, 0, 0, 0, 60]")
                        .read(SixAxisText.cell())
                        .badInput())
                .isPresent();
    }

    @Test
    void namesTheAxisOfSixThatLeavesItsRange() {
        Finding range = finding(
                SixAxisText.sheet()
                        .with("[0, 0, 0, 0, 60, 0]", "[0, 0, 0, 0, 121, 0]")
                        .checkedOn(SixAxisText.cell()),
                Check.AXIS_RANGE);

        assertThat(range.outcome()).isEqualTo("outside");
        assertThat(range.details().says()).contains("needs the wrist at 121 deg");
    }
}
