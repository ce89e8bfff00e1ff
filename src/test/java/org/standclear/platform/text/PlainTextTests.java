package org.standclear.platform.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.platform.text.PlainText.Fine;
import org.standclear.platform.text.PlainText.Refused;

class PlainTextTests {

    @Test
    void trimsAndComposes() {
        assertThat(PlainText.check("  Zoe\u0308 \t", 20)).isEqualTo(new Fine("Zo\u00eb"));
    }

    @Test
    void keepsMarkupAsText() {
        assertThat(PlainText.check("<b>Noor</b> & 'co'", 40)).isEqualTo(new Fine("<b>Noor</b> & 'co'"));
    }

    @ParameterizedTest
    @NullSource
    @ValueSource(strings = {"", "   ", "\u2003"})
    void refusesNothing(String raw) {
        assertThat(PlainText.check(raw, 20)).isEqualTo(new Refused("Write something here."));
    }

    @Test
    void countsAtJustUnderAndJustOver() {
        assertThat(PlainText.check("abcd", 5)).isInstanceOf(Fine.class);
        assertThat(PlainText.check("abcde", 5)).isInstanceOf(Fine.class);
        assertThat(PlainText.check("abcdef", 5)).isEqualTo(new Refused("Use 5 characters at most; this has 6."));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a\u0000b",
                "a\u0007b",
                "a\nb",
                "a\u001bb",
                "a\u0085b",
                "a\u202eb",
                "a\u2066b",
                "a\ud800b",
                "a\u2028b",
                "a\ufeffb",
                "a\ufffdb",
                "a\uffffb",
                "a\ue000b",
                "a\u200bb"
            })
    void refusesWhatSteers(String raw) {
        assertThat(PlainText.check(raw, 20))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.says()).startsWith("Leave out character 2: U+"));
    }

    @Test
    void keepsLettersOfAnyScriptAndPictures() {
        assertThat(PlainText.check("\u0646\u0648\u0631 \u9ad8\u6a4b \ud83e\udd16", 20))
                .isInstanceOf(Fine.class);
    }

    @Test
    void keepsLinesWhereTheyAreAsked() {
        assertThat(PlainText.checkLines("first\r\nsecond\rthird", 40)).isEqualTo(new Fine("first\nsecond\nthird"));
        assertThat(PlainText.checkLines("first\u0000", 40)).isInstanceOf(Refused.class);
    }
}
