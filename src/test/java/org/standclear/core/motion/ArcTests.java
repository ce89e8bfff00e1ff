package org.standclear.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.standclear.core.CellText;
import org.standclear.core.Outcomes;
import org.standclear.core.arm.ToolArc;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.geometry.Vector;
import org.standclear.core.limits.Check;
import org.standclear.core.program.blocks.BlockReader;

/** Arcs along their whole way: lengths, times, speeds, space, keep-out boxes, reach. */
class ArcTests {

    private static final double EXACT = 1e-9;

    private static final String DECLARED = """
            ; declaration
            ; power: reduced
            ; override-percent: 50
            ; max-tool-speed-mm-s: 300
            ; tool: V-02
            ; part-kg: 0.05
            ; start: N1
            ; end declaration
            N1 G0 X300 Y100 Z50 C0
            """;

    private static CheckAnswer answer(CellText cell, String... lines) {
        String text = DECLARED + String.join("\n", lines) + "\n";
        ProgramFile file = ProgramFile.of(text.getBytes(StandardCharsets.UTF_8)).value();
        return ProgramCheck.check(CheckRequest.of(cell.cell(), file).readBy(new BlockReader()))
                .value();
    }

    private static Peaks peaks(StepMotion step) {
        return Objects.requireNonNull(step.peaks());
    }

    private static ToolPath way(StepMotion step) {
        return Objects.requireNonNull(step.trace()).path();
    }

    /**
     * Worked by hand. Half a circle of radius 100: length 100 pi mm. F12000 is 200 mm/s, at 50 % 100 mm/s; the straight
     * acceleration is 2000 mm/s2: 0.05 s and 2.5 mm a ramp, so it takes 100 pi / 100 + 0.05 s.
     */
    @Test
    void goesATrapezoidAlongItsLength() {
        CheckAnswer answer = answer(CellText.gantry(), "G3 X300 Y300 I0 J100 F12000");
        StepMotion arc = answer.motion().steps().get(1);
        assertThat(arc.kind()).isEqualTo(StepKind.ARC);
        assertThat(arc.durationS()).isCloseTo(Math.PI + 0.05, within(EXACT));
        assertThat(peaks(arc).heldTool()).isCloseTo(100, within(EXACT));
        assertThat(way(arc).length()).isCloseTo(100 * Math.PI, within(EXACT));
        assertThat(answer.answer()).isEqualTo(CheckAnswer.Answer.WITHIN);
    }

    /** Reduced power of 250 mm/s at 50 % holds 125 mm/s; F18000 is 300 mm/s, at 50 % 150 mm/s in full power. */
    @Test
    void isHeldByReducedPower() {
        StepMotion arc = answer(CellText.gantry(), "G2 X300 Y300 I0 J100 F18000")
                .motion()
                .steps()
                .get(1);
        assertThat(peaks(arc).heldTool()).isCloseTo(125, within(EXACT));
        assertThat(peaks(arc).fullPowerTool()).isCloseTo(150, within(EXACT));
    }

    /** A whole circle of radius 30 that climbs 40 mm: sqrt((60 pi)^2 + 40^2) mm. */
    @Test
    void climbsAHelix() {
        StepMotion arc = answer(CellText.gantry(), "G3 X300 Y100 Z90 I30 F6000")
                .motion()
                .steps()
                .get(1);
        assertThat(way(arc).length()).isCloseTo(Math.sqrt(3600 * Math.PI * Math.PI + 1600), within(EXACT));
        assertThat(way(arc).at(way(arc).length() / 2))
                .satisfies(there -> assertThat(
                                there.minus(new Vector(360, 100, 70)).length())
                        .isLessThan(EXACT));
    }

    /** The ends lie in the space, the top of the arc (y = 250 + 200) 50 mm beyond y 400. */
    @Test
    void leavesTheSpaceOnItsWay() {
        CheckAnswer answer = answer(CellText.gantry(), "G1 X100 Y250 F6000", "G2 X500 Y250 I200 F6000");
        assertThat(Outcomes.outcome(answer, Check.SPACE)).isEqualTo("outside");
        assertThat(Outcomes.details(answer, Check.SPACE).observed()).isCloseTo(450, within(1e-6));
        assertThat(Outcomes.details(answer, Check.SPACE).step()).isEqualTo(3);
    }

