package org.standclear.core.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.outcome;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.cell.Power;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.limits.Check;
import org.standclear.core.program.blocks.BlockReader;
import org.standclear.core.text.Reading;

/** Declared, found, and how the two meet. */
class DeclarationTests {

    private static Reading<CheckAnswer> check(SheetText sheet, String declaration) {
        return ProgramCheck.check(CheckRequest.of(CellText.scara().cell(), sheet.file())
                .declaring(DeclarationReader.read(declaration).value()));
    }

    @Test
    void readsWhatItWrites() {
        Declaration full =
                new Declaration(Power.FULL, 37.5, 1e-5, "G \"2\" \\ x: #y", "peg: 2", 0.06, Loop.FOREVER, "null");
        Declaration plain = new Declaration(Power.REDUCED, 50.0, 200.0, "G-02", null, 0.0, Loop.times(5), "tray-above");

        for (Declaration declaration : new Declaration[] {full, plain, Declaration.NONE}) {
            String text = DeclarationWriter.write(declaration);
            Reading<Declaration> again = DeclarationReader.read(text.isEmpty() ? "{}" : text);
            assertThat(again.value()).isEqualTo(declaration);
        }
        assertThat(DeclarationWriter.write(plain)).isEqualTo("""
                power: reduced
                override-percent: 50
                max-tool-speed-mm-s: 200
                tool: G-02
                part-kg: 0
                loop: 5
                start: tray-above
                """);
        assertThat(DeclarationWriter.write(Declaration.NONE)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"yes", "null", "~", "1", "1.0", "0x1F", "true", "- a", "a: b", "é", "*x", "&x", "!t", "N", "off"
            })
    void quotesTextsThatMeanSomethingElse(String tool) {
        Declaration declaration = new Declaration(null, null, null, tool, null, null, null, null);

        assertThat(DeclarationReader.read(DeclarationWriter.write(declaration)).value())
                .isEqualTo(declaration);
    }

    @Test
    void takesTheSeparateDeclarationFirstAndTheSheetForTheRest() {
        SheetText sheet = SheetText.scara().without("tool: G-02").without("start: home");
        CheckAnswer answer = check(sheet, "tool: G-02\nstart: home\n").value();

        assertThat(answer.declaration())
                .isEqualTo(new Declaration(Power.REDUCED, 50.0, 200.0, "G-02", null, 0.06, null, "home"));
        assertThat(outcome(answer, Check.DECLARED_MATCHES_FOUND)).isEqualTo("within");
    }

    @ParameterizedTest
    @CsvSource({
        "power: full, 4",
        "override-percent: 49, 5",
        "max-tool-speed-mm-s: 199, 6",
        "tool: G-03, 7",
        "part-kg: 0.07, 8",
        "start: tray, 13"
    })
    void findsWhatTheSheetSaysDifferently(String declared, int line) {
        CheckAnswer answer = check(SheetText.scara(), declared).value();

        assertThat(outcome(answer, Check.DECLARED_MATCHES_FOUND)).isEqualTo("outside");
        assertThat(details(answer, Check.DECLARED_MATCHES_FOUND).line()).isEqualTo(line);
    }

    @Test
    void agreesButForRounding() {
        CheckAnswer answer =
                check(SheetText.scara(), "part-kg: 0.06000000000001\nloop: 1\n").value();

        assertThat(outcome(answer, Check.DECLARED_MATCHES_FOUND)).isEqualTo("within");
    }

    @Test
    void isOutsideWhenTheFileSetsFullPower() {
        CheckAnswer answer = check(SheetText.scara().with("power: reduced", "power: full"), "power: reduced")
                .value();

        assertThat(outcome(answer, Check.POWER_MODE)).isEqualTo("outside");
        assertThat(details(answer, Check.POWER_MODE).line()).isEqualTo(4);
        // computed as declared
        assertThat(answer.figures().toolPeakMmS()).isLessThanOrEqualTo(125.0);
    }

