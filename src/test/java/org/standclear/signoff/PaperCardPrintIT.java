package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;

/** The card for a day without the program, as a browser prints it: one side of A4 (ISO 216), with every question on it. */
@OnH2
@BrowserTest
class PaperCardPrintIT {

    private static final String PASSWORD = "four beaks on a quiet pier";

    /** ISO 216: 210 by 297 mm, in points of 1/72 inch, here rounded as PDF writers do. */
    private static final float A4_WIDTH = 595;

    private static final float A4_HEIGHT = 842;
    private static final float ROUNDING = 1;

    /** What office printers leave white at the edges, from memory: 5 mm. */
    private static final float UNPRINTED = 14;

    @Autowired
    CellRegister register;

    @Autowired
    PeopleRegister people;

    @Test
    void isOneSideOfPaperWithEveryQuestion(Browser browser) throws IOException {
        CellId cell = SampleCell.inForce(register, SampleCell.name());
        String login = "t" + UUID.randomUUID();
        Outcome added = people.add(
                new NewPerson(login, "Adaeze Lanternby", Set.of(Role.TECHNICIAN), new Password.Chosen(PASSWORD), null));
        assertThat(added).isInstanceOf(Outcome.Done.class);
        browser.visit("/sign-in");
        browser.find("input[name=username]").sendKeys(login);
        browser.find("input[name=password]").sendKeys(PASSWORD);
        browser.find("main form button").click();
        browser.find("nav.tabs");
        browser.visit("/cells/" + cell + "/card").find("[data-paper=card]");
        assertThat(browser.driver().findElements(By.cssSelector(".marks li > [data-size=mark]")))
                .hasSize(6)
                .allSatisfy(square -> assertThat(square.getSize().getWidth())
                        .isEqualTo(square.getSize().getHeight()));
        Object pdf = browser.driver()
                .executeCdpCommand(
                        "Page.printToPDF",
                        Map.of("preferCSSPageSize", true, "paperWidth", 210 / 25.4, "paperHeight", 297 / 25.4))
                .get("data");

        Letters letters = new Letters();
        try (var document = Loader.loadPDF(Base64.getDecoder().decode(String.valueOf(pdf)))) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            var page = document.getPage(0).getMediaBox();
            assertThat(Math.abs(page.getWidth() - A4_WIDTH)).isLessThan(ROUNDING);
            assertThat(Math.abs(page.getHeight() - A4_HEIGHT)).isLessThan(ROUNDING);
            String text = letters.getText(document).replaceAll("\\s+", " ");
            assertThat(text)
                    .contains(
                            "In service, no tag?",
                            "Day test passed today?",
                            "Last run closed out?",
                            "Inspection and review not overdue?",
                            "Both people authorised here?",
                            "answer in force for this file and cell version?",
                            "Which program is loaded?",
                            "Hands clear, everyone behind the stand line",
                            "After any stop: the cause known first",
                            "then a new card",
                            "Someone hurt? Call")
                    .containsSubsequence("Day test passed today?", "Which program is loaded?", "Goes on until");
        }
        assertThat(letters.at).isNotEmpty().allSatisfy(letter -> {
            assertThat(letter.getXDirAdj()).isGreaterThan(UNPRINTED);
            assertThat(letter.getXDirAdj() + letter.getWidthDirAdj()).isLessThan(A4_WIDTH - UNPRINTED);
            assertThat(letter.getYDirAdj()).isBetween(UNPRINTED, A4_HEIGHT - UNPRINTED);
        });
    }

    /** Where each letter stands on the page. */
    private static final class Letters extends PDFTextStripper {

        private final List<TextPosition> at = new ArrayList<>();

        @Override
        protected void processTextPosition(TextPosition text) {
            at.add(text);
            super.processTextPosition(text);
        }
    }
}
