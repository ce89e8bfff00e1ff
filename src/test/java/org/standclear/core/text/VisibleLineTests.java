package org.standclear.core.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Categories by the Unicode Character Database: U+202E and U+200B Cf, U+00A0 and U+3000 Zs, U+2028 Zl, U+0085 Cc. */
class VisibleLineTests {

    @ParameterizedTest
    @CsvSource({"202E", "2066", "200B", "FEFF", "00AD", "00A0", "3000", "2028", "2029", "0085", "E0001"})
    void writesWhatShowsNothingByItsCodePoint(String code) {
        String hidden = Character.toString(Integer.parseInt(code, 16));
        assertThat(VisibleLine.of("run with 1" + hidden + "00")).isEqualTo("run with 1<U+" + code + ">00");
    }

    @Test
    void leavesWordsOfAnyScriptAsTheyAre() {
        for (String plain : new String[] {"", "place  a\tb", "Größe 50 %", "выше", "移動 50", "قف", "🤖 <b>&"}) {
            assertThat(VisibleLine.of(plain)).isEqualTo(plain);
        }
    }

    @Test
    void saysHowManyBlanksStandBeforeWhatIsPushedOutOfSight() {
        assertThat(VisibleLine.packed(" ".repeat(600) + "override 100" + " ".repeat(41)))
                .isEqualTo("<600 blanks>override 100<41 blanks>");
        assertThat(VisibleLine.packed("  glide" + " ".repeat(40) + "x")).isEqualTo("  glide" + " ".repeat(40) + "x");
    }
}
