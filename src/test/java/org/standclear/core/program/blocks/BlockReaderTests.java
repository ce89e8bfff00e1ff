package org.standclear.core.program.blocks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.cell.Power;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Step;

/** What blocks of ISO 6983 are taken for, and what is not understood or refused. */
class BlockReaderTests {

    private static MotionPlan plan(String... lines) {
        return new BlockReader().read(String.join("\n", lines) + "\n").value();
    }

    private static String refusal(String... lines) {
        return new BlockReader()
                .read(String.join("\n", lines) + "\n")
                .badInput()
                .orElseThrow()
                .sentence();
    }

    private static Vector place(MotionPlan plan, int step) {
        return ((Step.Moving) plan.steps().get(step - 1)).target().pose().place();
    }

    private static double speed(MotionPlan plan, int step) {
        return ((Step.Paced) plan.steps().get(step - 1)).speedMmS();
    }

    @Test
    void readsMovesWithTheirLinesAndNames() {
        MotionPlan plan = plan("(plate)", "G21 G90", "N10 G0 X0 Y10 Z20 C30", "G1 X60 F1200 ; on", "Y0", "M2");
        assertThat(plan.reader()).isEqualTo("iso-6983");
        assertThat(plan.steps()).hasSize(3);
        assertThat(plan.steps().get(0))
                .isEqualTo(new Step.Joint(1, 3, plan.point("N10").orElseThrow(), 100, 100));
        assertThat(plan.steps().get(1))
                .isEqualTo(new Step.Straight(2, 4, plan.point("line 4").orElseThrow(), 20, 100));
        assertThat(place(plan, 3)).isEqualTo(new Vector(60, 0, 20));
        assertThat(plan.coverage()).isEqualTo(new MotionPlan.Coverage(5, 5, List.of()));
    }

    /** 1 inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
    @Test
    void readsInches() {
        MotionPlan plan = plan("G20", "G0 X1 Y2 Z.5", "G1 X2 F60");
        assertThat(place(plan, 1)).isEqualTo(new Vector(25.4, 50.8, 12.7));
        assertThat(speed(plan, 2)).isEqualTo(25.4);
    }

    @Test
    void asksForTheFeedAnewAfterAChangeOfUnits() {
        assertThat(refusal("G0 X0 Y0 Z0", "G1 X1 F60", "G20", "G1 X2")).startsWith("line 4: no F");
    }

    @Test
    void readsIncrements() {
        MotionPlan plan = plan("G0 X10 Y10 Z10", "G91 X5 Z-2", "G90 X1");
        assertThat(place(plan, 2)).isEqualTo(new Vector(15, 10, 8));
        assertThat(place(plan, 3)).isEqualTo(new Vector(1, 10, 8));
    }

    @Test
    void statesHowItTookADwell() {
        MotionPlan plan = plan("G0 X0 Y0 Z0", "G4 P500", "G4 X1.5");
        assertThat(plan.steps().subList(1, 3)).containsExactly(new Step.Wait(2, 2, 0.5), new Step.Wait(3, 3, 1.5));
        assertThat(plan.notes())
                .extracting(MotionPlan.Note::says)
                .satisfiesExactly(
                        p -> assertThat(p).contains("P as milliseconds"),
                        x -> assertThat(x).contains("X as seconds"));
    }

    /**
     * NIST IR 6556, The NIST RS274/NGC Interpreter - Version 3 (2000), 3.5.3.2, from memory: with "G17 G2 x 10 y 16 i 3 j 4 z 9" from
     * X 7, Y 7 the centre is at X 10, Y 11 and the radius is 5; a helix when Z is not 9 before.
     */
    @Test
    void readsThePublishedHelix() {
        MotionPlan plan = plan("G0 X7 Y7 Z4", "G17 G2 x 10 y 16 i 3 j 4 z 9 F600");
        Step.Arc arc = (Step.Arc) plan.steps().get(1);
        assertThat(arc.round()).isEqualTo(new Step.Round(10, 11, true));
        assertThat(arc.target().pose().place()).isEqualTo(new Vector(10, 16, 9));
        assertThat(arc.speedMmS()).isEqualTo(10);
    }

