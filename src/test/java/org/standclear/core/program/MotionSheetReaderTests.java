package org.standclear.core.program;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.SheetText;
import org.standclear.core.cell.Power;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.Reading;

class MotionSheetReaderTests {

    private static Reading<MotionPlan> read(String text) {
        return new MotionSheetReader().read(text);
    }

    private static String refusal(SheetText sheet) {
        return read(sheet.text()).badInput().map(BadInput::sentence).orElse("was read");
    }

    @Test
    void readsASheet() {
        MotionPlan plan = read(SheetText.scara().text()).value();

        assertThat(plan.title()).isEqualTo("Peg and plate");
        assertThat(plan.points()).containsOnlyKeys("home", "tray-above", "tray");
        assertThat(plan.steps()).extracting(Step::line).containsExactly(15, 18, 20, 21);
        assertThat(plan.steps().get(0))
                .isEqualTo(new Step.Joint(1, 15, plan.point("tray-above").orElseThrow(), 20, 50));
        assertThat(plan.steps().get(1))
                .isEqualTo(new Step.Straight(2, 18, plan.point("tray").orElseThrow(), 80, 100));
        Declared declared = Declared.of(null, plan);
        assertThat(declared.values())
                .isEqualTo(new Declaration(Power.REDUCED, 50.0, 200.0, "G-02", null, 0.06, null, "home"));
        assertThat(declared.lineOf(DeclarationField.OVERRIDE)).isEqualTo(5);
        assertThat(declared.found()).isEmpty();
        assertThat(plan.coverage().linesTotal()).isEqualTo(21);
    }

