package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.standclear.core.Outcomes.of;
import static org.standclear.core.Outcomes.outcome;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.check.CheckAnswer;

/** A tool point far aside leaves flange and tool body out of what the overhang covers: that is said, and nothing changes. */
class ToolBodyTests {

    private static CheckAnswer with(String offset, String overhang) {
        return SheetText.scara()
                .checkedOn(CellText.scara()
                        .with("offset-mm: [0, 0, -60]", "offset-mm: [" + offset + "]")
                        .with("overhang-mm: 25", "overhang-mm: " + overhang));
    }

    /** 3, 4, 5 is the right triangle of Euclid's lemma: 30 and 40 mm aside are 50 mm. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"30, 40, -60 | 49.99 | 2", "30, 40, -60 | 50 | 1", "0, 0, -60 | 0 | 1"})
    void noticesAToolPointAsideOfItsOverhang(String offset, String overhang, int findings) {
        assertThat(of(with(offset, overhang), Check.TOOL_FITTED)).hasSize(findings);
        assertThat(outcome(with(offset, overhang), Check.TOOL_FITTED)).isEqualTo("within");
    }

    @Test
    void saysHowFarAndStaysANotice() {
        Finding notice = of(with("30, 40, -60", "25"), Check.TOOL_FITTED).get(1);

        assertThat(notice.outcome()).isEqualTo("notice");
        assertThat(notice.blocks()).isFalse();
        assertThat(notice.details().says())
                .isEqualTo(
                        "Flange and tool body of G-02 stand 50 mm out from the tool point and are not counted: give an"
                                + " overhang of at least that.");
    }

    @Test
    void countsAGantryFromItsOrigin() {
        SheetText sheet = SheetText.of("a: {x: 20, y: 100, z: 50, yaw: 0}", "wait-s: 1");

        assertThat(of(sheet.checkedOn(CellText.gantry()), Check.SEPARATION)
                        .get(0)
                        .details()
                        .says())
                .contains("mm from the frame's origin")
                .doesNotContain("axis 1");
        assertThat(of(SheetText.scara().checkedOn(CellText.scara()), Check.SEPARATION)
                        .get(0)
                        .details()
                        .says())
                .contains("mm from axis 1");
    }
}
