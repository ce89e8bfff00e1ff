package org.standclear.core.program.phrases;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.standclear.core.CellText;
import org.standclear.core.SixAxisText;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.geometry.Vector;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Point;
import org.standclear.core.text.Reading;

/** Every way of six axes to reach a point can be said in a language of a phrasebook. */
class PhrasebookPostureTests {

    private static final String HEAD = "phrasebook: 1\nname: Test\nphrases:\n";

    private static final Phrasebook BOOK = Phrasebook.read(HEAD + """
              - {pattern: '# ?{text}', means: comment}
              - {pattern: 'at {point} axes {axis1} {axis2} {axis3} {axis4} {axis5} {axis6}', means: point}
              - {pattern: 'at {point} are {x} {y} {z} tilt {roll} {pitch} {yaw} {shoulder} {elbow} {wrist}', means: point,
                 units: {length: mm}, words: {shoulder: {ahead: front, behind: back}, elbow: {high: up, low: down},
                 wrist: {flat: plain, over: turned}}}
              - {pattern: 'at {point} just {x} {y} {z} {yaw}', means: point, units: {length: mm}}
              - {pattern: 'power {power}', means: power}
              - {pattern: 'all at {percent}', means: override}
              - {pattern: 'go {point} {percent}', means: joint-move}
              - {pattern: 'go axes {axis1} {axis2} {axis3} {axis4} {axis5} {axis6}', means: joint-move}
              - {pattern: 'slide {point} {speed}', means: straight-move, units: {speed: mm/s}}
            """).value();

    private static Point point(String line) {
        return new PhrasebookReader(BOOK)
                .read(line + "\ngo p 10\n")
                .value()
                .point("p")
                .orElseThrow();
    }

    static List<Posture> postures() {
        return Posture.ALL;
    }

    @ParameterizedTest
    @MethodSource("postures")
    void tellsEachOfTheEightPostures(Posture posture) {
        String line = "at p are 1 2 3 tilt 4 5 6 "
                + (posture.shoulder() == Posture.Shoulder.FRONT ? "ahead " : "behind ")
                + (posture.bend() == Posture.Bend.UP ? "high " : "low ")
                + (posture.wrist() == Posture.Wrist.PLAIN ? "flat" : "over");

        Point point = point(line);

        assertThat(point.branch()).isEqualTo(posture);
        assertThat(point.pose()).isEqualTo(new ToolPose(new Vector(1, 2, 3), 6, 5, 4));
    }

    @Test
    void takesSixAxisValuesForAPoint() {
        AxisValues axes = point("at p axes 1 -2 3 -4 5 -6.5").axes();
        assertThat(axes).hasToString(AxisValues.of(1, -2, 3, -4, 5, -6.5).toString());
        assertThat(new PhrasebookReader(BOOK)
                        .read("go axes 1 2 3 4 5 6\n")
                        .value()
                        .steps())
                .hasSize(1);
    }

    private static Reading<CheckAnswer> checked(CellText cell, String program) {
        return ProgramCheck.check(new CheckRequest(
                cell.cell(),
                new ProgramFile(program, "0".repeat(64)),
                new PhrasebookReader(BOOK),
                null,
                CourseLimits.NONE,
                ContactTableReader.shipped()));
    }

    /** The motion sheet of the six-axis cell, said in another way. */
    @Test
    void movesAsTheSheetDoes() {
        CheckAnswer spoken = checked(SixAxisText.cell(), """
                        # declaration
                        # power: reduced
                        # override-percent: 50
                        # max-tool-speed-mm-s: 200
                        # tool: G-02
                        # part-kg: 0.06
                        # start: home
                        # end declaration
                        at home axes 0 0 0 0 60 0
                        at above are 400 -100 300 tilt 180 0 0 ahead high flat
                        at there are 400 -100 220 tilt 180 0 30 ahead high flat
                        power reduced
                        all at 50
                        go above 10
                        slide there 80
                        slide above 80
                        go home 10
                        """).value();
        CheckAnswer sheet = SixAxisText.sheet().checkedOn(SixAxisText.cell());

        assertThat(spoken.answer()).isEqualTo(CheckAnswer.Answer.WITHIN);
        assertThat(spoken.motion().steps())
                .extracting(step -> step.peaks())
                .isEqualTo(sheet.motion().steps().stream()
                        .map(step -> step.peaks())
                        .toList());
    }