    @Test
    void readsFieldsInAnyOrder() {
        String text = """
                steps: [{wait-s: 1}, {do: blink}, {move: 1}]
                points: {1: {x: 0, y: 300, z: 80, yaw: 0, elbow: left}}
                motion-sheet: 1
                """;

        MotionPlan plan = read(text).value();

        assertThat(plan.title()).isNull();
        assertThat(plan.steps()).hasSize(3);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', textBlock = """
            motion-sheet: 1             | motion-sheet: 2                | line 1: motion-sheet needs 1
            motion-sheet: 1             | motion-sheet: one              | line 1: motion-sheet needs 1
            title: Peg and plate        | titel: Peg and plate           | line 2: "titel" is not a field of a motion sheet; did you mean title?
            title: Peg and plate        | title:                         | line 2: title needs a text
            title: Peg and plate        | title: "Peg\\nplate"           | line 2: title holds a line break
            title: Peg and plate        | title: "a\\u202Eb"             | line 2: title holds a line break or an invisible character
            title: Peg and plate        | title: [a]                     | line 2: title needs a text
            power: reduced              | power: low                     | line 4: power needs full or reduced
            override-percent: 50        | override-percent: 0            | line 5: override-percent is "0"; write a percentage
            override-percent: 50        | override-percent: 100.5        | line 5: override-percent is "100.5"
            override-percent: 50        | override-percent: "50"         | line 5: override-percent is "50"; write a percentage above 0 and at most 100 without quotes
            override-percent: 50        | override-percent: 50 %         | line 5: override-percent is "50 %"
            override-percent: 50        | override-percent: .nan         | line 5: override-percent is ".nan"
            max-tool-speed-mm-s: 200    | max-tool-speed-mm-s: -1        | line 6: max-tool-speed-mm-s is "-1"
            part-kg: 0.06               | part-kg: -0.01                 | line 8: part-kg is "-0.01"
            part-kg: 0.06               | part-kg: 1e999                 | line 8: part-kg is "1e999"
            part-kg: 0.06               | loop: 0                        | line 8: loop needs a whole number from 1 to 1000000 or forever
            part-kg: 0.06               | loop: 2.5                      | line 8: loop needs a whole number
            part-kg: 0.06               | loop: endless                  | line 8: loop needs a whole number
            part-kg: 0.06               | power: full                    | line 8: "power" stands here a second time
            home: {x: 0, y: 300         | home: {x: 0, w: 300            | line 10: "w" is not a field of a point
            home: {x: 0, y: 300, z: 80  | home: {x: 0, y: 300            | line 10: a point has no z
            home: {x: 0                 | home: {x: 1000001              | line 10: x is "1000001"
            home: {x: 0                 | home: {x: left                 | line 10: x is "left"
            yaw: 0, elbow: right}       | yaw: 0, elbow: up}             | line 10: elbow needs left or right
            tray: {x                    | home: {x                       | line 12: "home" stands here a second time
            start: home                 | start: hom                     | line 13: start names "hom", which is not among the points; did you mean "home"?
            start: home                 | start: [home]                  | line 13: start needs a text
            move: tray-above            | move: nowhere                  | line 15: step 1 goes to "nowhere", which is not among the points; define it there
            move: tray-above            | moves: tray-above              | line 15: a step needs one of move, straight, wait-s or do
            speed-percent: 20           | speed-percnt: 20               | line 16: "speed-percnt" is not a field of a step with move; did you mean speed-percent?
            speed-percent: 20           | speed-mm-s: 20                 | line 16: "speed-mm-s" is not a field of a step with move
            speed-percent: 20           | do: grip                       | line 15: a step has one verb, this one has move and do
            acceleration-percent: 50    | acceleration-percent: 0        | line 17: acceleration-percent is "0"
            speed-mm-s: 80              | acceleration-percent: 80       | line 18: a step with straight has no speed-mm-s; it is needed
            speed-mm-s: 80              | speed-mm-s: 0                  | line 19: speed-mm-s is "0"
            speed-mm-s: 80              | speed-mm-s: fast               | line 19: speed-mm-s is "fast"
            wait-s: 0.5                 | wait-s: -0.5                   | line 20: wait-s is "-0.5"
            do: grip                    | do: ""                         | line 21: do needs a text of 1 to 200 characters
            do: grip                    | grip                           | line 21: a step needs one of
            """)
    void refusesWithOneLine(String passage, String instead, String says) {
        String sentence = refusal(SheetText.scara().with(passage.strip(), instead.strip()));

        assertThat(sentence).startsWith(says.strip()).doesNotContain("\n");
    }

    @Test
    void refusesWhatIsNoSheet() {
        assertThat(refusal(new SheetText("motion-sheet: 1\nsteps: []\n"))).contains("write at least one step");
        assertThat(refusal(new SheetText("motion-sheet: 1\n"))).contains("no steps");
        assertThat(refusal(new SheetText("motion-sheet: 1\nsteps: {a: b}\n"))).contains("needs a list");
        assertThat(refusal(new SheetText("motion-sheet: 1\nsteps: 5\n"))).contains("needs a list");
        assertThat(refusal(new SheetText("motion-sheet: 1\npoints: [a]\nsteps: [{wait-s: 1}]\n")))
                .contains("points needs named points");
        assertThat(refusal(new SheetText("motion-sheet: 1\npoints: 5\nsteps: [{wait-s: 1}]\n")))
                .contains("points needs named points");
    }

    @Test
    void readsALongProgramInGoodTime() {
        StringBuilder text = new StringBuilder("motion-sheet: 1\nsteps:\n");
        text.append("  - {move: p, speed-percent: 20}\n".repeat(50_000));
        text.append("points: {p: {x: 0, y: 300, z: 80, yaw: 0}}\n");

        // generous: machines that run tests are busy
        Assertions.assertTimeout(
                Duration.ofSeconds(60),
                () -> assertThat(read(text.toString()).value().steps()).hasSize(50_000));
    }

    @Test
    void boundsTheNumberOfSteps() {
        String text = "motion-sheet: 1\nsteps:\n" + "  - do: a\n".repeat(100_001);

        assertThat(refusal(new SheetText(text)))
                .isEqualTo("line 100003: the sheet has more than 100000 steps; split it up");
    }
}
