package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/**
 * Every sample program, as a motion sheet and in the invented language, gets the answer that expected.yaml works out from
 * the specification of the check, through the command line.
 */
class SampleProgramsTests {

    private static final Path FOLDER = Path.of("seed-data", "programs");
    private static final YAMLMapper YAML = new YAMLMapper();

    /** The outcomes by which a required finding keeps a program from being within limits. */
    private static final Set<String> NOT_PASSED = Set.of("outside", "not-checkable");

    /** Advised in the demo's cells: not checkable there does not block. */
    private static final Set<String> ADVISED = Set.of("contact", "separation", "moving-part-speed");

    /** One program on one cell. */
    record Sample(String program, String declaration, JsonNode expected) {

        @Override
        public String toString() {
            return program + " on " + expected.get("cell").asString();
        }
    }

    static List<Sample> samples() throws Exception {
        List<Sample> samples = new ArrayList<>();
        for (JsonNode sample : listed("samples")) {
            samples.addAll(samples(sample, sample.get("program").asString()));
            samples.addAll(samples(sample, spoken(sample)));
        }
        for (JsonNode sample : listed("spoken-only")) {
            samples.addAll(samples(sample, sample.get("program").asString()));
        }
        return samples;
    }

    private static List<Sample> samples(JsonNode listed, String program) {
        String declaration = listed.path("declaration").asString("");
        return listed.get("answers")
                .valueStream()
                .map(expected -> new Sample(program, declaration, expected))
                .toList();
    }

    /** The same program in the invented language. */
    static String spoken(JsonNode sample) {
        return "plain-words/" + sample.get("program").asString().replace(".yaml", ".txt");
    }

    static JsonNode listed(String which) throws Exception {
        return YAML.readTree(Files.readString(FOLDER.resolve("expected.yaml"))).get(which);
    }

    @ParameterizedTest
    @MethodSource("samples")
    void answersAsTheSpecificationSays(Sample sample) throws Exception {
        JsonNode answer = answer(sample);
        JsonNode expected = sample.expected();
        JsonNode decisive = expected.get("decisive");
        String check = decisive.get("check").asString();

        assertThat(answer.get("answer")).isEqualTo(expected.get("answer"));
        List<JsonNode> found = findings(answer)
                .filter(one -> one.get("check").asString().equals(check))
                .filter(one -> one.get("outcome").equals(decisive.get("outcome")))
                .toList();
        assertThat(found).as(answer.get("findings").toString()).isNotEmpty();
        for (String figure : List.of("observed", "limit")) {
            if (decisive.has(figure)) {
                assertThat(found.get(0).get(figure).asDouble())
                        .isCloseTo(decisive.get(figure).asDouble(), within(1e-6));
            }
        }
        if (expected.has("fastest-part")) {
            assertThat(answer.at("/motion/fastest-part")).isEqualTo(expected.get("fastest-part"));
        }
        Set<String> may = new HashSet<>(ADVISED);
        may.add(check);
        expected.path("also-blocks").forEach(other -> may.add(other.asString()));
        assertThat(findings(answer)
                        .filter(one -> NOT_PASSED.contains(one.get("outcome").asString()))
                        .map(one -> one.get("check").asString()))
                .as("nothing else keeps it from being within limits")
                .allMatch(may::contains);
    }

    @Test
    void expectsAnAnswerForEveryProgramThatIsShipped() throws Exception {
        Set<String> sheets = new TreeSet<>();
        Set<String> spoken = new TreeSet<>();
        for (JsonNode sample : listed("samples")) {
            sheets.add(sample.get("program").asString());
            spoken.add(spoken(sample));
        }
        listed("spoken-only").forEach(sample -> spoken.add(sample.get("program").asString()));
        assertThat(shipped("", ".yaml")
                        .filter(name -> !name.equals("expected.yaml") && !name.endsWith(".declaration.yaml")))
                .containsExactlyInAnyOrderElementsOf(sheets)
                .hasSizeGreaterThanOrEqualTo(14);
        assertThat(shipped("plain-words", ".txt")).containsExactlyInAnyOrderElementsOf(spoken);
    }

    private static Stream<String> shipped(String folder, String ending) throws Exception {
        try (Stream<Path> files = Files.list(FOLDER.resolve(folder))) {
            return files
                    .filter(Files::isRegularFile)
                    .map(file -> FOLDER.relativize(file).toString())
                    .filter(name -> name.endsWith(ending))
                    .toList()
                    .stream();
        }
    }

    @Test
    void saysInTheDocumentsWhatEachOfThemShows() throws Exception {
        String page = Files.readString(Path.of("docs", "samples.md"));
        for (String which : List.of("samples", "spoken-only")) {
            for (JsonNode sample : listed(which)) {
                assertThat(page).contains("| `" + sample.get("program").asString() + "` |");
            }
        }
    }

    private static JsonNode answer(Sample sample) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        List<String> words = new ArrayList<>(List.of("check", "--json", "--cell"));
        words.add(FOLDER.resolve(sample.expected().get("cell").asString()).toString());
        words.add(FOLDER.resolve(sample.program()).toString());
        if (sample.program().startsWith("plain-words/")) {
            words.add("--phrasebook=seed-data/phrasebooks/plain-words.yaml");
        }
        if (!sample.declaration().isEmpty()) {
            words.add("--declaration");
            words.add(FOLDER.resolve(sample.declaration()).toString());
        }
        int exit = Commands.run(new PrintWriter(out), new PrintWriter(err), words.toArray(String[]::new));
        assertThat(err.toString()).isEmpty();
        assertThat(exit)
                .isEqualTo(List.of("within", "outside", "not-checkable")
                        .indexOf(sample.expected().get("answer").asString()));
        return YAML.readTree(out.toString());
    }

    private static Stream<JsonNode> findings(JsonNode answer) {
        return StreamSupport.stream(answer.get("findings").spliterator(), false);
    }
}
