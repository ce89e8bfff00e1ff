package org.standclear.core.timeline;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.geometry.Vector;

class TimelineTests {

    private static final double ROUNDING = 1e-6;

    private static CheckAnswer answer() {
        return SheetText.scara().checkedOn(CellText.scara());
    }

    private static AxisValues axes(Moment moment) {
        return requireNonNull(moment.axes());
    }

    private static Vector tool(Moment moment) {
        return requireNonNull(moment.tool());
    }

    @Test
    void stepsFollowOneAnotherAndTakeWhatTheAnswerSays() {
        Timeline timeline = Timeline.held(answer().motion(), 100);

        assertThat(timeline.spans()).hasSize(4);
        assertThat(timeline.seconds()).isCloseTo(answer().motion().cycleTimeS(), within(ROUNDING));
        assertThat(timeline.spanAt(0).name()).isEqualTo("1");
        Span wait = timeline.spans().get(2);
        assertThat(wait.seconds()).isCloseTo(0.5, within(ROUNDING));
        assertThat(timeline.spanAt((wait.from() + wait.until()) / 2)).isEqualTo(wait);
        assertThat(timeline.spanAt(timeline.seconds() + 1).index()).isEqualTo(3);
    }

    @Test
    void theToolPointIsWhereTheAxesBringIt() {
        CheckAnswer answer = answer();
        CellDescription cell = answer.program().cell();
        Vector offset = cell.fittedTool().offset();
        Timeline timeline = Timeline.held(answer.motion(), 100);

        for (int i = 0; i <= 200; i++) {
            Moment moment = timeline.at(timeline.seconds() * i / 200);
            Vector tool = cell.arm().toolPose(axes(moment), offset).place();
            List<Vector> outline = cell.arm().outline(axes(moment), offset);
            assertThat(tool.minus(tool(moment)).length()).isLessThan(ROUNDING);
            assertThat(outline.get(outline.size() - 1).minus(tool).length()).isLessThan(ROUNDING);
            // links keep their lengths, 225 and 175 mm as the cell file says
            assertThat(outline.get(1).minus(outline.get(0)).length()).isCloseTo(225, within(ROUNDING));
            assertThat(outline.get(2).minus(outline.get(1)).length()).isCloseTo(175, within(ROUNDING));
        }
    }

    /** Speed is the change of place over time, whatever formula it came from: compared with a difference quotient. */
    @Test
    void speedsAreThoseOfTheMovingPlace() {
        Timeline timeline = Timeline.held(answer().motion(), 100);
        double tiny = 1e-5;

        for (Span span : timeline.spans()) {
            for (int i = 1; i < 20 && span.profile() != null; i++) {
                double at = span.from() + span.seconds() * i / 20;
                Vector before = tool(timeline.at(span, at - tiny));
                Vector after = tool(timeline.at(span, at + tiny));
                double speed = after.minus(before).length() / (2 * tiny);
                assertThat(timeline.at(span, at).toolSpeedMmS()).isCloseTo(speed, within(0.05));
                double shoulder = (axes(timeline.at(span, at + tiny)).get(0)
                                - axes(timeline.at(span, at - tiny)).get(0))
                        / (2 * tiny);
                assertThat(requireNonNull(timeline.at(span, at).rates()).get(0)).isCloseTo(shoulder, within(0.05));
            }
        }
    }

    @Test
    void aFirstMoveFromAnUnknownPlaceTakesNoTimeAndStandsWhereItEnds() {
        CheckAnswer answer = SheetText.scara().without("start: home").checkedOn(CellText.scara());
        Timeline timeline = Timeline.held(answer.motion(), 100);
        Moment first = timeline.at(timeline.spans().get(0), 0);

        assertThat(timeline.spans().get(0).isUnknown()).isTrue();
        assertThat(timeline.spans().get(0).seconds()).isZero();
        assertThat(tool(first).minus(new Vector(-120, 200, 80)).length()).isLessThan(ROUNDING);
    }

    @Test
    void leavesOutWhatIsTooMuch() {
        Timeline timeline = Timeline.fullPower(answer().motion(), 2);

        assertThat(timeline.isWhole()).isFalse();
        assertThat(timeline.spans()).hasSize(2);
    }
}
