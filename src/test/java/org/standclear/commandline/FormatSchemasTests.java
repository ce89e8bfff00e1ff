package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** The schemas of docs/formats, by a general library for JSON Schema, hold for what is shipped and refuse what is broken. */
class FormatSchemasTests {

    private static final Path FORMATS = Path.of("docs/formats");
    private static final Path CASES = Path.of("src/test/resources/check-cases");
    private static final YAMLMapper YAML = new YAMLMapper();
    private static final SchemaRegistry SCHEMAS =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12, with -> with.schemas(schemas()));

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> files(Path folder, String ending) {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> schemas() {
        Map<String, String> byId = new HashMap<>();
        for (Path file : files(FORMATS, ".schema.json")) {
            String schema = text(file);
            byId.put(new ObjectMapper().readTree(schema).get("$id").asString(), schema);
        }
        return byId;
    }

    /** The schema of a file by the field with which its format begins. */
    private static String schemaOf(String yaml) {
        return Stream.of("cell-file", "motion-sheet", "phrasebook")
                .filter(name -> yaml.lines().anyMatch(line -> line.startsWith(name + ":")))
                .findFirst()
                .orElse("declaration");
    }

    private static List<String> faults(String schema, String yaml) {
        return json(schema, YAML.readTree(yaml).toString());
    }

    private static List<String> json(String schema, String json) {
        return SCHEMAS
                .getSchema(SchemaLocation.of("urn:standclear:" + schema + ":1"))
                .validate(json, InputFormat.JSON)
                .stream()
                .map(Object::toString)
                .toList();
    }

    private static Stream<Path> shipped() {
        return Stream.of("seed-data/cells", "seed-data/programs", "seed-data/phrasebooks")
                .flatMap(folder -> files(Path.of(folder), ".yaml").stream())
                .filter(file -> !file.endsWith("expected.yaml"));
    }

    private static Stream<Path> cases() {
        return files(CASES, "cell.yaml").stream().map(Path::getParent);
    }

    private static boolean isRefused(Path folder) {
        return new ObjectMapper()
                        .readTree(text(folder.resolve("expected.json")))
                        .get("exit")
                        .asInt()
                == Commands.WRONG_USAGE;
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void holdForWhatIsShipped(Path file) {
        assertThat(faults(schemaOf(text(file)), text(file))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void holdForTheInputsOfTheCases(Path folder) {
        assertThat(faults("cell-file", text(folder.resolve("cell.yaml")))).isEmpty();
        if (!isRefused(folder)) {
            assertThat(faults("motion-sheet", text(folder.resolve("program.yaml"))))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void holdForTheAnswers(Path folder) {
        if (!isRefused(folder)) {
            assertThat(json("answer", answer(folder.resolve("cell.yaml"), folder.resolve("program.yaml"))))
                    .isEmpty();
        }
    }

    private static String answer(Path cell, Path program) {
        StringWriter out = new StringWriter();
        Commands.run(
                new PrintWriter(out),
                new PrintWriter(new StringWriter()),
                "check",
                "--json",
                "--cell",
                cell.toString(),
                "--phrasebook",
                "seed-data/phrasebooks/plain-words.yaml",
                program.toString());
        return out.toString();
    }

    @Test
    void holdForTheAnswersOfTheOtherReaders() {
        Path programs = Path.of("seed-data/programs");
        Path dunlin = Path.of("seed-data/cells/dunlin.yaml");
        assertThat(json("answer", answer(dunlin, programs.resolve("gantry-sort-blocks.txt"))))
                .isEmpty();
        assertThat(json("answer", answer(dunlin, programs.resolve("plain-words/gantry-sort.txt"))))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "seed-data/cells/avocet.yaml, speed: 450, speed: 0",
        "seed-data/cells/avocet.yaml, kind: scara, kind: crane",
        "seed-data/cells/avocet.yaml, version: 7, version: 7.5",
        "seed-data/cells/avocet.yaml, fitted-tool:, colour:",
        "seed-data/cells/avocet.yaml, override-percent: 50, override-percent: 101",
        "seed-data/programs/peg-and-plate.yaml, motion-sheet: 1, motion-sheet: 2",
        "seed-data/programs/peg-and-plate.yaml, speed-mm-s: 80, speed: 80",
        "seed-data/programs/peg-and-plate.yaml, loop: 5, loop: 0",
        "seed-data/programs/peg-and-plate.yaml, elbow: right, elbow: up",
        "seed-data/programs/peg-and-plate.yaml, wait-s: 0.5, wait-s: -0.5",
        "seed-data/programs/declared-differs.declaration.yaml, override-percent, override",
        "seed-data/phrasebooks/plain-words.yaml, means: wait, means: sleep",
        "seed-data/phrasebooks/plain-words.yaml, {time: ms}, {time: days}",
        "seed-data/phrasebooks/plain-words.yaml, gentle: reduced, gentle: low"
    })
    void refuseWhatIsBroken(Path file, String passage, String instead) {
        String whole = text(file);
        assertThat(whole).contains(passage);
        assertThat(faults(schemaOf(whole), whole.replace(passage, instead))).isNotEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "answer\": \"within, answer\": \"perhaps",
        "kind\": \"joint, kind\": \"leap",
        "sha256, sha1",
        "outcome\": \"within, outcome\": \"fine"
    })
    void refuseBrokenAnswers(String passage, String instead) {
        String whole = answer(Path.of("seed-data/cells/avocet.yaml"), Path.of("seed-data/programs/peg-and-plate.yaml"));
        assertThat(whole).contains(passage);
        assertThat(json("answer", whole.replace(passage, instead))).isNotEmpty();
    }
}
