package org.standclear.check.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.SixAxisText;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.quantity.ShownNumber;

/** The rings on the plan are those of the answer's finding about separation; steps with findings are marked. */
class SurroundingsTests {

    /** The map is drawn at about 18 mm a unit with one decimal. */
    private static final double OF_A_RING = 0.01;

    static Stream<CheckAnswer> answers() {
        return Stream.of(
                SheetText.scara().checkedOn(CellText.scara()),
                new SheetText(SheetText.scara().text().replace(", elbow: right", "")).checkedOn(CellText.gantry()),
                SixAxisText.sheet().checkedOn(SixAxisText.cell()));
    }

    private static Drawing plan(CheckAnswer answer) {
        return ProgramPictures.of(answer).plan();
    }

    private static double radius(Drawing plan, String look) {
        DoubleSummaryStatistics x = plan.back().stream()
                .filter(line -> line.look().equals(look))
                .map(Line::path)
                .filter(path -> path.contains("a"))
                .flatMap(path -> DrawnPlaces.of(path).stream())
                .mapToDouble(Place::x)
                .summaryStatistics();
        return (x.getMax() - x.getMin()) / 2;
    }

    private static Details separation(CheckAnswer answer) {
        return answer.findings().stream()
                .map(Finding::details)
                .filter(details -> details.check() == Check.SEPARATION)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> looks(Drawing plan) {
        return plan.back().stream().map(Line::look).toList();
    }

    @ParameterizedTest
    @MethodSource("answers")
    void theRingsAreThoseOfTheFinding(CheckAnswer answer) {
        Drawing plan = plan(answer);
        Details separation = separation(answer);

        double observed = Objects.requireNonNull(separation.observed());
        double limit = Objects.requireNonNull(separation.limit());
        assertThat(radius(plan, "keep-away") / radius(plan, "stand-line"))
                .isCloseTo(observed / limit, within(OF_A_RING));
        String needed = "people need " + ShownNumber.up(observed, 1) + " mm";
        assertThat(plan.words()).anySatisfy(word -> assertThat(word.text()).isEqualTo(needed));
        assertThat(plan.says()).contains(needed, "stand line " + ShownNumber.plain(separation.limit()) + " mm");
        assertThat(separation.says()).contains(ShownNumber.up(observed, 1));
    }

    @Test
    void aRingThatCrossesThePlanIsDrawnThere() {
        CheckAnswer far = SheetText.scara().checkedOn(CellText.scara());
        CheckAnswer near =
                SheetText.scara().checkedOn(CellText.scara().with("stand-line-mm: 1800", "stand-line-mm: 300"));

        assertThat(looks(plan(far))).doesNotContain("stand-line-arc", "keep-away-arc");
        Drawing plan = plan(near);
        List<Place> arc = plan.back().stream()
                .filter(line -> line.look().equals("stand-line-arc"))
                .flatMap(line -> DrawnPlaces.of(line.path()).stream())
                .toList();
        assertThat(arc)
                .isNotEmpty()
                .allSatisfy(
                        place -> assertThat(place.y()).isLessThanOrEqualTo(plan.height() - Surroundings.HEIGHT + 0.1));
        // a straight line between two drawn corners stays this near to the circle
        double mm = (Views.WIDTH - 52) / (800 * 1.08);
        double middle = arc.stream().mapToDouble(Place::x).average().orElseThrow();
        double highest = arc.stream().mapToDouble(Place::y).min().orElseThrow();
        assertThat(arc)
                .allSatisfy(place -> assertThat(Math.hypot(place.x() - middle, place.y() - (highest + 300 * mm)))
                        .isCloseTo(300 * mm, within(1.0)));
    }

    @Test
    void withoutSeparationThereIsNoRingForIt() {
        CheckAnswer answer = SheetText.scara().checkedOn(CellText.scara().without("separation:"));

        assertThat(looks(plan(answer))).contains("stand-line", "covered").doesNotContain("keep-away");
        assertThat(plan(answer).says()).doesNotContain("people need");
    }

    @Test
    void aStepWithAFindingIsMarked() {
        CheckAnswer answer = SheetText.of("""
                before: {x: 150, y: 360, z: 60, yaw: 0, elbow: right}
                behind: {x: 245, y: 280, z: 60, yaw: 0, elbow: right}
                home: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}
                """, "{straight: behind, speed-mm-s: 60}", "{straight: home, speed-mm-s: 60}")
                .startingAt("before")
                .checkedOn(CellText.scara());

        List<Drawing.StepLines> steps = plan(answer).steps();
        assertThat(steps.get(0).lines())
                .first()
                .satisfies(line -> assertThat(line.look()).isEqualTo("way-trouble"));
        assertThat(steps.get(1).lines())
                .noneSatisfy(line -> assertThat(line.look()).isEqualTo("way-trouble"));
        assertThat(plan(SheetText.scara().checkedOn(CellText.scara())).steps())
                .flatExtracting(Drawing.StepLines::lines)
                .extracting(Line::look)
                .doesNotContain("way-trouble");
    }
}
