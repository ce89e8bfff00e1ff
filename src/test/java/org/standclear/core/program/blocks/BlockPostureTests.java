package org.standclear.core.program.blocks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.SixAxisText;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.geometry.Vector;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Step;
import org.standclear.core.text.Reading;

/** In which posture the points of a program in blocks are reached, which the standard has no words for. */
class BlockPostureTests {

    private static final String DECLARATION = """
            ; declaration
            ; power: reduced
            ; override-percent: 50
            ; max-tool-speed-mm-s: 200
            ; tool: G-02
            ; part-kg: 0.06
            ; start: home
            ; end declaration
            """;

    private static Reading<MotionPlan> read(String... lines) {
        return new BlockReader().read(String.join("\n", lines) + "\n");
    }

    private static List<Branch> branches(String... lines) {
        return read(lines).value().steps().stream()
                .map(step -> ((Step.Moving) step).target().branch())
                .toList();
    }

    private static String refusal(String... lines) {
        return read(lines).badInput().orElseThrow().sentence();
    }

    @Test
    void staysInForceUntilAnotherComes() {
        assertThat(branches(
                        "(posture elbow right)",
                        "G0 X1 Y2 Z3",
                        "X2",
                        "; Posture elbow left",
                        "X3",
                        "(a comment about posture)",
                        "X4"))
                .containsExactly(Elbow.RIGHT, Elbow.RIGHT, Elbow.LEFT, Elbow.LEFT);
    }

    static List<Posture> postures() {
        return Posture.ALL;
    }

    @ParameterizedTest
    @MethodSource("postures")
    void tellsEachOfTheEightPostures(Posture posture) {
        MotionPlan plan = read(
                        "(posture " + posture.words().toUpperCase(Locale.ROOT) + ", pitch -5 roll 180)",
                        "G0 X1 Y2 Z3 C4")
                .value();
        Step.Moving move = (Step.Moving) plan.steps().get(0);

        assertThat(move.target().branch()).isEqualTo(posture);
        assertThat(move.target().pose()).isEqualTo(new ToolPose(new Vector(1, 2, 3), 4, -5, 180));
    }

