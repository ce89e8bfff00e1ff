package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;

/** The bench screen's own card as a browser prints it: one side of A4 (ISO 216), with nothing cut and nothing to press. */
@OnH2
@BrowserTest
class BenchCardPrintIT extends BenchCases {

    /** ISO 216: 210 by 297 mm, in points of 1/72 inch, here rounded as PDF writers do. */
    private static final float A4_WIDTH = 595;

    private static final float A4_HEIGHT = 842;
    private static final float ROUNDING = 1;

    /** What office printers leave white at the edges, from memory: 5 mm. */
    private static final float UNPRINTED = 14;

    private @Nullable Browser browser;

    private final List<TextPosition> letters = new ArrayList<>();

    @BeforeEach
    void aTechnicianAtTheBench(Browser theirs) {
        browser = theirs;
        theirs.visit("/sign-in")
                .fill("Sign-in name", scene().adaeze.login())
                .fill("Password", BenchScene.PASSWORD)
                .press("Sign in");
        assertThat(theirs.path()).doesNotContain("sign-in");
    }

    /** What is printed, as one line of text. */
    private String printed() throws IOException {
        Browser browser = Objects.requireNonNull(this.browser);
        browser.visit("/bench/" + scene().cell).find("main[data-stage]");
        Object data = browser.driver()
                .executeCdpCommand(
                        "Page.printToPDF",
                        Map.of("preferCSSPageSize", true, "paperWidth", 210 / 25.4, "paperHeight", 297 / 25.4))
                .get("data");
        byte[] pdf = Base64.getDecoder().decode(String.valueOf(data));
        try (var document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).as("sides").isEqualTo(1);
            var page = document.getPage(0).getMediaBox();
            assertThat(Math.abs(page.getWidth() - A4_WIDTH)).isLessThan(ROUNDING);
            assertThat(Math.abs(page.getHeight() - A4_HEIGHT)).isLessThan(ROUNDING);
            String text = new Letters().getText(document).replaceAll("\\s+", " ");
            assertNothingIsCut();
            return text;
        }
    }

    private void assertNothingIsCut() {
        assertThat(letters).isNotEmpty().allSatisfy(letter -> {
            assertThat(letter.getXDirAdj()).isGreaterThan(UNPRINTED);
            assertThat(letter.getXDirAdj() + letter.getWidthDirAdj()).isLessThan(A4_WIDTH - UNPRINTED);
            assertThat(letter.getYDirAdj()).isBetween(UNPRINTED, A4_HEIGHT - UNPRINTED);
        });
    }

    private static void assertSaysWhoAndWhat(String text) {
        assertThat(text)
                .contains(
                        "Wed 10:07-10:37",
                        "version 1",
                        "Noor Candlewick",
                        "Mateo Ironbark",
                        "Peg and plate, revision 1",
                        "Within limits",
                        "In full power this program would reach")
                .doesNotContain("Log: the", "Sign out", "Hold the cell", "Take the release back");
    }

    @Test
    void isOneSideWithTheRelease() throws IOException {
        Release release = scene().released();
        String text = printed();
        assertSaysWhoAndWhat(text);
        assertThat(text)
                .contains("Released until 10:19", release.code(), "turn until 10:24")
                .as("paper does not count down")
                .doesNotContain(" left");
    }

    @Test
    void isOneSideWhileTheListIsSigned() throws IOException {
        scene().ready();
        scene().answerAndSign(Part.OPERATOR, scene().noor);
        scene().answerAndSign(Part.ATTENDANT, scene().mateo);
        scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
        assertThat(printed())
                .contains("Noor Candlewick, operator: signed 10:09", "Mateo Ironbark, e-stop attendant: signed 10:09");
    }

    @Test
    void isOneSideWhenNothingIsBooked() throws IOException {
        clock.moveTo(scene().now().end());
        assertThat(printed()).contains("Nobody is booked here now.");
    }

    /** Keeps where each letter stands. */
    private final class Letters extends PDFTextStripper {

        @Override
        protected void processTextPosition(TextPosition text) {
            letters.add(text);
            super.processTextPosition(text);
        }
    }
}
