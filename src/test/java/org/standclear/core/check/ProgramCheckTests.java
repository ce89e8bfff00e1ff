package org.standclear.core.check;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.outcome;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.check.CheckAnswer.Answer;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.LimitSource;

class ProgramCheckTests {

    private static CheckAnswer underCourse(CourseLimits course) {
        return ProgramCheck.check(CheckRequest.of(
                                CellText.scara().cell(), SheetText.scara().file())
                        .under(course))
                .value();
    }

    @Test
    void answersWithinLimits() {
        CheckAnswer answer = SheetText.scara().checkedOn(CellText.scara());

        assertThat(answer.answer()).isEqualTo(Answer.WITHIN);
        assertThat(answer.blocking()).isEmpty();
        assertThat(answer.ruleSet()).isEqualTo(RuleSet.CURRENT);
        assertThat(answer.findings())
                .extracting(finding -> finding.details().check())
                .containsOnlyOnce(Check.values()[0])
                .contains(Check.TOOL_SPEED, Check.SEPARATION, Check.COVERAGE);
        assertThat(answer.findings())
                .allSatisfy(finding ->
                        assertThat(finding.details().says()).isNotBlank().endsWith("."));
    }

    @Test
    void takesTheSmallerOfCellAndCourse() {
        CheckAnswer course = underCourse(new CourseLimits(40.0, 100.0));

        assertThat(course.overrideLimit()).isEqualTo(new LimitInForce(40, LimitSource.COURSE));
        assertThat(course.toolSpeedLimit()).isEqualTo(new LimitInForce(100, LimitSource.COURSE));
        assertThat(outcome(course, Check.OVERRIDE)).isEqualTo("outside");
        assertThat(outcome(course, Check.TOOL_SPEED)).isEqualTo("outside");
        assertThat(details(course, Check.TOOL_SPEED).limitFrom()).isEqualTo(LimitSource.COURSE);
        assertThat(details(course, Check.TOOL_SPEED).says()).contains("100 mm/s is the limit of the course");

        CheckAnswer cell = underCourse(new CourseLimits(50.0, 300.0));
        assertThat(cell.overrideLimit()).isEqualTo(new LimitInForce(50, LimitSource.CELL));
        assertThat(cell.toolSpeedLimit()).isEqualTo(new LimitInForce(250, LimitSource.CELL));
        assertThat(cell.answer()).isEqualTo(Answer.WITHIN);
    }

    @Test
    void takesNoCourseLimitThatIsNone() {
        assertThatThrownBy(() -> new CourseLimits(Double.NaN, null)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CourseLimits(0.0, null)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CourseLimits(null, -1.0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void isOutsideRatherThanNotCheckable() {
        CheckAnswer answer = SheetText.scara()
                .without("part-kg")
                .with("override-percent: 50", "override-percent: 60")
                .checkedOn(CellText.scara());

        assertThat(answer.answer()).isEqualTo(Answer.OUTSIDE);
        assertThat(answer.blocking()).hasSize(2);
    }

    @Test
    void keepsCautionsForTheReleaseCard() {
        CheckAnswer answer = SheetText.scara()
                .checkedOn(CellText.scara().with("moving-part-speed-mm-s: 250", "moving-part-speed-mm-s: 100"));

        assertThat(answer.answer()).isEqualTo(Answer.WITHIN);
        assertThat(answer.cautions()).hasSize(1);
        assertThat(answer.cautions().get(0)).contains("100 mm/s is the limit of the cell for moving parts");
    }

    @Test
    void refusesPointsThatDoNotFitTheArm() {
        SheetText sideless = SheetText.scara()
                .with("tray: {x: -120, y: 200, z: 20, yaw: 0, elbow: right}", "tray: {x: -120, y: 200, z: 20, yaw: 0}");

        assertThat(sideless.read(CellText.scara()).badInput().orElseThrow().sentence())
                .isEqualTo("line 12: the point \"tray\" names no side of the elbow; write elbow: left or elbow: right");
        assertThat(SheetText.scara()
                        .read(CellText.gantry())
                        .badInput()
                        .orElseThrow()
                        .says())
                .contains("a gantry has none");
    }

    @Test
    void writesTheAnswerAsADocument() {
        Map<String, @Nullable Object> document =
                AnswerDocument.of(SheetText.scara().checkedOn(CellText.scara()));

        assertThat(document.get("answer-format")).isEqualTo(1);
        assertThat(document.get("answer")).isEqualTo("within");
        assertThat(document.get("rule-set")).isEqualTo(RuleSet.CURRENT);
        assertThat(document.get("cell")).isEqualTo(Map.of("name", "Avocet", "version", 7));
        Map<?, ?> motion = requireNonNull((Map<?, ?>) document.get("motion"));
        assertThat(motion.get("held-tool-peak-mm-s")).isEqualTo(125.0);
        assertThat((List<?>) requireNonNull(motion.get("steps"))).hasSize(4);
        assertThat(JsonText.of(document)).contains("\"fastest-part\": \"tool\"").doesNotContain("NaN", "Infinity");
    }

    @Test
    void writesNullWhereNothingIsKnown() {
        CheckAnswer answer = SheetText.scara()
                .with("tray-above: {x: -120", "tray-above: {x: -1200")
                .checkedOn(CellText.scara());
        Map<?, ?> motion = requireNonNull((Map<?, ?>) AnswerDocument.of(answer).get("motion"));

        assertThat(motion.get("cycle-time-s")).isNull();
        assertThat(motion.containsKey("peak-step")).isTrue();
        assertThat(motion.get("peak-step")).isNull();
    }

    @Test
    void writesJson() {
        assertThat(JsonText.of(Map.of())).isEqualTo("{}\n");
        assertThat(JsonText.of(List.of(1, 2.5, true, "a\"\\\n\u2028")))
                .isEqualTo("[\n  1,\n  2.5,\n  true,\n  \"a\\\"\\\\\\u000a\\u2028\"\n]\n");
        assertThat(JsonText.of(null)).isEqualTo("null\n");
        assertThatThrownBy(() -> JsonText.of(List.of(Double.NaN))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void survivesTheSmallestNumbers() {
        CheckAnswer answer = SheetText.scara()
                .with("speed-percent: 20", "speed-percent: 1e-320")
                .with("speed-mm-s: 80", "speed-mm-s: 1e-320")
                .checkedOn(CellText.scara());

        assertThat(answer.answer()).isEqualTo(Answer.NOT_CHECKABLE);
        assertThat(JsonText.of(AnswerDocument.of(answer))).doesNotContain("NaN", "Infinity");
    }
}
