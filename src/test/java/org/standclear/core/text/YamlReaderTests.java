package org.standclear.core.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YamlReaderTests {

    private static String refusal(String text) {
        return Reading.of(() -> YamlReader.read(text))
                .badInput()
                .map(BadInput::sentence)
                .orElse("was read");
    }

    @Test
    void keepsTheLineOfEveryValue() {
        YamlNode.Mapping top = YamlReader.read("a: 1\n\n# words\nb:\n  - {c: d}\n  - e\n");

        assertThat(top.line()).isEqualTo(1);
        YamlNode.Sequence list = (YamlNode.Sequence)
                java.util.Objects.requireNonNull(top.entries().get("b")).value();
        assertThat(list.items()).extracting(YamlNode::line).containsExactly(5, 6);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            a: &x 1\\nb: *x              | line 1: anchors
            a: 1\\nb: *x                 | line 2: aliases
            a: !!str 1                   | line 1: tags
            a: !mine {b: c}              | line 1: tags
            a: 1\\nb: 2\\na: 3           | line 3: "a" stands here a second time
            a: {b: 1, b: 2}              | line 1: "b" stands here a second time
            a: 1\\n---\\nb: 2            | line 2: a second document
            - a                          | line 1: the file must begin with a field
            words                        | line 1: the file must begin with a field
            a: [1, 2                     | line 1: not YAML
            a: b: c                      | line 1: not YAML
            a: 1\\n\\tb: 2               | line 2: not YAML
            a: "\\x1"                   | line 1: not YAML
            a: "\\U00110000"            | line 1: not YAML
            a: "\\Uffffffff"            | line 1: not YAML
            ? [a, b]\\n: c               | line 1: a field needs a plain name
            ~: 1                         | line 1: a field needs a plain name
            """, quoteCharacter = '\0')
    void refusesWhatNoFileNeeds(String text, String says) {
        assertThat(refusal(text.strip().replace("\\n", "\n").replace("\\t", "\t")))
                .contains(says.strip());
    }

    @Test
    void refusesAnEmptyFile() {
        assertThat(refusal("")).contains("empty");
        assertThat(refusal("# only words\n")).contains("empty");
    }

    @Test
    void refusesTagsThatAreDeclaredAhead() {
        assertThat(refusal("%TAG ! tag:example.org,2026:\n---\na: 1\n")).contains("tags are not read");
    }

    @Test
    void refusesDeepNesting() {
        assertThat(refusal("a: " + "[".repeat(31) + "]".repeat(31))).isEqualTo("was read");
        assertThat(refusal("a: " + "[".repeat(32) + "]".repeat(32))).contains("more than 32 levels");
        assertThat(refusal("a: " + "[\n ".repeat(1_000_000))).contains("more than 32 levels");
    }

    @Test
    void refusesAnAliasBombAtOnce() {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i < 40; i++) {
            bomb.append("a%d: &a%d [*a%d, *a%d]%n".formatted(i, i, i - 1, i - 1));
        }
        Assertions.assertTimeout(
                Duration.ofSeconds(20),
                () -> assertThat(refusal(bomb.toString())).contains("anchors"));
    }

    @ParameterizedTest
    @CsvSource({"0000", "0007", "001B", "007F", "0085", "D800", "FFFE", "FEFF"})
    void refusesWhatIsNotText(String codePoint) {
        char c = (char) Integer.parseInt(codePoint, 16);

        assertThat(refusal("a: 1\nb: x" + c + "y\n")).contains("line 2: the character U+" + codePoint);
    }

    @Test
    void takesAByteOrderMarkAtTheBeginning() {
        assertThat(YamlReader.read("\uFEFFa: 1").entries()).containsKey("a");
    }

    @Test
    void takesSignsBeyondTheFirstPlane() {
        YamlNode value = java.util.Objects.requireNonNull(
                        YamlReader.read("a: \uD83E\uDD16").entries().get("a"))
                .value();

        assertThat(((YamlNode.Scalar) value).text()).isEqualTo("\uD83E\uDD16");
    }

    @Test
    void handsOverLongListsItemByItem() {
        List<Integer> lines = new ArrayList<>();

        YamlNode.Mapping top = YamlReader.read(
                "steps:\n  - a\n  - b\npoints: {p: 1, q: 2}\n",
                Map.of(
                        "steps", (name, value) -> lines.add(value.line()),
                        "points", (name, value) -> lines.add(-name.line())));

        assertThat(lines).containsExactly(2, 3, -4, -4);
        assertThat(java.util.Objects.requireNonNull(top.entries().get("steps")).value())
                .isEqualTo(new YamlNode.Sequence(List.of(), 2));
        assertThat(refusalOfStreamed("points: {p: 1, p: 2}")).contains("\"p\" stands here a second time");
    }

    private static String refusalOfStreamed(String text) {
        return Reading.of(() -> YamlReader.read(text, Map.of("points", (name, value) -> {})))
                .badInput()
                .map(BadInput::sentence)
                .orElse("was read");
    }

    @Test
    void boundsWhatASmallFileCanHold() {
        assertThat(refusal("a: [" + "1,\n ".repeat(250_000) + "1]")).contains("more than 200000 values");
    }

    @Test
    void quotesOnOneShortLine() {
        assertThat(Words.quoted("x\ny")).isEqualTo("\"x?y\"");
        assertThat(Words.quoted("x".repeat(1000))).hasSize(45);
        assertThat(Words.quoted("a\u202Eb")).isEqualTo("\"a?b\"");
    }
}
