package org.standclear.story;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;
import org.standclear.people.Person;
import org.standclear.signoff.BenchScene;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.ScreenSize;

/** One person at one browser who tells, reviews or mends: fields by their names, buttons and links by their words. */
record ReportSeat(Browser browser) {

    ReportSeat signIn(Person person) {
        browser.visit("/sign-in")
                .fill("Sign-in name", person.login())
                .fill("Password", BenchScene.PASSWORD)
                .press("Sign in");
        assertThat(browser.path()).doesNotContain("sign-in");
        return this;
    }

    ReportSeat resize(ScreenSize size) {
        browser.resize(size);
        return this;
    }

    ReportSeat visit(String path) {
        browser.visit(path);
        return this;
    }

    ReportSeat follow(String link) {
        browser.follow(link);
        return this;
    }

    String text() {
        return browser.text();
    }

    String path() {
        return browser.path();
    }

    /** Presses the first button, or link that looks like one, with exactly these words. */
    ReportSeat press(String words) {
        String xpath = "//button[normalize-space()=\"" + words + "\"] | //a[normalize-space()=\"" + words + "\"]";
        browser.click(browser.driver().findElement(By.xpath(xpath)));
        return this;
    }

    /** Opens a form that is folded away. */
    ReportSeat open(String summary) {
        WebElement found = browser.driver().findElement(By.xpath("//summary[normalize-space()='" + summary + "']"));
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", found);
        found.click();
        return this;
    }

    ReportSeat write(String name, String text) {
        WebElement field = shown(name);
        field.clear();
        field.sendKeys(text);
        return this;
    }

    /** A field that is not folded away; a name may stand on a page more than once. */
    private WebElement shown(String name) {
        return browser.driver().findElements(By.name(name)).stream()
                .filter(WebElement::isDisplayed)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no field " + name + " in: " + browser.text()));
    }

    ReportSeat day(String name, LocalDate day) {
        browser.driver().executeScript("arguments[0].value = arguments[1]", shown(name), day.toString());
        return this;
    }

    ReportSeat pick(String name, String value) {
        new Select(shown(name)).selectByValue(value);
        return this;
    }

    ReportSeat choose(String name, String value) {
        WebElement round = browser.driver()
                .findElement(By.cssSelector("input[type=radio][name='" + name + "'][value='" + value + "']"));
        browser.driver().executeScript("arguments[0].click()", round);
        return this;
    }

    ReportSeat tick(String name) {
        WebElement box = browser.driver().findElement(By.cssSelector("input[type=checkbox][name='" + name + "']"));
        browser.driver().executeScript("arguments[0].click()", box);
        return this;
    }

    ReportSeat submit(String ending) {
        browser.click(browser.find("form[action$='" + ending + "'] button[type=submit]"));
        return this;
    }

    /** What is on the page is usable by everybody, and nothing was refused by the content policy. */
    ReportSeat isUsable(String what) {
        assertThat(browser.accessibilityFindings()).as(what).isEmpty();
        // a form that was refused on purpose comes back with 422, which the browser notes
        assertThat(browser.consoleErrors())
                .as(what)
                .allSatisfy(line -> assertThat(line).contains("status of 422"));
        return this;
    }

    ReportSeat picture(String name) {
        browser.picture(name);
        return this;
    }
}
