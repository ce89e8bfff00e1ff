package org.standclear.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;

/** Makes the README's pictures from the demo college, so that they show what somebody who starts it will see. */
@DemoOnH2
@BrowserTest
@EnabledIfSystemProperty(named = "pictures", matches = "true", disabledReason = "made with -Dpictures=true")
class ReadmePicturesIT {

    @LocalServerPort
    int port;

    @Test
    void showsTheScreensThatTheReadmeNames(Browser browser) {
        signIn(browser, "noor");
        see(browser, "/me", "my-page");
        see(browser, "/book", "book");
        String program = first(browser, "/me", "a[href^=/programs/]");
        String answer = first(browser, program, "a[href^=/checks/]");
        see(browser, answer, "check");
        browser.driver().executeScript("document.querySelector('figure.drawing').scrollIntoView()");
        browser.pictureOfScreen("check-drawn");
        browser.driver().manage().deleteAllCookies();
        signIn(browser, "adaeze");
        see(browser, "/today", "today");
        see(browser, "/desk", "desk");
        browser.driver().manage().deleteAllCookies();
        signIn(browser, "bench");
        see(browser, first(browser, "/bench", "a[href^=/bench/]"), "bench-list");
    }

    private static void signIn(Browser browser, String login) {
        browser.resize(ScreenSize.DESKTOP).visit("/sign-in");
        browser.find("input[name=username]").sendKeys(login);
        browser.find("input[name=password]").sendKeys(DemoCollege.password());
        browser.find("main button[type=submit]").click();
        browser.find("main");
    }

    /** Where the first such link of a page leads. */
    private static String first(Browser browser, String page, String link) {
        browser.visit(page);
        return Jsoup.parse(String.valueOf(browser.driver().getPageSource()))
                .expectFirst("main " + link)
                .attr("href");
    }

    private static void see(Browser browser, String path, String name) {
        Path file = browser.resize(ScreenSize.DESKTOP).visit(path).pictureOfScreen(name);
        try {
            assertThat(ImageIO.read(file.toFile()).getWidth()).isEqualTo(1280);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        assertThat(browser.consoleErrors()).isEqualTo(List.of());
    }
}
