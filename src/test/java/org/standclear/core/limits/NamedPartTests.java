package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.outcome;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.check.CheckAnswer;

/**
 * A part that the cell file lists is weighed by name. The cases are worked by hand: the tool has 0.42 kg and the cell's limit
 * is 1.0 kg, so a part of 0.58 kg is the heaviest within.
 */
class NamedPartTests {

    private static final double GRAMS = 1e-9;

    private static SheetText naming(String declared) {
        return SheetText.scara().with("  part-kg: 0.06", declared);
    }

    private static CellText listing(String mass) {
        return CellText.scara().listing("{name: plate, mass-kg: 0.12}", "{name: peg, mass-kg: " + mass + "}");
    }

    @ParameterizedTest
    @CsvSource({
        "0.06, within, 0.48",
        "0.58, within, 1.0",
        "0.5800000005, within, 1.0000000005",
        "0.58001, outside, 1.00001",
        "0.7, outside, 1.12"
    })
    void weighsTheNamedPart(String mass, String outcome, double together) {
        CheckAnswer answer = naming("  part: peg").checkedOn(listing(mass));

        assertThat(outcome(answer, Check.PAYLOAD)).isEqualTo(outcome);
        assertThat(Objects.requireNonNull(details(answer, Check.PAYLOAD).observed()))
                .isCloseTo(together, within(GRAMS));
        assertThat(details(answer, Check.PAYLOAD).says()).contains("lists \"peg\" with");
    }

    @Test
    void touchesAsThatMassTouches() {
        CheckAnswer named = naming("  part: peg").checkedOn(listing("0.5"));
        CheckAnswer typed = naming("  part-kg: 0.5").checkedOn(listing("0.06"));

        assertThat(ContactSpeeds.of(named.program()))
                .isNotEmpty()
                .isEqualTo(ContactSpeeds.of(typed.program()))
                .isNotEqualTo(ContactSpeeds.of(
                        naming("  part: peg").checkedOn(listing("0.06")).program()));
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.06, within, 0.48", "0.7, 0.06, outside, 1.12", "0.06, 0.7, outside, 1.12"})
    void takesTheHeavierOfListedAndDeclared(String typed, String listed, String outcome, double together) {
        CheckAnswer answer = naming("  part: peg\n  part-kg: " + typed).checkedOn(listing(listed));

        assertThat(outcome(answer, Check.PAYLOAD)).isEqualTo(outcome);
        assertThat(Objects.requireNonNull(details(answer, Check.PAYLOAD).observed()))
                .isCloseTo(together, within(GRAMS));
        assertThat(details(answer, Check.PAYLOAD).says()).contains("the heavier counts");
    }

    @Test
    void cannotWeighAPartThatIsNotListed() {
        CheckAnswer answer = naming("  part: cup").checkedOn(listing("0.06"));

        assertThat(outcome(answer, Check.PAYLOAD)).isEqualTo("not-checkable");
        assertThat(answer.answer()).isEqualTo(CheckAnswer.Answer.NOT_CHECKABLE);
        assertThat(details(answer, Check.PAYLOAD).says()).contains("lists no part \"cup\"", "plate", "peg");
        assertThat(outcome(answer, Check.CONTACT)).isEqualTo("not-checkable");
        assertThat(details(naming("  part: cup").checkedOn(CellText.scara()), Check.PAYLOAD)
                        .says())
                .contains("It lists none: declare part-kg");
        assertThat(outcome(naming("  part: cup\n  part-kg: 0.7").checkedOn(listing("0.06")), Check.PAYLOAD))
                .as("what is declared is too much already")
                .isEqualTo("outside");
    }

    @Test
    void leavesAProgramAloneThatNamesNone() {
        CheckAnswer answer = SheetText.scara().checkedOn(listing("0.9"));

        assertThat(outcome(answer, Check.PAYLOAD)).isEqualTo("within");
        assertThat(details(answer, Check.PAYLOAD).says()).doesNotContain("lists");
    }

    @ParameterizedTest
    @ValueSource(strings = {".nan", "-0.1", ".inf", "heavy", "1e99"})
    void refusesAMassThatIsNone(String mass) {
        assertThat(CellFileReader.read(listing(mass).text()).badInput()).isPresent();
    }

    @Test
    void refusesAPartThatStandsTwice() {
        CellText twice = CellText.scara().listing("{name: peg, mass-kg: 0.1}", "{name: peg, mass-kg: 0.2}");

        assertThat(CellFileReader.read(twice.text()).badInput().orElseThrow().toString())
                .contains("stands here a second time");
    }
}
