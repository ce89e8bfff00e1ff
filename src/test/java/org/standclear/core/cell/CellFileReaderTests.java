package org.standclear.core.cell;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.CellText;
import org.standclear.core.geometry.Vector;
import org.standclear.core.text.BadInput;

class CellFileReaderTests {

    private static String refusal(CellText cell) {
        return CellFileReader.read(cell.text())
                .badInput()
                .map(BadInput::sentence)
                .orElse("was read");
    }

    @Test
    void readsACell() {
        CellDescription cell = CellText.scara().cell();

        assertThat(cell.name()).isEqualTo("Avocet");
        assertThat(cell.version()).isEqualTo(7);
        assertThat(cell.arm().kind()).isEqualTo("scara");
        assertThat(cell.arm().axes()).hasSize(4);
        assertThat(cell.fittedTool()).isEqualTo(new Tool("G-02", 0.42, new Vector(0, 0, -60), 25, false));
        assertThat(cell.limits().keepOut()).hasSize(1);
        assertThat(CellText.gantry().cell().arm().hasElbow()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "moving-part-speed-mm-s",
                "moving-part-rule",
                "payload-kg: 1.0",
                "space:",
                "contact:",
                "separation:",
                "rated-payload-kg",
                "reduced-power-speed-mm-s"
            })
    void doesWithout(String line) {
        assertThat(refusal(CellText.scara().without(line))).isEqualTo("was read");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cell-file",
                "name: Avocet",
                "version",
                "kind",
                "links-mm",
                "straight",
                "moving-mass-kg",
                "stop:",
                "fitted-tool",
                "  power",
                "  tool-speed-mm-s",
                "  override-percent",
                "stand-line-mm",
                "name: wrist"
            })
    void cannotDoWithout(String line) {
        assertThat(refusal(CellText.scara().without(line))).isNotEqualTo("was read");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', textBlock = """
            cell-file: 1               | cell-file: 2                     | line 1: cell-file needs 1
            version: 7                 | version: 7.5                     | line 3: version needs a whole number
            version: 7                 | version: 0                       | line 3: version needs a whole number
            kind: scara                | kind: delta                      | line 5: kind needs articulated, gantry or scara
            links-mm: [225, 175]       | links-mm: [225]                  | line 6: links-mm needs 2 numbers
            links-mm: [225, 175]       | links-mm: [225, 0]               | line 6: links-mm is "0"
            name: shoulder, min        | name: elbow, min                 | line 8: a scara has the axes shoulder, elbow, lift and wrist
            min: -40, max: 220         | min: 40, max: -220               | line 8: max of the axis shoulder is below its min
            speed: 450                 | speed: 0                         | line 8: speed is "0"
            acceleration: 1800         | acceleration: -1                 | line 8: acceleration is "-1"
            moving-mass-kg: 6.0        | moving-mass-kg: -6               | line 13: moving-mass-kg is "-6"
            reaction-s: 0.10           | reaction-s: -0.1                 | line 16: reaction-s is "-0.1"
            offset-mm: [0, 0, -60]     | offset-mm: [0, 0, .inf]          | line 18: offset-mm is ".inf"
            overhang-mm: 25            | overhang-mm: -1                  | line 18: overhang-mm is "-1"
            edges: false               | edges: no                        | line 18: edges needs true or false
            fitted-tool: G-02          | fitted-tool: G-05                | line 19: the fitted tool "G-05" is not among the tools: G-02
            power: reduced             | power: half                      | line 21: power needs full or reduced
            tool-speed-mm-s: 250       | tool-speed-mm-s: 0               | line 22: tool-speed-mm-s is "0"
            moving-part-rule: advised  | moving-part-rule: maybe          | line 24: moving-part-rule needs advised or required
            override-percent: 50       | override-percent: 101            | line 25: override-percent is "101"
            y: [120, 380]              | y: [380, 120]                    | line 27: y needs [from, to] with from below to
            y: [120, 380]              | y: [120, 120]                    | line 27: y needs [from, to] with from below to
            [hand-and-fingers,         | [hands,                          | line 30: "hands" is not a region
            human-speed-mm-s: 1600     | human-speed-mm-s: 0              | line 32: human-speed-mm-s is "0"
            camera post                | "camera\\u0000post"              | line 29: name holds a line break or an invisible character
            """)
    void refusesWithOneLine(String passage, String instead, String says) {
        assertThat(refusal(CellText.scara().with(passage.strip(), instead.strip())))
                .startsWith(says.strip());
    }

    @Test
    void refusesAToolCodeTwice() {
        String tool = "  - {code: G-02, mass-kg: 0.42, offset-mm: [0, 0, -60], overhang-mm: 25, edges: false}\n";

        assertThat(refusal(CellText.scara().with(tool, tool + tool))).contains("\"G-02\" stands here a second time");
    }

    @Test
    void knowsThatAGantryHasNoLinks() {
        assertThat(refusal(CellText.gantry().with("kind: gantry", "kind: gantry\n  links-mm: [1, 2]")))
                .contains("a gantry has no links");
    }
}