    @Test
    void computesWithTheGreaterOfTheOverrides() {
        CellText cell = CellText.scara().with("override-percent: 50", "override-percent: 100");
        CheckAnswer answer = ProgramCheck.check(CheckRequest.of(
                                cell.cell(),
                                SheetText.scara()
                                        .with("override-percent: 50", "override-percent: 80")
                                        .file())
                        .declaring(
                                DeclarationReader.read("override-percent: 40").value()))
                .value();

        assertThat(outcome(answer, Check.OVERRIDE)).isEqualTo("within");
        assertThat(details(answer, Check.OVERRIDE).observed()).isEqualTo(80.0);
        assertThat(answer.figures().toolPeakMmS()).isEqualTo(200.0);
    }

    @Test
    void readsADeclarationInComments() {
        String block = """
                # Declaration
                # power: reduced
                #override-percent: 50
                #   tool: G-02
                # end declaration
                """.replace("#   tool", "# tool");
        SheetText sheet = new SheetText(block + SheetText.scara().text());
        CheckAnswer answer = sheet.checkedOn(CellText.scara());
        assertThat(outcome(answer, Check.DECLARED_MATCHES_FOUND)).isEqualTo("within");

        CheckAnswer other =
                new SheetText(sheet.text().replaceFirst("tool: G-02", "tool: G-09")).checkedOn(CellText.scara());
        assertThat(other.declaration().tool()).isEqualTo("G-09");
        assertThat(details(other, Check.DECLARED_MATCHES_FOUND).line()).isEqualTo(12);
        assertThat(details(other, Check.TOOL_FITTED).line()).isEqualTo(4);
    }

    @Test
    void refusesACommentBlockThatIsNotOne() {
        SheetText open = new SheetText(
                "# declaration\n# power: reduced\n" + SheetText.scara().text());
        assertThat(open.read(CellText.scara()).badInput().orElseThrow().sentence())
                .startsWith("line 1: the declaration that begins here has no comment line");
        SheetText wrong = new SheetText("# declaration\n# powr: reduced\n# end declaration\n"
                + SheetText.scara().text());
        assertThat(wrong.read(CellText.scara()).badInput().orElseThrow().sentence())
                .startsWith("line 2: \"powr\" is not a field of a declaration");
        SheetText between = new SheetText(SheetText.scara()
                .text()
                .replace("title:", "# declaration\ntitle:")
                .replace("declare:", "# end declaration\ndeclare:"));
        assertThat(between.read(CellText.scara()).badInput().orElseThrow().sentence())
                .startsWith("line 3: this line stands inside the declaration that begins on line 2 and is no comment");
        assertThat(new BlockReader()
                        .read("; declaration\n; power: full\nG0 X1 Y2 Z3\n; end declaration\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .startsWith("line 3: this line stands inside the declaration that begins on line 1 and is no comment");
    }

    @Test
    void refusesAStartThatTheProgramDoesNotKnow() {
        assertThat(check(SheetText.scara().without("start: home"), "start: nowhere")
                        .badInput()
                        .orElseThrow()
                        .says())
                .contains("nowhere");
    }

    @Test
    void findsAStraightSpeedAboveTheDeclared() {
        assertThat(outcome(
                        SheetText.scara()
                                .with("speed-mm-s: 80", "speed-mm-s: 200")
                                .checkedOn(CellText.scara()),
                        Check.DECLARED_MATCHES_FOUND))
                .isEqualTo("within");
        CheckAnswer over =
                SheetText.scara().with("speed-mm-s: 80", "speed-mm-s: 200.001").checkedOn(CellText.scara());
        assertThat(outcome(over, Check.DECLARED_MATCHES_FOUND)).isEqualTo("outside");
        assertThat(details(over, Check.DECLARED_MATCHES_FOUND).line()).isEqualTo(18);
    }
}
