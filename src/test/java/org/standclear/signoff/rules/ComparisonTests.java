package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.rules.Comparison.Difference;

class ComparisonTests {

    private static Optional<Difference> bench(int item, Map<String, String> read) {
        return Comparison.withKnown(SignoffList.BENCH, Part.OPERATOR, item, read, Bench.expected());
    }

    private static Optional<Difference> session(Part part, int item, Map<String, String> read) {
        return Comparison.withKnown(SignoffList.SESSION, part, item, read, Bench.expected());
    }

    @Test
    void takesTheEndOfTheFingerprintInAnyCase() {
        String end = Bench.REVISION.fingerprintEnd();
        assertThat(bench(Items.PROGRAM, Map.of("fingerprint", end))).isEmpty();
        assertThat(bench(Items.PROGRAM, Map.of("fingerprint", end.toUpperCase())))
                .isEmpty();
    }

    @Test
    void refusesAnotherFingerprintWithoutGivingTheRightOneAway() {
        assertThat(bench(Items.PROGRAM, Map.of("fingerprint", "0000"))).hasValueSatisfying(difference -> {
            assertThat(difference.says())
                    .contains("another fingerprint")
                    .doesNotContain(Bench.REVISION.fingerprintEnd());
            assertThat(difference.expected()).isEqualTo(Bench.REVISION.fingerprintEnd());
            assertThat(difference.read()).isEqualTo("0000");
        });
    }

    @Test
    void comparesPowerModeAndOverrideWithTheDeclaration() {
        assertThat(bench(Items.POWER, Map.of("power", "reduced", "override", "50")))
                .isEmpty();
        assertThat(bench(Items.POWER, Map.of("power", "full", "override", "50")))
                .hasValueSatisfying(difference ->
                        assertThat(difference.says()).startsWith("Power mode read: full. Declared: reduced."));
        assertThat(bench(Items.POWER, Map.of("power", "reduced", "override", "50.1")))
                .hasValueSatisfying(difference ->
                        assertThat(difference.says()).startsWith("Override read: 50.1 %. Declared: 50 %."));
    }

    @Test
    void comparesSensitivityWithTheDayTest() {
        assertThat(bench(Items.SENSITIVITY, Map.of("sensitivity", "Level 3"))).isEmpty();
        assertThat(bench(Items.SENSITIVITY, Map.of("sensitivity", "3")))
                .as("the field is called Level")
                .isEmpty();
        assertThat(bench(Items.SENSITIVITY, Map.of("sensitivity", "2"))).isPresent();
        assertThat(bench(Items.SENSITIVITY, Map.of("sensitivity", "level"))).isPresent();
        assertThat(bench(Items.SENSITIVITY, Map.of("sensitivity", "level 2")))
                .hasValueSatisfying(difference -> assertThat(difference.says()).contains("day test read: level 3"));
    }

    @Test
    void comparesTheToolWithDeclarationAndCell() {
        assertThat(bench(Items.TOOL, Map.of("tool", "g-02", "pull", "tight"))).isEmpty();
        assertThat(bench(Items.TOOL, Map.of("tool", "V-01", "pull", "tight")))
                .hasValueSatisfying(
                        difference -> assertThat(difference.says()).startsWith("Tool read: V-01. Declared: G-02;"));
    }

    @Test
    void comparesHowItEnds() {
        assertThat(bench(Items.END, Map.of("ends", "passes", "passes", "5"))).isEmpty();
        assertThat(bench(Items.END, Map.of("ends", "passes", "passes", "6"))).isPresent();
        assertThat(bench(Items.END, Map.of("ends", "forever")))
                .hasValueSatisfying(difference -> assertThat(difference.says())
                        .isEqualTo("Read: loops until it is stopped. Declared: 5 passes."));
    }

    @Test
    void namesTheOtherPersonOnTheCard() {
        assertThat(session(Part.OPERATOR, Items.OTHER_PERSON, Map.of("other", "mateo")))
                .isEmpty();
        assertThat(session(Part.OPERATOR, Items.OTHER_PERSON, Map.of("other", "Mateo Ironbark")))
                .isEmpty();
        assertThat(session(Part.ATTENDANT, Items.OTHER_PERSON, Map.of("other", "Noor")))
                .isEmpty();
        assertThat(session(Part.OPERATOR, Items.OTHER_PERSON, Map.of("other", "Tal")))
                .hasValueSatisfying(difference ->
                        assertThat(difference.says()).startsWith("The booking names Mateo Ironbark, not Tal."));
        assertThat(session(Part.OPERATOR, Items.OTHER_PERSON, Map.of("other", "Mat")))
                .isPresent();
    }

    @Test
    void comparesWhatTwoPeopleReadWithoutNamingTheValues() {
        Answers operator = Answers.none().with(Items.POWER, Map.of("power", "reduced", "override", "50"));
        Answers same = Answers.none().with(Items.POWER, Map.of("power", "reduced", "override", "50"));
        Answers other = Answers.none().with(Items.POWER, Map.of("power", "reduced", "override", "40"));

        assertThat(Comparison.withEachOther(operator, same)).isEmpty();
        assertThat(Comparison.withEachOther(operator, other)).singleElement().satisfies(difference -> {
            assertThat(difference.says()).startsWith("Override: operator and releaser read different values.");
            assertThat(difference.says()).doesNotContain("40").doesNotContain("50");
        });
    }
}
