package org.standclear.story;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;
import org.standclear.people.Person;
import org.standclear.testing.browser.Browser;

/** One person at one browser: what they do on pages, in their words. */
record Seat(Browser browser, Person person, StoryPeople people) {

    Seat signIn() {
        browser.visit("/sign-in")
                .fill("Sign-in name", person.login())
                .fill("Password", StoryPeople.PASSWORD)
                .press("Sign in");
        assertThat(browser.path()).doesNotContain("sign-in");
        return this;
    }

    Seat bench() {
        browser.visit("/bench/" + people.cell);
        return this;
    }

    String headline() {
        return browser.find("h1").getText();
    }

    /** Answers the item that the bench page asks. */
    Seat answer(Map<String, String> values) {
        bench();
        if (!tap(values)) {
            values.forEach(this::enter);
            submit("/answers");
        }
        return this;
    }

    /** Some items are answered by one tap on one of several buttons. */
    private boolean tap(Map<String, String> values) {
        for (Map.Entry<String, String> value : values.entrySet()) {
            var buttons = browser.findAll(
                    "form[action$='/answers'] button[name='" + value.getKey() + "'][value='" + value.getValue() + "']");
            if (!buttons.isEmpty()) {
                browser.click(buttons.get(0));
                return true;
            }
        }
        return false;
    }

    private void enter(String name, String value) {
        WebElement field = browser.findAll("form[action$='/answers'] [name='" + name + "']").stream()
                .filter(one -> !"radio".equals(one.getAttribute("type")) || value.equals(one.getAttribute("value")))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no field " + name + " in: " + browser.text()));
        if ("radio".equals(field.getAttribute("type"))) {
            browser.driver().executeScript("arguments[0].click()", field);
        } else {
            field.clear();
            field.sendKeys(value);
        }
    }

    /** Picks an option by its value; names may stand twice in a list. */
    Seat pick(String name, String value) {
        new Select(browser.find("select[name='" + name + "']")).selectByValue(value);
        return this;
    }

    Seat sign() {
        bench();
        submit("/signatures");
        return this;
    }

    /** Presses the first button of the form that ends in the path. */
    Seat submit(String ending) {
        browser.click(browser.find("form[action$='" + ending + "'] button[type=submit]"));
        return this;
    }

    /** Chooses a round button by its value, anywhere on the page. */
    Seat choose(String name, String value) {
        WebElement round = browser.driver()
                .findElement(By.cssSelector("input[type=radio][name='" + name + "'][value='" + value + "']"));
        browser.driver().executeScript("arguments[0].click()", round);
        return this;
    }

    /** What is on the page is usable by everybody, and nothing was refused by the content policy. */
    Seat isUsable(String what) {
        assertThat(browser.accessibilityFindings()).as(what).isEmpty();
        assertThat(browser.consoleErrors()).as(what).isEmpty();
        return this;
    }
}