    @Test
    void saysWhatThePhraseHasToHave() {
        assertThat(checked(SixAxisText.cell(), "at p just 1 2 3 4\ngo p 10\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .startsWith("line 1: the point \"p\" says no posture; let its phrase have the parts axis1 to axis6");
        assertThat(checked(CellText.scara(), "at p just 1 2 3 4\ngo p 10\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .startsWith("line 1: the point \"p\" names no side of the elbow; let its phrase have the part elbow");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "'p {point} {axis1} {axis2}', means: point | needs axis3, axis4, axis5 and axis6",
                "'p {point} {axis1} {x}', means: point | in two ways",
                "'p {point} {x} {y} {z} {yaw} {wrist}', means: point, units: {length: mm} | needs pitch, roll, shoulder and elbow",
                "'go {point} {axis1}', means: joint-move | in two ways",
                "'go {point} {wrist}', means: joint-move | in two ways",
                "'p {point}', means: point | needs x, y, z and yaw",
                "'p {x} {y} {z} {yaw} {roll} {pitch} {wrist} {point}', means: point, units: {length: mm}, fixed: {shoulder: side, elbow: up} | shoulder is \"side\"; write front or back",
                "'p {point} {x} {y} {z} {yaw} {roll} {pitch} {shoulder} {elbow} {wrist}', means: point, units: {length: mm}, words: {wrist: {a: left}} | wrist is \"left\"; write plain or turned",
            })
    void refusesPhrasesThatSayAPointInPart(String phrase, String why) {
        assertThat(Phrasebook.read(HEAD + "  - {pattern: " + phrase + "}\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .contains(why);
    }

    @Test
    void refusesAnElbowOfAnotherArm() {
        Phrasebook book = Phrasebook.read(HEAD
                        + "  - {pattern: 'p {point} {x} {y} {z} {yaw} {elbow}', means: point, units: {length: mm}}\n"
                        + "  - {pattern: 'q {point} {x} {y} {z} {yaw} {elbow}', means: point, units: {length: mm},"
                        + " fixed: {pitch: 0, roll: 0, shoulder: front, wrist: plain}}\n"
                        + "  - {pattern: 'go {point}', means: joint-move}\n")
                .value();
        PhrasebookReader reader = new PhrasebookReader(book);
        assertThat(reader.read("p a 1 2 3 4 up\ngo a\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .isEqualTo("line 1: elbow is up; without a shoulder and a wrist write left or right");
        assertThat(reader.read("q a 1 2 3 4 left\ngo a\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .isEqualTo("line 1: elbow is left; beside a shoulder and a wrist write up or down");
    }

    @Test
    void refusesALineInsideTheDeclarationThatIsNoComment() {
        String text = "# declaration\n# power: reduced\n\nat p axes 1 2 3 4 5 6\n# end declaration\ngo p 10\n";
        assertThat(new PhrasebookReader(BOOK)
                        .read(text)
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .isEqualTo(
                        "line 4: this line stands inside the declaration that begins on line 1 and is no comment; put it"
                                + " after \"end declaration\", or write it as a comment");
        assertThat(new PhrasebookReader(BOOK)
                        .read(text.replace("at p", "at q").replace("at q axes 1 2 3 4 5 6\n", "")
                                + "at p axes 1 2 3 4 5 6\n")
                        .value()
                        .stated())
                .hasSize(1);
    }
}
