package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.outcome;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckAnswer.Answer;

/** The contact estimate never says more than the table it comes from: blunt, free to give way, the listed regions. */
class ContactWordsTests {

    private static final String HAND = "contact: {regions: [hand-and-fingers, lower-arm-and-wrist], rule: advised}";

    private static final CellText EDGED = CellText.scara().with("edges: false", "edges: true");

    private static CellText required(CellText cell) {
        return cell.with(HAND, HAND.replace("advised", "required"));
    }

    @Test
    void cannotCheckAToolWithEdges() {
        CheckAnswer blunt = SheetText.scara().checkedOn(CellText.scara());
        CheckAnswer edged = SheetText.scara().checkedOn(EDGED);

        assertThat(outcome(blunt, Check.CONTACT)).isEqualTo("within");
        assertThat(outcome(edged, Check.CONTACT)).isEqualTo("not-checkable");
        assertThat(details(edged, Check.CONTACT).says())
                .startsWith("The fitted tool G-02 has edges")
                .contains("ISO/TS 15066:2016 Annex A are for blunt contact");
        assertThat(details(edged, Check.CONTACT).limit())
                .isEqualTo(details(blunt, Check.CONTACT).limit());
        assertThat(edged.answer()).as("an advised check does not block").isEqualTo(Answer.WITHIN);
    }

    @Test
    void blocksWithEdgesWhereContactIsRequired() {
        assertThat(SheetText.scara().checkedOn(required(CellText.scara())).answer())
                .isEqualTo(Answer.WITHIN);
        assertThat(SheetText.scara().checkedOn(required(EDGED)).answer()).isEqualTo(Answer.NOT_CHECKABLE);
    }

    @Test
    void isOutsideWithEdgesWhenABluntToolWouldBe() {
        CellText weak = EDGED.with(
                HAND,
                "contact: {regions: [hand-and-fingers], rule: required, values: {hand-and-fingers: {contact: true,"
                        + " quasi-static-n: 1.4, stiffness-n-per-mm: 75, mass-kg: 0.6, source: page 9}}}");

        assertThat(outcome(SheetText.scara().checkedOn(weak), Check.CONTACT)).isEqualTo("outside");
    }

    @Test
    void saysWhatItIsForAndWhatItLeavesOut() {
        assertThat(details(SheetText.scara().checkedOn(CellText.scara()), Check.CONTACT)
                        .says())
                .contains("for a part of the body that can give way")
                .contains("caught between tool and table it bears half the force, so half the speed")
                .contains("Regions that are not listed, the head among them, are not looked at.");
        CellText face = CellText.scara().with("[hand-and-fingers, lower", "[" + BodyRegion.FACE.word() + ", lower");
        assertThat(details(SheetText.scara().checkedOn(face), Check.CONTACT).says())
                .contains("Regions that are not listed are not looked at.")
                .doesNotContain("the head");
    }

    @Test
    void leavesTheDemosScrewLineToItsReleaser() throws Exception {
        CellText curlew = new CellText(Files.readString(Path.of("seed-data/cells/curlew.yaml")));
        CheckAnswer answer =
                new SheetText(Files.readString(Path.of("seed-data/programs/screw-line.yaml"))).checkedOn(curlew);

        assertThat(outcome(answer, Check.CONTACT)).isEqualTo("not-checkable");
        assertThat(answer.answer()).isEqualTo(Answer.WITHIN);
    }
}