    /** The box (180..220, 300..340, 0..400); the arc's top is at y = 280, x = 200: 20 mm before it, overhang 25. */
    @Test
    void comesTooNearToAKeepOutBox() {
        String[] near = {"G1 X100 Y180 F6000", "G2 X300 Y180 I100 F6000"};
        assertThat(Outcomes.details(answer(CellText.gantry(), near), Check.KEEP_OUT)
                        .observed())
                .isCloseTo(20, within(1e-6));
        String[] clear = {"G1 X100 Y174 F6000", "G2 X300 Y174 I100 F6000"};
        assertThat(Outcomes.outcome(answer(CellText.gantry(), clear), Check.KEEP_OUT))
                .isEqualTo("within");
    }

    /** The circle of radius 150 about (300, 100) reaches y = -50; the axis y ends at 0. */
    @Test
    void takesAnAxisOutOfItsRangeOnItsWay() {
        CheckAnswer answer = answer(CellText.gantry(), "G1 X150 Y100 F6000", "G3 X450 Y100 I150 F6000");
        assertThat(Outcomes.outcome(answer, Check.AXIS_RANGE)).isEqualTo("outside");
        assertThat(Outcomes.details(answer, Check.AXIS_RANGE).observed()).isCloseTo(-50, within(1e-6));
    }

    @Test
    void cannotCloseALoopThatBeginsWithAnArc() {
        String text = DECLARED.replace("N1 G0 X300 Y100 Z50 C0", "(point park X300 Y100 Z50)")
                .replace("start: N1", "loop: 3\n; start: park");
        ProgramFile file = ProgramFile.of(
                        (text + "G3 X300 Y300 J100 F6000\nG1 X400 Y200 F6000\n").getBytes(StandardCharsets.UTF_8))
                .value();
        CheckAnswer answer = ProgramCheck.check(
                        CheckRequest.of(CellText.gantry().cell(), file).readBy(new BlockReader()))
                .value();
        // from (400, 200), as far from the centre (300, 200) as the end is, the arc goes a quarter round
        assertThat(way(answer.motion().steps().get(2)).length()).isCloseTo(50 * Math.PI, within(EXACT));
        ProgramFile other = ProgramFile.of(
                        (text + "G3 X300 Y300 J100 F6000\nG1 X350 Y200 F6000\n").getBytes(StandardCharsets.UTF_8))
                .value();
        CheckAnswer apart = ProgramCheck.check(
                        CheckRequest.of(CellText.gantry().cell(), other).readBy(new BlockReader()))
                .value();
        assertThat(Outcomes.outcome(apart, Check.REACH)).isEqualTo("outside");
    }

    /** The direction is the difference quotient of the way, and has length 1. */
    @Test
    void directionIsTheChangeOfPlace() {
        Random random = new Random(20261127);
        for (int i = 0; i < 1000; i++) {
            double radius = 1 + 200 * random.nextDouble();
            double first = random.nextDouble() * 2 * Math.PI;
            double sweep = (random.nextDouble() - 0.5) * 700;
            double last = first + Math.toRadians(sweep);
            ToolArc arc = new ToolArc(
                    new ToolPose(new Vector(radius * Math.cos(first), radius * Math.sin(first), 0), 0),
                    new Vector(radius * Math.cos(last), radius * Math.sin(last), 50 * random.nextDouble()),
                    0,
                    0,
                    sweep,
                    90);
            double mm = arc.length() * (0.01 + 0.98 * random.nextDouble());
            double h = 1e-5 * radius;
            Vector quotient = arc.at(mm + h).place().minus(arc.at(mm - h).place());
            Vector scaled = new Vector(quotient.x() / (2 * h), quotient.y() / (2 * h), quotient.z() / (2 * h));
            assertThat(scaled.minus(arc.direction(mm)).length())
                    .as("seed 20261127, arc %d", i)
                    .isLessThan(1e-6);
            assertThat(arc.direction(mm).length()).isCloseTo(1, within(1e-9));
        }
    }
}
