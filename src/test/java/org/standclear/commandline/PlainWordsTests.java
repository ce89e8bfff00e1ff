package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The shipped samples in the invented language give the answers of the motion sheets that say the same. */
class PlainWordsTests {

    private static JsonNode answer(String cell, String program) {
        StringWriter out = new StringWriter();
        Commands.run(
                new PrintWriter(out),
                new PrintWriter(new StringWriter()),
                "check",
                "--json",
                "--cell=seed-data/cells/" + cell + ".yaml",
                "--phrasebook=seed-data/phrasebooks/plain-words.yaml",
                "seed-data/programs/" + program);
        return new ObjectMapper().readTree(out.toString());
    }

    @ParameterizedTest
    @CsvSource({"avocet, peg-and-plate", "bittern, plate-shift", "curlew, screw-line", "dunlin, gantry-sort"})
    void saysTheSameAsTheSheet(String cell, String program) {
        JsonNode spoken = answer(cell, "plain-words/" + program + ".txt");
        JsonNode sheet = answer(cell, program + ".yaml");
        assertThat(spoken.get("answer")).isEqualTo(sheet.get("answer"));
        assertThat(spoken.get("declared")).isEqualTo(sheet.get("declared"));
        assertThat(without(spoken)).isEqualTo(without(sheet));
    }

    private static String without(JsonNode answer) {
        return answer.get("motion").toString().replaceAll("\"line\":\\d+", "");
    }

    @ParameterizedTest
    @CsvSource({
        "avocet, plain-words/full-power-in-the-file.txt, outside, power-mode",
        "avocet, plain-words/faster-than-declared.txt, outside, declared-matches-found",
        "avocet, plain-words/one-line-too-many.txt, outside, coverage",
        "avocet, plain-words/endless-with-a-long-rest.txt, within, loop",
        "dunlin, gantry-sort-blocks.txt, within, reading"
    })
    void givesTheExpectedAnswer(String cell, String program, String word, String check) {
        JsonNode answer = answer(cell, program);
        assertThat(answer.get("answer").asString()).isEqualTo(word);
        assertThat(answer.get("findings")
                        .valueStream()
                        .filter(one -> one.get("check").asString().equals(check)))
                .anyMatch(one -> !one.get("outcome").asString().equals("within"));
    }
}