    /**
     * Worked by hand: on the circle of radius 5 about the origin lie (5, 0) and (3, 4); the other circle of radius 5
     * through both has its centre at (8, 4). R above 0 is the shorter arc, R below 0 the longer.
     */
    @ParameterizedTest
    @CsvSource({"G3, 5, 0, 0", "G3, -5, 8, 4", "G2, 5, 8, 4", "G2, -5, 0, 0"})
    void findsTheCentreByRadius(String g, double r, double x, double y) {
        MotionPlan plan = plan("G0 X5 Y0 Z0", g + " X3 Y4 R" + r + " F60");
        Step.Round round = ((Step.Arc) plan.steps().get(1)).round();
        assertThat(new double[] {round.centreX(), round.centreY()})
                .containsExactly(new double[] {x, y}, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(round.clockwise()).isEqualTo(g.equals("G2"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G18",
                "G41",
                "M3",
                "T1",
                "S500",
                "G1 X1 X2 F60",
                "G0 G1 X1",
                "X1.2.3",
                "X",
                "G1.5 X1",
                "#1=2",
                "%",
                "O100",
                "/G0 X1",
                "G2 X3 Y0 I1 R2 F60",
                "G1 X1 R2 F60",
                "G4",
                "G4 P1 X1",
                "G4 P1 F60",
                "X1 P1",
                "G0 X1 (open",
                "G0 C181",
                "G0 C-180",
                "M2 M30",
                "G0 X0x",
                "G28",
                "G0 XNaN",
                "G0 X1e5",
                "G0 X0x10"
            })
    void listsWhatItDoesNotUnderstand(String line) {
        MotionPlan plan = plan("G0 X0 Y0 Z0", line, "G0 X2");
        assertThat(plan.coverage().notUnderstood()).containsExactly(2);
        assertThat(plan.steps()).hasSize(2);
    }

    @Test
    void understandsNothingAfterTheEnd() {
        assertThat(plan("G0 X0 Y0 Z0", "M30", "(over)", "G0 X1").coverage().notUnderstood())
                .containsExactly(4);
    }

    @ParameterizedTest
    @CsvSource({
        "G1 X1, no F",
        "G1 X1 F0, F is 0",
        "G1 X1 F-5, F is -5",
        "G0 X2000000, X is",
        "G20 X50000, X leads beyond",
        "G2 X1 Y1 F60, neither",
        "G2 X1 Y1 I0 J0 F60, no radius",
        "G2 X1 Y1 I5 J0 F60, begins 5 mm",
        "G2 X10 Y0 R4.9 F60, too small",
        "G2 X0 Y0 R4 F60, has to end elsewhere",
        "G4 P-1, below 0"
    })
    void refusesContradictions(String line, String why) {
        assertThat(refusal("G0 X0 Y0 Z0", line)).startsWith("line 2: ").contains(why);
    }

    @ParameterizedTest
    @ValueSource(strings = {"G0 X1", "G91 G0 X1 Y1 Z1", "G0 Z100"})
    void needsAPlaceToBeginFrom(String first) {
        assertThat(refusal(first)).startsWith("line 1: nothing says where");
        assertThat(plan("; declaration", "; start: park", "; end declaration", "(point park X1 Y2 Z3 C4)", first)
                        .steps())
                .hasSize(1);
    }

    @Test
    void readsTheDeclarationInBrackets() {
        MotionPlan plan = plan(
                "( declaration )",
                "( power: reduced )",
                "( start: park )",
                "( end declaration )",
                "( point park X0 Y0 Z100 )",
                "G0 X1");
        assertThat(plan.stated()).hasSize(1);
        assertThat(plan.stated().get(0).values().power()).isEqualTo(Power.REDUCED);
        assertThat(place(plan, 1)).isEqualTo(new Vector(1, 0, 100));
    }

    @Test
    void refusesAStartThatIsNoPoint() {
        assertThat(refusal("; declaration", "; start: park", "; end declaration", "G0 X1 Y1 Z1"))
                .startsWith("line 2: start names \"park\"");
    }
}
