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

    @Test
    void mendsInsteadOfRefusing() {
        assertThat(PlainText.mended(" peg\u202etxt.exe\u2066 ", 40)).isEqualTo("peg txt.exe");
        assertThat(PlainText.mended("a\ud800b\u0085c\ufeffd", 40)).isEqualTo("a b c d");
        assertThat(PlainText.mended("\u202e\u200b", 40)).isEmpty();
        assertThat(PlainText.mended(null, 40)).isEmpty();
        assertThat(PlainText.mended("Zoe\u0308", 40)).isEqualTo("Zo\u00eb");
    }

    @Test
    void cutsBetweenCharacters() {
        String robot = "\ud83e\udd16";
        assertThat(PlainText.mended("abcde", 5)).isEqualTo("abcde");
        assertThat(PlainText.mended("abcdef", 5)).isEqualTo("abcd\u2026");
        assertThat(PlainText.mended(robot.repeat(3), 5)).isEqualTo(robot.repeat(2) + "\u2026");
        assertThat(PlainText.mended(robot.repeat(3), 4)).isEqualTo(robot + "\u2026");
        assertThat(PlainText.check(PlainText.mended(robot.repeat(3), 4), 4)).isInstanceOf(Fine.class);
    }
}
