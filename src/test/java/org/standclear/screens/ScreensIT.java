package org.standclear.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;
import org.standclear.testing.web.SiteWalk;
import org.standclear.testing.web.WebUser;

/** Every screen of the demo college, seen in a real browser: open to all, whole on a phone, quiet in the console. */
@DemoOnH2
@BrowserTest
class ScreensIT {

    private static final List<String> ROLES =
            List.of("TECHNICIAN", "STUDENT", "INSTRUCTOR", "ADMINISTRATOR", "REVIEWER", "BENCH");

    /** Pages whose tables of many columns stand below themselves on a phone. */
    private static final List<String> FOLDED = List.of("/fairness", "/forecast/", "/me/partners", "/courses/");

    @LocalServerPort
    int port;

    private final SoftAssertions findings = new SoftAssertions();
    private final Map<String, String> titles = new LinkedHashMap<>();

    @Test
    void everyScreenIsOpenToAllOnEverySize(Browser browser) {
        Set<String> looked = new HashSet<>();
        look(browser, "anyone", "/sign-in");
        for (String role : ROLES) {
            String login = DemoCollege.logins(role).get(0);
            SiteWalk walk = SiteWalk.from("/", WebUser.atPort(port).signIn(login, DemoCollege.password()));
            signIn(browser, login);
            walk.pages().forEach((kind, path) -> {
                if (looked.add(kind)) {
                    look(browser, login, path);
                }
            });
            browser.driver().manage().deleteAllCookies();
        }
        assertThat(looked).hasSizeGreaterThan(8);
        findings.assertThat(titles.values())
                .as("titles tell tabs apart: %s", titles)
                .doesNotHaveDuplicates();
        findings.assertAll();
    }

    private static void signIn(Browser browser, String login) {
        browser.resize(ScreenSize.DESKTOP).visit("/sign-in");
        browser.find("input[name=username]").sendKeys(login);
        browser.find("input[name=password]").sendKeys(DemoCollege.password());
        browser.click(browser.find("main button[type=submit]"));
    }

    private void look(Browser browser, String who, String path) {
        browser.resize(ScreenSize.DESKTOP).visit(path);
        titles.put(path, browser.title());
        findings.assertThat(browser.accessibilityFindings())
                .as("axe on %s for %s", path, who)
                .isEmpty();
        for (ScreenSize size : List.of(ScreenSize.TABLET, ScreenSize.PHONE)) {
            browser.resize(size);
            findings.assertThat(
                            browser.driver()
                                    .executeScript(
                                            "return document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                    .as("pixels that %s is too wide for a %s", path, size)
                    .isEqualTo(0L);
        }
        if (FOLDED.stream().anyMatch(path::startsWith)) {
            findings.assertThat(browser.driver().executeScript("""
                            return [...document.querySelectorAll('.frame:has(> table)')]
                                .filter(frame => frame.scrollWidth > frame.clientWidth).length"""))
                    .as("tables of %s that scroll sideways on a phone", path)
                    .isEqualTo(0L);
        }
        findings.assertThat(browser.accessibilityFindings())
                .as("axe on %s for %s on a phone", path, who)
                .isEmpty();
        findings.assertThat(browser.consoleErrors()).as("console of %s", path).isEmpty();
    }
}
