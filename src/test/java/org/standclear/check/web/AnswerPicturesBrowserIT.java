package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;

/** The pictures of an answer in a real browser: marked steps, play-back by mouse and keys, the filmstrip, axe. */
@OnH2
@BrowserTest
class AnswerPicturesBrowserIT {

    private static final String PASSWORD = "four beaks on a quiet pier";
    private static final Path PROGRAM = Path.of("seed-data/programs/peg-and-plate.yaml");
    private static final List<String> DRAWINGS = List.of("plan", "side", "speed", "axes");

    @Autowired
    CellRegister register;

    @Autowired
    PeopleRegister people;

    private String name = "";
    private String login = "";

    @BeforeEach
    void aCellAndAStudent() {
        name = SampleCell.name();
        SampleCell.inForce(register, name);
        login = "b" + UUID.randomUUID();
        Outcome added = people.add(
                new NewPerson(login, "Noor Candlewick", Set.of(Role.STUDENT), new Password.Chosen(PASSWORD), null));
        assertThat(added).isInstanceOf(Outcome.Done.class);
    }

    /** The browser on the answer's page. */
    private Browser answer(Browser browser) throws IOException {
        browser.visit("/sign-in");
        browser.find("input[name=username]").sendKeys(login);
        browser.find("input[name=password]").sendKeys(PASSWORD);
        browser.find("main form button").click();
        browser.find("nav.tabs");
        browser.visit("/check").select("Cell", name + ", version 7");
        browser.driver()
                .executeScript("document.getElementById('pasted').value = arguments[0]", Files.readString(PROGRAM));
        return browser.press("Check it").waitForText("is within " + name + "'s limits");
    }

    private static WebElement row(Browser browser, String step) {
        return browser.find("section[aria-labelledby=motion] tr[data-step='" + step + "']");
    }

    private static List<Object> marked(Browser browser) {
        Object steps = browser.driver()
                .executeScript("return [...new Set([...document.querySelectorAll('[data-marked]')]"
                        + ".map(one => one.dataset.step))]");
        return List.copyOf((List<?>) steps);
    }

    private static void isMarkedEverywhere(Browser browser, String step) {
        assertThat(marked(browser)).containsExactly(step);
        for (String drawing : DRAWINGS) {
            assertThat(browser.findAll("svg[data-drawing=" + drawing + "] [data-step='" + step + "'][data-marked]"))
                    .as(drawing)
                    .hasSize(1);
        }
        assertThat(row(browser, step).getDomAttribute("data-marked")).isEqualTo("yes");
    }

    private static String width(Browser browser, String step) {
        return browser.find("svg[data-drawing=plan] [data-step='" + step + "'] path")
                .getCssValue("stroke-width");
    }

    @Test
    void aStepPointedAtOrFocusedIsMarkedInEveryPicture(Browser browser) throws IOException {
        answer(browser);
        assertThat(marked(browser)).isEmpty();
        String plain = width(browser, "6");

        new Actions(browser.driver()).moveToElement(row(browser, "6")).perform();
        isMarkedEverywhere(browser, "6");
        assertThat(width(browser, "6")).as("seen, not only noted").isNotEqualTo(plain);

        // the keyboard alone: from one step's link to the next
        WebElement link = row(browser, "5").findElement(By.tagName("a"));
        browser.driver().executeScript("arguments[0].focus()", link);
        isMarkedEverywhere(browser, "5");
        assertThat(width(browser, "6")).isEqualTo(plain);
        link.sendKeys(Keys.TAB);
        isMarkedEverywhere(browser, "6");

        new Actions(browser.driver()).moveToElement(browser.find("h1")).perform();
        assertThat(marked(browser)).isEmpty();
    }

    private static WebElement slider(Browser browser) {
        return browser.find("#player-time");
    }

    private static String said(Browser browser) {
        return browser.find("[data-says]").getText();
    }

    private static void waitUntil(Browser browser, String script) {
        new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                .until(found -> Boolean.TRUE.equals(browser.driver().executeScript("return " + script)));
    }

    /** What the server says of the moment at which the slider stands. */
    @SuppressWarnings("unchecked")
    private static Map<String, Object> moment(Browser browser) {
        return (Map<String, Object>) Objects.requireNonNull(browser.driver().executeAsyncScript("""
                const done = arguments[0];
                fetch(document.querySelector('[data-player]').dataset.moments)
                  .then((answer) => answer.json())
                  .then((pass) => done(pass.moments[Number(document.getElementById('player-time').value)]));"""));
    }

    private static void showsItsMoment(Browser browser) {
        Map<String, Object> moment = moment(browser);
        assertThat(said(browser)).isEqualTo(moment.get("says"));
        assertThat(slider(browser).getDomAttribute("aria-valuetext")).isEqualTo(moment.get("says"));
        assertThat(browser.find("svg[data-drawing=plan] .arm-now").getDomAttribute("d"))
                .isEqualTo(moment.get("arm"));
        assertThat(marked(browser)).containsExactly(moment.get("step"));
    }

