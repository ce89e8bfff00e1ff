package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The shipped samples in the invented language give the answers of the motion sheets that say the same. */
class PlainWordsTests {

    private static JsonNode answer(String cell, String program, String declaration) {
        StringWriter out = new StringWriter();
        List<String> words = new ArrayList<>(List.of(
                "check",
                "--json",
                "--cell=seed-data/programs/" + cell,
                "--phrasebook=seed-data/phrasebooks/plain-words.yaml",
                "seed-data/programs/" + program));
        if (!declaration.isEmpty()) {
            words.add("--declaration=seed-data/programs/" + declaration);
        }
        Commands.run(new PrintWriter(out), new PrintWriter(new StringWriter()), words.toArray(String[]::new));
        return new ObjectMapper().readTree(out.toString());
    }

    static List<SampleProgramsTests.Sample> samples() throws Exception {
        return SampleProgramsTests.samples().stream()
                .filter(sample -> sample.program().endsWith(".yaml"))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void saysTheSameAsTheSheet(SampleProgramsTests.Sample sample) {
        String spokenProgram = "plain-words/" + sample.program().replace(".yaml", ".txt");
        JsonNode spoken = answer(sample.expected().get("cell").asString(), spokenProgram, sample.declaration());
        JsonNode sheet = answer(sample.expected().get("cell").asString(), sample.program(), sample.declaration());
        assertThat(spoken.get("answer")).isEqualTo(sheet.get("answer"));
        assertThat(spoken.get("declared")).isEqualTo(sheet.get("declared"));
        assertThat(spoken.at("/program/title")).isEqualTo(sheet.at("/program/title"));
        assertThat(without(spoken)).isEqualTo(without(sheet));
    }

    private static String without(JsonNode answer) {
        return answer.get("motion").toString().replaceAll("\"line\":\\d+", "");
    }

    /** The same sorting by a gantry in blocks: what a dwell was taken for is said in a notice. */
    @Test
    void givesTheExpectedAnswerForBlocks() {
        JsonNode answer = answer("../cells/dunlin.yaml", "gantry-sort-blocks.txt", "");
        assertThat(answer.get("answer").asString()).isEqualTo("within");
        assertThat(answer.get("findings")
                        .valueStream()
                        .filter(one -> one.get("check").asString().equals("reading")))
                .anyMatch(one -> one.get("outcome").asString().equals("notice"));
    }
}