    @Test
    void takesThePostureOfANamedPointFromItOrFromBefore() {
        MotionPlan plan = read(
                        "(posture elbow right)",
                        "(point near X0 Y1 Z2)",
                        "(point far X0 Y1 Z2 C3 elbow left)",
                        "G0 X1 Y2 Z3")
                .value();
        assertThat(plan.point("near").orElseThrow().branch()).isEqualTo(Elbow.RIGHT);
        assertThat(plan.point("far").orElseThrow().branch()).isEqualTo(Elbow.LEFT);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(posture)",
                "(posture elbow)",
                "(posture elbow rigth)",
                "(posture elbow right elbow left)",
                "(posture elbow right, hand open)",
                "(posture shoulder front)",
                "(posture shoulder front, elbow right, wrist plain)",
                "(posture shoulder front, elbow up, wrist plain, roll x)",
                "(posture shoulder front, elbow up, wrist plain, roll 2000000)",
                "(point p X1 Y1 Z1 elbow up)"
            })
    void refusesAPostureThatIsNone(String comment) {
        assertThat(refusal("G21", comment, "G0 X1 Y2 Z3")).startsWith("line 2: the posture ");
    }

    /** Nobody reads it there: what follows would be taken for another side than the one that is meant. */
    @ParameterizedTest
    @ValueSource(strings = {"X2 (posture elbow left)", "X2 ; posture elbow left", "(posture elbow left) X2"})
    void doesNotUnderstandAPostureBesideABlock(String line) {
        MotionPlan plan = read("(posture elbow right)", "G0 X1 Y2 Z3", line).value();
        assertThat(plan.coverage().notUnderstood()).containsExactly(3);
    }

    private static Reading<CheckAnswer> checked(CellText cell, String program) {
        return ProgramCheck.check(new CheckRequest(
                cell.cell(),
                new ProgramFile(program, "0".repeat(64)),
                new BlockReader(),
                null,
                CourseLimits.NONE,
                ContactTableReader.shipped()));
    }

    @Test
    void movesAScaraAsTheSheetDoes() {
        CheckAnswer blocks = checked(CellText.scara(), DECLARATION + """
                        (point home X-120 Y200 Z80 C0 elbow right)
                        (posture elbow right)
                        G1 X-120 Y200 Z20 F4800
                        G1 X100 Y250 C30 F3000
                        """).value();
        CheckAnswer sheet = SheetText.of("""
                        home: {x: -120, y: 200, z: 80, yaw: 0, elbow: right}
                        low: {x: -120, y: 200, z: 20, yaw: 0, elbow: right}
                        over: {x: 100, y: 250, z: 20, yaw: 30, elbow: right}
                        """, "{straight: low, speed-mm-s: 80}", "{straight: over, speed-mm-s: 50}")
                .startingAt("home")
                .checkedOn(CellText.scara());
        sameMotion(blocks, sheet);
    }

    private static void sameMotion(CheckAnswer a, CheckAnswer b) {
        assertThat(a.motion().steps())
                .hasSize(b.motion().steps().size())
                .allMatch(step -> step.peaks() != null)
                .extracting(step -> step.peaks())
                .isEqualTo(b.motion().steps().stream().map(step -> step.peaks()).toList());
    }

    @Test
    void movesSixAxesAsTheSheetDoes() {
        CheckAnswer blocks = checked(SixAxisText.cell(), DECLARATION + """
                        (posture shoulder front, elbow up, wrist plain, pitch 0, roll 180)
                        (point home X400 Y-100 Z300 C0)
                        G1 Z220 C30 F4800
                        G1 Z300 C0
                        """).value();
        CheckAnswer sheet = SheetText.of("""
                        home: {x: 400, y: -100, z: 300, roll: 180, pitch: 0, yaw: 0, shoulder: front, elbow: up, wrist: plain}
                        low: {x: 400, y: -100, z: 220, roll: 180, pitch: 0, yaw: 30, shoulder: front, elbow: up, wrist: plain}
                        """, "{straight: low, speed-mm-s: 80}", "{straight: home, speed-mm-s: 80}")
                .startingAt("home")
                .checkedOn(SixAxisText.cell());
        sameMotion(blocks, sheet);
    }

    /** The tool hangs all the way round the circle, 2 pi 50 mm at 40 mm/s and 4000 mm/s2 (text-book trapezoid). */
    @Test
    void goesRoundWithAToolThatHangs() {
        CheckAnswer round = checked(SixAxisText.cell(), DECLARATION + """
                        (posture shoulder front, elbow up, wrist plain, pitch 0, roll 180)
                        (point home X400 Y-100 Z300 C0)
                        G2 X400 Y-100 I50 J0 F4800
                        """).value();
        assertThat(round.answer()).isEqualTo(CheckAnswer.Answer.WITHIN);
        assertThat(round.motion().steps().get(0).durationS()).isCloseTo(Math.PI * 100 / 40 + 40.0 / 4000, within(1e-9));
    }

    @Test
    void refusesAnArcThatTilts() {
        assertThat(refusal(
                        "(posture shoulder front, elbow up, wrist plain, roll 180)",
                        "G0 X1 Y2 Z3",
                        "(posture shoulder front, elbow up, wrist plain, roll 170)",
                        "G2 X2 Y2 R20 F100"))
                .startsWith("line 4: the arc would change pitch or roll");
    }

    @ParameterizedTest
    @CsvSource({"false, (posture elbow right)", "true, '(posture shoulder front, elbow up'"})
    void saysHowBlocksSayIt(boolean sixAxes, String example) {
        CellText cell = sixAxes ? SixAxisText.cell() : CellText.scara();
        assertThat(checked(cell, "G0 X1 Y200 Z3\n").badInput().orElseThrow().sentence())
                .startsWith("line 1: the point \"line 1\" ")
                .contains(example);
    }
}
