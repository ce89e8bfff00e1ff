package org.standclear.testing.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Cookie;
import org.standclear.testing.OnH2;

/** The support for browser tests sees what it is meant to see, on pages planted here. */
@OnH2
@BrowserTest
class BrowserIT {

    private static String page(String body) {
        String html =
                "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Planted</title></head><body><main>"
                        + body + "</main></body></html>";
        return "data:text/html;base64," + Base64.getEncoder().encodeToString(html.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void findsWhatKeepsPeopleOut(Browser browser) {
        browser.visit(page("<h1>Cells</h1><img src=\"data:,\"><input type=\"text\">"));

        assertThat(browser.accessibilityFindings())
                .anySatisfy(finding -> assertThat(finding).startsWith("image-alt (critical)"))
                .anySatisfy(finding -> assertThat(finding).startsWith("label (critical)"));
    }

    @Test
    void findsNothingOnAPlainPage(Browser browser) {
        browser.visit(page("<h1>Cells</h1><p>Four of them.</p>"));

        assertThat(browser.accessibilityFindings()).isEmpty();
    }

    @Test
    void actsByLabelsAndButtons(Browser browser) {
        browser.visit(page("<form><label for=\"n\">Operator's name</label><input id=\"n\" name=\"n\">"
                + "<label>Cell <select name=\"c\"><option>Avocet</option><option>Bittern</option></select></label>"
                + "<button type=\"button\" onclick=\"document.querySelector('h1').textContent = "
                + "document.getElementById('n').value\">Show</button></form><h1></h1>"));

        browser.fill("Operator's name", "Noor").press("Show");

        assertThat(browser.waitForText("Noor").find("h1").getText()).isEqualTo("Noor");
    }

    @Test
    void givesEachPersonCookiesOfTheirOwn(Browser noor, Browser mateo) {
        noor.visit("/actuator/health");
        mateo.visit("/actuator/health");

        noor.driver().manage().addCookie(new Cookie("who", "noor"));

        assertThat(noor.driver().manage().getCookieNamed("who")).isNotNull();
        assertThat(mateo.driver().manage().getCookieNamed("who")).isNull();
    }

    @Test
    void startsWithoutCookiesOfTheTestBefore(Browser browser) {
        browser.visit("/actuator/health");

        assertThat(browser.driver().manage().getCookieNamed("who")).isNull();
    }

    @Test
    void showsPagesAtTheSizeOfAPhone(Browser browser, @TempDir Path folder) {
        browser.visit(page("<h1>Cells</h1>")).resize(ScreenSize.PHONE);

        assertThat(browser.driver().executeScript("return document.documentElement.clientWidth"))
                .isIn(390L, 980L);
        Path picture = browser.picture(folder, "cells");
        assertThat(picture).isNotEmptyFile();
    }
}