    @Test
    void aPassIsPlayedPausedAndMovedThroughByKeys(Browser browser) throws IOException {
        answer(browser.allowMotion(true));
        WebElement slider = slider(browser);

        slider.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        assertThat(slider.getDomProperty("value")).isEqualTo("3");
        showsItsMoment(browser);
        slider.sendKeys(Keys.END);
        assertThat(slider.getDomProperty("value")).isEqualTo(slider.getDomAttribute("max"));
        showsItsMoment(browser);
        slider.sendKeys(Keys.HOME);
        showsItsMoment(browser);

        slider.sendKeys(Keys.SPACE);
        assertThat(browser.find("[data-play]").getText()).isEqualTo("Pause");
        waitUntil(browser, "Number(document.getElementById('player-time').value) > 10");
        browser.press("Pause");
        assertThat(browser.find("[data-play]").getText()).isEqualTo("Play");
        String stands = slider.getDomProperty("value");
        showsItsMoment(browser);
        browser.driver().executeAsyncScript("const done = arguments[0]; setTimeout(done, 400)");
        assertThat(slider.getDomProperty("value")).as("paused").isEqualTo(stands);
        assertThat(browser.consoleErrors()).isEmpty();
    }

    @Test
    void playsInRealTimeAndStopsAtTheEnd(Browser browser) throws IOException {
        answer(browser.allowMotion(true));
        slider(browser);
        // from half a second before the end, so that the test need not wait for a pass
        Object ran = browser.driver().executeAsyncScript("""
                const done = arguments[0];
                const slider = document.getElementById('player-time');
                const button = document.querySelector('[data-play]');
                fetch(document.querySelector('[data-player]').dataset.moments).then((a) => a.json()).then((pass) => {
                  const last = pass.moments.length - 1;
                  const from = pass.moments.findIndex((one) => one.seconds > pass.moments[last].seconds - 1);
                  slider.value = String(from);
                  slider.dispatchEvent(new Event('input'));
                  const begun = performance.now();
                  button.click();
                  const look = () => {
                    if (Number(slider.value) < last) { requestAnimationFrame(look); return; }
                    done((performance.now() - begun) / 1000 - (pass.moments[last].seconds - pass.moments[from].seconds));
                  };
                  look();
                });""");
        assertThat(((Number) Objects.requireNonNull(ran)).doubleValue())
                .as("seconds later or earlier than the pass itself takes")
                .isBetween(-0.1, 1.5);
        assertThat(browser.find("[data-play]").getText()).isEqualTo("Play");
    }

    @Test
    void whoWantsNoMotionHasTheFilmstrip(Browser browser) throws IOException {
        answer(browser.allowMotion(false));
        assertThat(browser.findAll(".player")).hasSize(1).noneMatch(WebElement::isDisplayed);
        assertThat(browser.findAll(".filmstrip svg")).hasSizeGreaterThan(4).allMatch(WebElement::isDisplayed);
        answerAgainWithMotion(browser);
    }

    private static void answerAgainWithMotion(Browser browser) {
        browser.allowMotion(true).visit(browser.path());
        assertThat(slider(browser).isDisplayed()).isTrue();
        assertThat(browser.findAll(".filmstrip svg")).allMatch(WebElement::isDisplayed);
    }

    @Test
    void nothingStandsInAnybodysWay(Browser browser) throws IOException {
        answer(browser.allowMotion(true));
        slider(browser).sendKeys(Keys.ARROW_RIGHT);
        for (ScreenSize size : ScreenSize.values()) {
            browser.resize(size);
            assertThat(browser.accessibilityFindings()).as(size.name()).isEmpty();
            assertThat(browser.driver()
                            .executeScript("return document.documentElement.scrollWidth"
                                    + " <= document.documentElement.clientWidth"))
                    .as("scrolls sideways on " + size)
                    .isEqualTo(true);
            browser.picture("answer-pictures-" + size.name().toLowerCase(Locale.ROOT));
        }
    }

    /** What is wider than the paper's 182 mm between its margins, and so would be cut off. */
    private static final String CUT_OFF = """
            const right = document.documentElement.clientWidth;
            return [...document.querySelectorAll('main *')]
              .filter((one) => !one.closest('svg') || one.matches('svg'))
              .filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().right > right + 1)
              .map((one) => one.tagName + "." + one.className + " " + one.textContent.slice(0, 40));""";

    @Test
    void onPaperThePicturesStandAndNothingIsCutOff(Browser browser) throws IOException {
        answer(browser);
        assertThat(browser.find("nav.tabs").isDisplayed()).isTrue();
        // 96 pixels are one inch of 25.4 mm (CSS): A4 without the margins of 14 mm is 182 mm, 688 pixels wide
        browser.driver()
                .executeCdpCommand(
                        "Emulation.setDeviceMetricsOverride",
                        Map.of("width", 688, "height", 1000, "deviceScaleFactor", 1, "mobile", false));
        browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        try {
            assertThat(browser.findAll("nav.tabs, .acts, .skip, main .button"))
                    .isNotEmpty()
                    .noneMatch(WebElement::isDisplayed);
            for (String drawing : DRAWINGS) {
                assertThat(browser.findAll("svg[data-drawing=" + drawing + "]"))
                        .as(drawing)
                        .isNotEmpty()
                        .allMatch(WebElement::isDisplayed);
            }
            assertThat(browser.find(".caution").isDisplayed()).isTrue();
            assertThat((List<?>) browser.driver().executeScript(CUT_OFF)).isEmpty();
            browser.picture("answer-on-paper");
        } finally {
            browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
            browser.driver().executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        }
    }

    @Test
    void withoutScriptsTheFilmstripAndTheTablesAreThere(Browser browser) throws IOException {
        answer(browser);
        String path = browser.path();
        browser.runScripts(false).visit(path);
        assertThat(browser.findAll(".filmstrip svg")).isNotEmpty().allMatch(WebElement::isDisplayed);
        assertThat(browser.findAll(".player")).noneMatch(WebElement::isDisplayed);
        browser.runScripts(true);
    }
}
