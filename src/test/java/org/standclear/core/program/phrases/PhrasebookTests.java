package org.standclear.core.program.phrases;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which phrasebooks are read, and what is wrong with the others. */
class PhrasebookTests {

    private static final String HEAD = "phrasebook: 1\nname: Test\nphrases:\n";

    private static String refusal(String phrases) {
        return Phrasebook.read(HEAD + phrases + "\n").badInput().orElseThrow().sentence();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "  - {pattern: 'go', means: fly} | line 4: means needs",
                "  - {pattern: 'go {place}', means: joint-move} | line 4: the pattern names the part \"place\"",
                "  - {pattern: 'go (', means: comment} | line 4: the pattern is not a regular expression",
                "  - {pattern: 'go (?=x)', means: comment} | line 4: the pattern is not a regular expression",
                "  - {pattern: '(a)\\1', means: comment} | line 4: the pattern is not a regular expression",
                "  - {pattern: 'go', means: joint-move} | line 4: a phrase that means joint-move needs x, y, z and yaw",
                "  - {pattern: 'go {x} {y} {z} {yaw}', means: joint-move} | line 4: the phrase has a length",
                "  - {pattern: 'go {point} {x}', means: joint-move, units: {length: mm}} | in two ways",
                "  - {pattern: 'fast {speed}', means: straight-speed} | line 4: the phrase has a speed and does not say its unit",
                "  - {pattern: 'fast {speed}', means: straight-speed, units: {speed: furlongs}} | line 4: speed needs",
                "  - {pattern: 'rest {time}', means: wait, units: {time: s, speed: mm/s}} | \"speed\" is not a field of units",
                "  - {pattern: 'rest {percent}', means: wait} | line 4: a phrase that means wait has no part percent",
                "  - {pattern: 'power {power}', means: power, words: {power: {hot: glowing}}} | write reduced or full",
                "  - {pattern: 'power', means: power, fixed: {power: glowing}} | write reduced or full",
                "  - {pattern: 'power {power}', means: power, fixed: {power: full}} | stands in the pattern and is fixed",
                "  - {pattern: '(a{100}){100}', means: comment} | line 4: the pattern is too large",
                "  - {pattern: 'x', means: comment, color: red} | \"color\" is not a field of a phrase",
                "  - 5 | line 4: a phrase needs named fields"
            })
    void saysWhatIsWrong(String phrases, String why) {
        assertThat(refusal(phrases)).contains(why);
    }

    @Test
    void wantsASectionInTheBeginOfSections() {
        String sections = "sections: {begin: 'part', end: 'done'}\n";
        assertThat(Phrasebook.read(HEAD.replace("phrases:\n", sections + "phrases:\n")
                                + "  - {pattern: x, means: comment}\n")
                        .badInput()
                        .orElseThrow()
                        .sentence())
                .contains("begin needs the part section");
    }

    @Test
    void showsWhatEachLineMeans() {
        Phrasebook book = Phrasebook.read(HEAD + """
                  - {pattern: 'go {point} at {percent} %', means: joint-move}
                  - {pattern: 'rest {time}', means: wait, units: {time: ms}}
                """).value();
        assertThat(book.meanings("go   home at 20 %\n\nfly\nrest 5\ngo home at 200 %\n")
                        .value())
                .containsExactly(
                        new LineMeaning(1, "go   home at 20 %", true, "joint move: percent 20 %, point home"),
                        new LineMeaning(3, "fly", false, "not understood"),
                        new LineMeaning(4, "rest 5", true, "wait: time 0.005 s"),
                        new LineMeaning(
                                5,
                                "go home at 200 %",
                                false,
                                "not understood: percent is \"200\"; write a percentage above 0 and at most 100"));
    }
}
