package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.of;
import static org.standclear.core.Outcomes.outcome;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckAnswer.Answer;

/** What is missing is never taken for kept: a third answer, which blocks like outside. */
class MissingInputTests {

    @ParameterizedTest
    @CsvSource({
        "power: reduced, POWER_MODE",
        "override-percent, OVERRIDE",
        "tool: G-02, TOOL_FITTED",
        "part-kg, PAYLOAD",
        "start: home, START"
    })
    void answersNotCheckable(String line, Check check) {
        CellText cell = CellText.scara()
                .with("tool-speed-mm-s: 250", "tool-speed-mm-s: 9000")
                .with("override-percent: 50", "override-percent: 100");
        CheckAnswer answer = SheetText.scara().without(line).checkedOn(cell);

        assertThat(outcome(answer, check)).isEqualTo("not-checkable");
        assertThat(answer.answer()).isEqualTo(Answer.NOT_CHECKABLE);
    }

    @Test
    void computesWithTheWorstWhenItIsNotDeclared() {
        CheckAnswer declared = SheetText.scara().checkedOn(CellText.scara());
        CheckAnswer noPower = SheetText.scara().without("power: reduced").checkedOn(CellText.scara());
        CheckAnswer noOverride = SheetText.scara().without("override-percent").checkedOn(CellText.scara());

        assertThat(noPower.figures().toolPeakMmS()).isEqualTo(declared.figures().fullPowerPeakMmS());
        assertThat(noOverride.figures().fullPowerPeakMmS())
                .isGreaterThan(noPower.figures().knownFullPowerPeakMmS());
    }

    @Test
    void lacksTheSpeedOfAnAxis() {
        CellText cell = CellText.scara().with("max: 360, speed: 1200, acceleration", "max: 360, acceleration");
        CheckAnswer answer = SheetText.scara().checkedOn(cell);

        assertThat(answer.answer()).isEqualTo(Answer.NOT_CHECKABLE);
        assertThat(outcome(answer, Check.TOOL_SPEED)).isEqualTo("not-checkable");
        assertThat(details(answer, Check.TOOL_SPEED).says()).contains("no speed of the axis wrist");
        assertThat(answer.motion().cycleTimeS()).isNull();
        // the straight move goes down only: the wrist stands
        assertThat(outcome(answer, Check.AXIS_SPEED)).isEqualTo("within");
        // the way is known though its time is not
        assertThat(outcome(answer, Check.SPACE)).isEqualTo("within");
    }

    @Test
    void needsNoSpeedOfAnAxisThatStands() {
        CellText cell = CellText.gantry().with("max: 360, speed: 360, acceleration", "max: 360, acceleration");
        SheetText sheet = SheetText.of(
                        "a: {x: 20, y: 100, z: 50, yaw: 0}\nb: {x: 320, y: 100, z: 50, yaw: 0}\n"
                                + "c: {x: 320, y: 200, z: 50, yaw: 90}",
                        "{move: b, speed-percent: 40}")
                .startingAt("a")
                .with("tool: G-02", "tool: V-02");

        assertThat(sheet.checkedOn(cell).answer()).isEqualTo(Answer.WITHIN);
        CheckAnswer turning = sheet.with("{move: b, speed-percent: 40}", "{straight: c, speed-mm-s: 100}")
                .checkedOn(cell);
        assertThat(outcome(turning, Check.AXIS_SPEED)).isEqualTo("not-checkable");
        assertThat(outcome(turning, Check.TOOL_SPEED)).isEqualTo("within");
    }

    @Test
    void lacksAPayloadLimit() {
        CheckAnswer ofCell = SheetText.scara().checkedOn(CellText.scara().without("payload-kg: 1.0"));
        CheckAnswer ofArm = SheetText.scara().checkedOn(CellText.scara().without("rated-payload-kg"));

        assertThat(outcome(ofCell, Check.PAYLOAD)).isEqualTo("not-checkable");
        assertThat(outcome(ofArm, Check.PAYLOAD)).isEqualTo("not-checkable");
    }

    @Test
    void isOutsideWhenWhatIsKnownIsOutsideAlready() {
        CellText heavyTool = CellText.scara().with("mass-kg: 0.42", "mass-kg: 1.2");
        assertThat(outcome(SheetText.scara().without("part-kg").checkedOn(heavyTool), Check.PAYLOAD))
                .isEqualTo("outside");

        CellText slow = CellText.scara().with("tool-speed-mm-s: 250", "tool-speed-mm-s: 20");
        SheetText reachesNowhere =
                SheetText.scara().with("tray: {x: -120, y: 200, z: 20", "tray: {x: -1200, y: 200, z: 20");
        assertThat(outcome(reachesNowhere.checkedOn(slow), Check.TOOL_SPEED)).isEqualTo("outside");
    }

    @Test
    void noticesLimitsThatAreNotSet() {
        CellText bare = CellText.scara()
                .without("moving-part-speed-mm-s")
                .without("space:")
                .without("keep-out")
                .without("camera post")
                .without("contact:")
                .without("separation:");
        CheckAnswer answer = SheetText.scara().checkedOn(bare);

        for (Check check :
                new Check[] {Check.MOVING_PART_SPEED, Check.SPACE, Check.KEEP_OUT, Check.CONTACT, Check.SEPARATION}) {
            assertThat(outcome(answer, check)).as(check.word()).isEqualTo("notice");
            assertThat(details(answer, check).says()).contains("No limit set");
        }
        assertThat(answer.answer()).isEqualTo(Answer.WITHIN);
        assertThat(answer.figures().separationMm()).isNull();
    }

    @Test
    void answersOnTheRestWithoutAStart() {
        CheckAnswer answer = SheetText.scara().without("start: home").checkedOn(CellText.scara());

        assertThat(answer.motion().steps().get(0).durationS()).isEqualTo(0.0);
        assertThat(answer.motion().steps().get(0).peaks()).isNull();
        assertThat(answer.figures().toolPeakMmS()).isEqualTo(40.0);
        assertThat(outcome(answer, Check.TOOL_SPEED)).isEqualTo("within");
        assertThat(details(answer, Check.START).line()).isEqualTo(14);
    }

    @Test
    void hasNoRestWhenOnlyTheFirstMoveIsThere() {
        CheckAnswer answer = SheetText.of("a: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}", "move: a")
                .checkedOn(CellText.scara());

        assertThat(outcome(answer, Check.TOOL_SPEED)).isEqualTo("not-checkable");
        assertThat(answer.figures().toolPeakMmS()).isNull();
        assertThat(outcome(answer, Check.SPACE)).isEqualTo("within");
    }

    @Test
    void needsNoStartForAProgramThatStands() {
        CheckAnswer answer = SheetText.of("a: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}", "wait-s: 3", "do: blink")
                .checkedOn(CellText.scara());

        assertThat(answer.answer()).isEqualTo(Answer.WITHIN);
        assertThat(answer.motion().cycleTimeS()).isEqualTo(3.0);
        assertThat(of(answer, Check.UNUSED_POINTS)).hasSize(1);
    }
}
