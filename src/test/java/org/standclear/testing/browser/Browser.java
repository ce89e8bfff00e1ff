package org.standclear.testing.browser;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.support.ui.ExpectedCondition;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** One person's browser: opens pages of the application under test and acts on them by what the person can read. */
public final class Browser {

    private static final Duration PATIENCE = Duration.ofSeconds(10);

    /** The driver's own half second would be waited for at every click. */
    private static final Duration POLL = Duration.ofMillis(40);

    private final ChromeDriver driver;
    private String baseUrl = "";

    Browser(ChromeDriver driver) {
        this.driver = driver;
        driver.manage().timeouts().pageLoadTimeout(Duration.ofSeconds(60)).scriptTimeout(Duration.ofSeconds(90));
    }

    /** Opens pages of this application from now on, for a test that starts one by itself. */
    public void startAt(String applicationUrl) {
        baseUrl = applicationUrl;
        resize(ScreenSize.DESKTOP);
    }

    /** The driver itself, for what this class has no word for. */
    public ChromeDriver driver() {
        return driver;
    }

    /** Opens a page of the application by its path, or any page by its full address. */
    public Browser visit(String pathOrUrl) {
        driver.get(pathOrUrl.startsWith("/") ? baseUrl + pathOrUrl : pathOrUrl);
        return this;
    }

