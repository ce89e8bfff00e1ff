package org.standclear.core.program.phrases;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.cell.Power;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Found;
import org.standclear.core.program.Loop;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Step;

/** What programs in a language of a phrasebook say. */
class PhrasebookReaderTests {

    private static final Phrasebook BOOK = Phrasebook.read("""
                    phrasebook: 1
                    name: Test
                    ignore-case: true
                    sections: {begin: 'part {section}', end: 'part done'}
                    phrases:
                      - {pattern: '# ?{text}', means: comment}
                      - {pattern: 'at {point} are {x} {y} {z} {yaw}( {elbow})?', means: point, units: {length: in},
                         words: {elbow: {lefty: left, righty: right}}}
                      - {pattern: 'power {power}', means: power, words: {power: {weak: reduced, strong: full}}}
                      - {pattern: 'all at {percent}', means: override}
                      - {pattern: 'turning {percent}', means: axis-speed}
                      - {pattern: 'gliding {speed}', means: straight-speed, units: {speed: m/min}}
                      - {pattern: 'pushing {percent}', means: acceleration}
                      - {pattern: 'go {point}', means: joint-move}
                      - {pattern: 'go quickly {point} {percent}', means: joint-move}
                      - {pattern: 'to {x} {y} {z}', means: straight-move, units: {length: mm}, fixed: {yaw: 0}}
                      - {pattern: 'slide {point} {speed}', means: straight-move, units: {speed: mm/s}}
                      - {pattern: 'rest {time}', means: wait, units: {time: min}}
                      - {pattern: 'always', means: loop-begin, fixed: {count: forever}}
                      - {pattern: 'do {count}', means: loop-begin}
                      - {pattern: 'end', means: loop-end}
                      - {pattern: 'now {section}', means: call}
                      - {pattern: 'hand {action}', means: no-motion}
                      - {pattern: 'title {title}', means: no-motion}
                    """).value();

    private static final String POINTS = "at home are 1 2 3 4\nat tray are 2 2 3 4\n";

    private static MotionPlan plan(String text) {
        return new PhrasebookReader(BOOK).read(POINTS + text).value();
    }

    private static String refusal(String text) {
        return new PhrasebookReader(BOOK)
                .read(POINTS + text)
                .badInput()
                .orElseThrow()
                .sentence();
    }

    @Test
    void readsMovesWaitsActionsAndTitles() {
        MotionPlan plan =
                plan("Title A walk\ngo home\ngo quickly tray 30\nslide home 25\nto 1 2 3\nhand grip\nREST .5\n"
                        .replace("to 1", "gliding 6\nto 1"));
        assertThat(plan.title()).isEqualTo("A walk");
        assertThat(plan.reader()).isEqualTo("phrasebook Test");
        assertThat(plan.steps())
                .containsExactly(
                        new Step.Joint(1, 4, plan.point("home").orElseThrow(), 100, 100),
                        new Step.Joint(2, 5, plan.point("tray").orElseThrow(), 30, 100),
                        new Step.Straight(3, 6, plan.point("home").orElseThrow(), 25, 100),
                        new Step.Straight(4, 8, plan.point("line 8").orElseThrow(), 100, 100),
                        new Step.Action(5, 9, "grip"),
                        new Step.Wait(6, 10, 30));
        assertThat(plan.point("home").orElseThrow().pose().place()).isEqualTo(new Vector(25.4, 50.8, 3 * 25.4));
    }

    @Test
    void keepsSpeedsForLaterMoves() {
        MotionPlan plan = plan("turning 20\npushing 30\ngo home\nturning 40\ngo tray\n");
        assertThat(plan.steps())
                .containsExactly(
                        new Step.Joint(1, 5, plan.point("home").orElseThrow(), 20, 30),
                        new Step.Joint(2, 7, plan.point("tray").orElseThrow(), 40, 30));
    }

