package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.standclear.core.CellText;
import org.standclear.core.SixAxisText;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.text.Reading;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/**
 * What the schemas allow and what the readers take is the same, but for what a schema cannot say: names that are used and
 * not defined, ranges whose ends are the wrong way round, units that a phrase needs.
 */
class SchemasAndReadersTests {

    private static final YAMLMapper YAML = new YAMLMapper();
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SchemaRegistry SCHEMAS =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12, with -> with.schemas(schemas()));

    private static final Map<String, Function<String, Reading<?>>> READERS = Map.of(
            "cell-file", CellFileReader::read,
            "motion-sheet", text -> new MotionSheetReader().read(text),
            "declaration", DeclarationReader::read,
            "phrasebook", Phrasebook::read,
            "contact-table", ContactTableReader::read);

    private static Map<String, String> schemas() {
        Map<String, String> byId = new HashMap<>();
        try (Stream<Path> files = Files.list(Path.of("docs/formats"))) {
            for (Path file :
                    files.filter(one -> one.toString().endsWith(".schema.json")).toList()) {
                String schema = Files.readString(file);
                byId.put(JSON.readTree(schema).get("$id").asString(), schema);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return byId;
    }

    private static boolean allows(String schema, JsonNode file) {
        return SCHEMAS.getSchema(SchemaLocation.of("urn:standclear:" + schema + ":1"))
                .validate(file.toString(), InputFormat.JSON)
                .isEmpty();
    }

    /** JSON is YAML too, so that a reader takes it. */
    private static Reading<?> read(String schema, JsonNode file) {
        return Objects.requireNonNull(READERS.get(schema)).apply(file.toString());
    }

    /** A file in full, of one format. */
    record Whole(String schema, JsonNode file) {

        @Override
        public String toString() {
            return schema + " " + file.path("name").asString(file.path("title").asString(""));
        }
    }

    private static final String SHEET = """
            motion-sheet: 1
            title: All of it
            declare: {power: reduced, override-percent: 50, max-tool-speed-mm-s: 200, tool: G-02, part: peg, part-kg: 0.06, loop: 5}
            start: home
            points:
              home: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}
              above: {x: 4, y: 1, z: 3, roll: 180, pitch: 0, yaw: 0, shoulder: front, elbow: up, wrist: plain}
              park: {axes: [0, 0, 0, 0, 60, 0]}
            steps:
              - {move: home, speed-percent: 20, acceleration-percent: 50}
              - {straight: home, speed-mm-s: 80, acceleration-percent: 50}
              - {wait-s: 1}
              - {do: grip}
            """;

    private static final String BOOK = """
            phrasebook: 1
            name: Plain Words
            ignore-case: true
            sections: {begin: 'how to {section}', end: 'that is how'}
            phrases:
              - {pattern: 'run with {power} power', means: power, words: {power: {gentle: reduced}}, note: how hard}
              - {pattern: 'rest {time} seconds?', means: wait, units: {time: s}}
              - {pattern: 'over and over', means: loop-begin, fixed: {count: forever}}
              - {pattern: 'swing to {point}', means: joint-move}
            """;

    static List<Whole> files() throws IOException {
        String declared = "{power: full, override-percent: 50, max-tool-speed-mm-s: 200, tool: G-02, part: peg,"
                + " part-kg: 0.06, loop: forever, start: home}";
        String table = Files.readString(Path.of("src/main/resources/org/standclear/core/limits/contact-table.yaml"));
        return List.of(
                whole("cell-file", CellText.scara().text()),
                whole(
                        "cell-file",
                        CellText.scara().listing("{name: peg, mass-kg: 0.06}").text()),
                whole("cell-file", CellText.gantry().text()),
                whole("cell-file", SixAxisText.cell().text()),
                whole("motion-sheet", SHEET),
                whole("declaration", declared),
                whole("phrasebook", BOOK),
                whole("contact-table", table));
    }

    private static Whole whole(String schema, String yaml) {
        return new Whole(schema, YAML.readTree(yaml));
    }

    @ParameterizedTest
    @MethodSource("files")
    void bothTakeTheWhole(Whole whole) {
        assertThat(allows(whole.schema(), whole.file())).isTrue();
        assertThat(read(whole.schema(), whole.file()).badInput()).isEmpty();
    }

    /** The same file without one field, for each of its fields, with where it was. */
    private static Map<String, JsonNode> lessByOne(JsonNode file) {
        Map<String, JsonNode> less = new HashMap<>();
        for (String pointer : fields(file, "")) {
            JsonNode copy = file.deepCopy();
            int cut = pointer.lastIndexOf('/');
            ((ObjectNode) copy.at(pointer.substring(0, cut)))
                    .remove(pointer.substring(cut + 1).replace("~1", "/"));
            less.put(pointer, copy);
        }
        return less;
    }

    private static List<String> fields(JsonNode node, String at) {
        List<String> pointers = new ArrayList<>();
        if (node.isObject()) {
            node.properties().forEach(field -> {
                pointers.add(at + "/" + field.getKey());
                pointers.addAll(fields(field.getValue(), at + "/" + field.getKey()));
            });
        }
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            pointers.addAll(fields(node.get(i), at + "/" + i));
        }
        return pointers;
    }

    @ParameterizedTest
    @MethodSource("files")
    void bothMissTheSameFields(Whole whole) {
        Map<String, JsonNode> less = lessByOne(whole.file());
        assertThat(less).hasSizeGreaterThan(6);
        less.forEach((left, file) -> {
            boolean taken = read(whole.schema(), file).badInput().isEmpty();
            if (isReference(left)) {
                assertThat(taken).as("reader without " + left).isFalse();
            } else {
                assertThat(allows(whole.schema(), file)).as("without " + left).isEqualTo(taken);
            }
        });
    }

    /** A point that steps go to, and a unit that a phrase needs. */
    private static boolean isReference(String left) {
        return List.of(
                        "/points",
                        "/points/home",
                        "/phrases/1/units",
                        "/phrases/1/units/time",
                        "/phrases/2/fixed",
                        "/phrases/2/fixed/count")
                .contains(left);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cell-file | version: 7 | version: 7.5",
                "cell-file | version: 7 | version: 0",
                "cell-file | name: Avocet | name: 114",
                "cell-file | name: Avocet | name: ''",
                "cell-file | {name: shoulder, | {name: waist,",
                "cell-file | speed: 450 | speed: 0",
                "cell-file | speed: 450 | speed: 1000001",
                "cell-file | moving-mass-kg: 6.0 | moving-mass-kg: -1",
                "cell-file | edges: false | edges: no-edges",
                "cell-file | override-percent: 50 | override-percent: 100.5",
                "cell-file | [hand-and-fingers, lower-arm-and-wrist] | []",
                "cell-file | [hand-and-fingers, lower-arm-and-wrist] | [elbow]",
                "cell-file | stand-line-mm: 1800 | stand-line-mm: far",
                "cell-file | [225, 175] | [225]",
                "motion-sheet | title: All of it | title: 2026",
                "motion-sheet | title: All of it | title: true",
                "motion-sheet | elbow: up | elbow: left",
                "motion-sheet | [0, 0, 0, 0, 60, 0] | [0, 0, 0, 0, 60]",
                "motion-sheet | {wait-s: 1} | {wait-s: -1}",
                "motion-sheet | {do: grip} | {do: 12}",
                "motion-sheet | {do: grip} | {do: grip, wait-s: 1}",
                "motion-sheet | speed-mm-s: 80 | speed-mm-s: 0",
                "motion-sheet | loop: 5 | loop: 5.5",
                "motion-sheet | loop: 5 | loop: for-ever",
                "phrasebook | means: wait | means: sleep",
                "phrasebook | {time: s} | {time: days}",
                "phrasebook | gentle: reduced | gentle: low",
                "phrasebook | count: forever | count: 3",
                "phrasebook | note: how hard | note: 5",
            })
    void bothSayTheSameOfAnotherValue(String schema, String passage, String instead) throws IOException {
        String text = schema.equals("cell-file") ? CellText.scara().text() : schema.equals("phrasebook") ? BOOK : SHEET;
        assertThat(text).contains(passage);
        JsonNode file = YAML.readTree(text.replace(passage, instead));
        boolean taken = Objects.requireNonNull(READERS.get(schema))
                .apply(text.replace(passage, instead))
                .badInput()
                .isEmpty();

        assertThat(allows(schema, file)).isEqualTo(taken);
    }

    @Test
    void bothTakeNamesOfTheSameLength() {
        for (int length : new int[] {1, 100, 101, 200, 201}) {
            String name = "n".repeat(length);
            for (String[] one : new String[][] {
                {"cell-file", CellText.scara().text(), "Avocet"},
                {"cell-file", CellText.scara().text(), "G-02"},
                {"motion-sheet", SHEET, "home"},
                {"motion-sheet", SHEET, "G-02"},
                {"motion-sheet", SHEET, "grip"},
                {"phrasebook", BOOK, "Plain Words"}
            }) {
                JsonNode file = YAML.readTree(one[1].replace(one[2], name));
                assertThat(allows(one[0], file))
                        .as(one[2] + " of " + length)
                        .isEqualTo(read(one[0], file).badInput().isEmpty())
                        .isEqualTo(length <= 200);
            }
        }
    }

    @Test
    void aSheetThatOnlyWaitsNeedsNoPoints() {
        JsonNode sheet = YAML.readTree("{motion-sheet: 1, steps: [{wait-s: 1}]}");

        assertThat(allows("motion-sheet", sheet)).isTrue();
        assertThat(read("motion-sheet", sheet).badInput()).isEmpty();
    }
}