    /** Shows the pages on a screen of another size from now on. */
    public Browser resize(ScreenSize size) {
        cdp(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", size.width, "height", size.height, "deviceScaleFactor", 1, "mobile", size.touch));
        cdp("Emulation.setTouchEmulationEnabled", Map.of("enabled", size.touch));
        return this;
    }

    /** Turns the scripts of pages opened from now on off, or on again. */
    public Browser runScripts(boolean wanted) {
        cdp("Emulation.setScriptExecutionDisabled", Map.of("value", !wanted));
        return this;
    }

    /** Lets pages opened from now on move, or tells them again that the person wants no motion, as at the start. */
    public Browser allowMotion(boolean wanted) {
        String value = wanted ? "no-preference" : "reduce";
        cdp(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", value))));
        return this;
    }

    /** The path of the page shown now, without the host, with its query. */
    public String path() {
        String url = driver.getCurrentUrl();
        return url != null && url.startsWith(baseUrl) ? url.substring(baseUrl.length()) : String.valueOf(url);
    }

    /** The title of the page shown now. */
    public String title() {
        return String.valueOf(driver.getTitle());
    }

    /** Everything that can be read on the page shown now. */
    public String text() {
        return driver.findElement(By.tagName("body")).getText();
    }

    /** The first element a CSS selector names, waited for. */
    public WebElement find(String css) {
        return waitFor(By.cssSelector(css));
    }

    /** Every element a CSS selector names just now. */
    public List<WebElement> findAll(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** The field that a label with this text belongs to, waited for. */
    public WebElement field(String label) {
        String text = Words.literal(label);
        return waitFor(By.xpath("//*[@id=//label[normalize-space()=" + text + "]/@for]"
                + " | //label[normalize-space()=" + text + "]//*[self::input or self::select or self::textarea]"
                + " | //*[(self::input or self::select or self::textarea) and @aria-label=" + text + "]"));
    }

    /** Puts text into the field with this label in place of what was there. */
    public Browser fill(String label, String text) {
        WebElement field = field(label);
        field.clear();
        field.sendKeys(text);
        return this;
    }

    /** Gives the file field with this label a file. */
    public Browser choose(String label, Path file) {
        field(label).sendKeys(file.toAbsolutePath().toString());
        return this;
    }

    /** Selects the option with this text in the list with this label. */
    public Browser select(String label, String option) {
        new Select(field(label)).selectByVisibleText(option);
        return this;
    }

    /** Ticks the box or the round button with this label if it is not ticked. */
    public Browser tick(String label) {
        WebElement box = field(label);
        if (!box.isSelected()) {
            box.click();
        }
        return this;
    }

    /** Presses the first button with this text and waits for the next page when it opens one. */
    public Browser press(String button) {
        click(By.xpath(Words.named("button", button)));
        return this;
    }

    /** Follows the first link with this text. */
    public Browser follow(String link) {
        click(By.xpath(Words.named("a", link)));
        return this;
    }

    /** Waits until the page shows this text; for what arrives without a new page. */
    public Browser waitForText(String text) {
        until("the text '" + text + "'", found -> text().contains(text) ? true : null);
        return this;
    }

    /** What axe holds for serious or critical on the page shown now; each finding names its rule and elements. */
    public List<String> accessibilityFindings() {
        return Accessibility.graveFindings(driver);
    }

    /** Errors in the browser's console since the last call, such as something the content policy refused. */
    public List<String> consoleErrors() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.SEVERE.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Writes a picture of the whole page, as high as it is. */
    public Path picture(String name) {
        return picture(Pictures.folder(), name);
    }

    Path picture(Path folder, String name) {
        Map<String, Object> shot =
                driver.executeCdpCommand("Page.captureScreenshot", Map.of("captureBeyondViewport", true));
        byte[] png = Base64.getDecoder().decode(String.valueOf(shot.get("data")));
        return Pictures.write(folder, name + ".png", png);
    }

    /** Writes one of the README's pictures: what the screen shows without scrolling. */
    public Path pictureOfScreen(String name) {
        return Pictures.write(Pictures.documentation(), name + ".png", driver.getScreenshotAs(OutputType.BYTES));
    }

    void keepWhatItSees(String name) {
        Path folder = Path.of("target", "failed-pages");
        try {
            Pictures.write(folder, name + ".png", driver.getScreenshotAs(OutputType.BYTES));
            Pictures.write(
                    folder,
                    name + ".html",
                    String.valueOf(driver.getPageSource()).getBytes(UTF_8));
        } catch (WebDriverException e) {
            // the test has failed already and its own exception says more
            Pictures.write(folder, name + ".txt", String.valueOf(e.getMessage()).getBytes(UTF_8));
        }
    }

    boolean emptied() {
        try {
            // the page goes first: a live one would ask once more without a cookie, and be given another session's
            driver.get("about:blank");
            runScripts(true);
            allowMotion(false);
            cdp("Network.clearBrowserCookies", Map.of());
            cdp("Storage.clearDataForOrigin", Map.of("origin", baseUrl, "storageTypes", "all"));
            consoleErrors();
            return true;
        } catch (WebDriverException e) {
            return false;
        }
    }

    void quit() {
        driver.quit();
    }

    private void cdp(String command, Map<String, Object> parameters) {
        driver.executeCdpCommand(command, parameters);
    }

    /** Clicks an element; waits for the next page when it is a link or sends a form. */
    public Browser click(WebElement element) {
        driver.executeScript("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", element);
        Object leaves = driver.executeScript(
                "window.pageBefore = true;" + " return arguments[0].matches('a[href], form button:not([type=button])')",
                element);
        element.click();
        if (Boolean.TRUE.equals(leaves)) {
            // forms are sent a moment after the click, so the driver alone would go on with the old page
            until(
                    "the next page",
                    found -> Boolean.TRUE.equals(driver.executeScript(
                                    "return !window.pageBefore && document.readyState === 'complete'"))
                            ? true
                            : null);
        }
        return this;
    }

    private void click(By by) {
        click(waitFor(by));
    }

    private WebElement waitFor(By by) {
        return until(by.toString(), found -> {
            List<WebElement> shown = driver.findElements(by).stream()
                    .filter(WebElement::isDisplayed)
                    .toList();
            return shown.isEmpty() ? null : shown.get(0);
        });
    }

    private <T> T until(String what, ExpectedCondition<T> condition) {
        return new WebDriverWait(driver, PATIENCE, POLL)
                // the page went while it was looked at: the next one is looked at instead
                .ignoring(StaleElementReferenceException.class)
                .withMessage(() -> "waiting for " + what + " on " + path() + " which reads:\n" + text())
                .until(condition);
    }
}
