package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffList;

class ReadingTests {

    private static ListItem item(int number) {
        return Items.of(SignoffList.BENCH, Part.OPERATOR, false).stream()
                .filter(one -> one.number() == number)
                .findFirst()
                .orElseThrow();
    }

    private static Reading read(int number, Map<String, String> typed) {
        return Reading.of(item(number), typed);
    }

    private static String refused(int number, Map<String, String> typed) {
        assertThat(read(number, typed)).isInstanceOf(Reading.Unread.class);
        return ((Reading.Unread) read(number, typed)).says();
    }

    @Test
    void tidiesNumbers() {
        assertThat(read(Items.POWER, Map.of("power", "reduced", "override", " 50,0 ")))
                .isEqualTo(new Reading.Read(new java.util.TreeMap<>(Map.of("power", "reduced", "override", "50"))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "NaN", "Infinity", "-5", "1e2", "0", "100.1", "fifty", "50 %"})
    void refusesOverridesThatAreNone(String typed) {
        assertThat(refused(Items.POWER, Map.of("power", "reduced", "override", typed)))
                .isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "3f2", "3f2aa", "xyzw", "3f 2"})
    void refusesWhatIsNotTheEndOfAFingerprint(String typed) {
        assertThat(refused(Items.PROGRAM, Map.of("fingerprint", typed))).isNotEmpty();
    }

    @Test
    void refusesControlCharactersAndLongTexts() {
        assertThat(refused(Items.SENSITIVITY, Map.of("sensitivity", "a\u0007b")))
                .isNotEmpty();
        assertThat(refused(Items.SENSITIVITY, Map.of("sensitivity", "x".repeat(61))))
                .contains("60");
    }

    @Test
    void stopsTheListOnAnActThatIsNotDone() {
        assertThat(refused(Items.TOOL, Map.of("tool", "G-02", "pull", "loose")))
                .isEqualTo("Have it fitted tight first, then answer.");
        assertThat(refused(Items.TOOL, Map.of("tool", "G-02", "pull", "maybe"))).startsWith("Choose one");
        assertThat(refused(Items.TOOL, Map.of("tool", "G-02"))).startsWith("Choose one");
    }

    @Test
    void asksForPassesOnlyWhenItHasAny() {
        assertThat(read(Items.END, Map.of("ends", "forever"))).isInstanceOf(Reading.Read.class);
        assertThat(refused(Items.END, Map.of("ends", "passes"))).isNotEmpty();
        assertThat(refused(Items.END, Map.of("ends", "passes", "passes", "2.5")))
                .contains("whole number");
    }

    @Test
    void hasNineItemsInTheOrderOfTheCardAndNoneIsATick() {
        assertThat(Items.of(SignoffList.BENCH, Part.OPERATOR, false))
                .extracting(ListItem::number)
                .containsExactly(1, 2, 3, 4, 5, 6);
        assertThat(Items.of(SignoffList.BENCH, Part.ATTENDANT, false))
                .extracting(ListItem::number)
                .containsExactly(7);
        assertThat(Items.of(SignoffList.BENCH, Part.RELEASER, false))
                .extracting(ListItem::number)
                .containsExactly(2, 8);
        assertThat(Items.of(SignoffList.BENCH, Part.OPERATOR, true))
                .extracting(ListItem::number)
                .containsExactly(1, 2);
        for (SignoffList list : SignoffList.values()) {
            for (Part part : list.parts()) {
                assertThat(Items.of(list, part, false)).allSatisfy(item -> {
                    assertThat(item.fields()).isNotEmpty();
                    assertThat((item.challenge() + " " + item.hint()).strip().split("\\s+"))
                            .as("words of instruction at a time")
                            .hasSizeLessThanOrEqualTo(12);
                });
            }
        }
    }
}