    @Test
    void findsPowerOverrideAndLoopWithTheirLines() {
        assertThat(plan("power weak\nall at 40\ndo 5\ngo home\nall at 60\ngo tray\nend\n")
                        .found())
                .containsExactly(
                        new Found(DeclarationField.POWER, Power.REDUCED, 3, 1),
                        new Found(DeclarationField.OVERRIDE, 40.0, 4, 1),
                        new Found(DeclarationField.OVERRIDE, 60.0, 7, 2),
                        new Found(DeclarationField.LOOP, Loop.times(5), 5, 3));
        assertThat(plan("always\ngo home\nend\n").found())
                .containsExactly(new Found(DeclarationField.LOOP, Loop.FOREVER, 3, 2));
    }

    @Test
    void repeatsALoopThatIsOnlyAPartOfTheProgram() {
        MotionPlan plan = plan("go home\ndo 3\ngo tray\nend\n");
        assertThat(plan.steps()).hasSize(4);
        assertThat(plan.found()).isEmpty();
    }

    /** The second pass is faster than the first: one pass would not tell all. */
    @Test
    void repeatsALoopWhosePassesDiffer() {
        MotionPlan plan = plan("turning 10\ndo 2\ngo home\nturning 90\ngo tray\nend\n");
        assertThat(plan.steps())
                .extracting(step -> ((Step.Joint) step).speedPercent())
                .containsExactly(10.0, 90.0, 90.0, 90.0);
        assertThat(plan("turning 10\nalways\ngo home\nturning 90\ngo tray\nend\n")
                        .coverage()
                        .notUnderstood())
                .containsExactly(4);
    }

    @Test
    void doesNotUnderstandAnEndlessLoopBesideOtherSteps() {
        assertThat(plan("go home\nalways\ngo tray\nend\n").coverage().notUnderstood())
                .containsExactly(4);
    }

    @Test
    void callsSections() {
        MotionPlan plan =
                plan("now fetch\nnow fetch\npart fetch\ngo home\nnow rest\npart done\npart rest\nrest 1\npart done\n");
        assertThat(plan.steps()).extracting(Step::line).containsExactly(6, 10, 6, 10);
        assertThat(plan("go home\nnow fetch\n").coverage().notUnderstood()).containsExactly(4);
    }

    @Test
    void readsTheDeclarationInComments() {
        MotionPlan plan = plan("# declaration\n# power: reduced\n# start: home\n# end declaration\ngo tray\n");
        assertThat(plan.stated().get(0).values().start()).isEqualTo("home");
        assertThat(plan.stated().get(0).lineOf(DeclarationField.POWER)).isEqualTo(4);
        assertThat(plan.coverage()).isEqualTo(new MotionPlan.Coverage(3, 3, List.of()));
    }

    @ParameterizedTest
    @CsvSource({
        "go nowhere, line 3: the move goes to \"nowhere\"",
        "go tary, did you mean \"tray\"?",
        "to 1 2 3, line 3: nothing says how fast",
        "do 3, line 3: the loop that begins here has no end",
        "end, line 3: a loop ends here",
        "part x, line 3: the section that begins here has no end",
        "part done, line 3: a section ends here",
        "turning 101, line 3: percent is",
        "at home are 1 2 3 4, line 3: the point \"home\" stands here a second time",
        "do 0, line 3: count is",
        "slide home 2000000, line 3: speed is",
        "# declaration, no comment line \"end declaration\"",
        "title x, no line of the file moves anything"
    })
    void refusesContradictions(String line, String why) {
        assertThat(refusal(line.equals("do 0") ? "do 0\ngo home\nend" : line)).contains(why);
    }

    @Test
    void boundsCallsLoopsAndSteps() {
        assertThat(refusal("now a\npart a\nnow a\npart done\ngo home")).contains("more than 16 deep");
        assertThat(refusal("go home\ndo 1000\ndo 1000\nrest 0\nend\nend")).contains("more than 20008 steps");
        assertThat(refusal("go home\ndo 1000000\ndo 1000000\nend\nend")).contains("more than 1000000 lines");
        assertThat(refusal("go home\n" + "do 2\n".repeat(17) + "end\n".repeat(17)))
                .contains("more than 16 deep");
    }

    @Test
    void listsWordsThatItDoesNotKnow() {
        assertThat(plan("power nuclear\ngo home\n").coverage().notUnderstood()).containsExactly(3);
        assertThat(plan("at x are 1 2 3 4 righty\ngo x\n")
                        .point("x")
                        .orElseThrow()
                        .branch())
                .isNotNull();
    }
}
