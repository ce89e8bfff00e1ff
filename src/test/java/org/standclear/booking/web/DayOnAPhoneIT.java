package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;

/** The day as a table, opened on a phone: every word of it fits the width, and nothing scrolls sideways. */
@OnH2
@BrowserTest
class DayOnAPhoneIT {

    private static final String PASSWORD = "four beaks on a quiet pier";

    @Autowired
    ApplicationContext application;

    @Autowired
    MovableClock clock;

    @Test
    void folds(Browser browser) {
        clock.moveToStart();
        try (LabScope scope = LabScope.enter(SecondLab.empty(application, "Europe/London"))) {
            var lab = new SampleLab(application);
            Person ines = lab.person("Ines Quarryvale", new Password.Chosen(PASSWORD), Role.INSTRUCTOR);
            lab.booked(
                    lab.cell(7),
                    "2026-03-12T12:07:00Z",
                    lab.student("Delphine Slategrove-Featherstonehaugh"),
                    lab.student("Bartholomew Winterbrook-Thistledown"));
            browser.visit("/sign-in");
            browser.find("input[name=username]").sendKeys(ines.login());
            browser.find("input[name=password]").sendKeys(PASSWORD);
            browser.find("main form button").click();
            browser.find("nav.tabs");

            browser.resize(ScreenSize.PHONE).visit("/book?day=2026-03-12").find(".strip");
            browser.click(browser.find(".strip summary"));

            assertThat(browser.find(".strip table").getText()).contains("12:07-12:37", "Delphine", "booked");
            assertThat(browser.driver()
                            .executeScript("const table = document.querySelector('.strip table');"
                                    + " return document.documentElement.scrollWidth === document.documentElement.clientWidth"
                                    + " && table.scrollWidth <= document.querySelector('.strip').clientWidth;"))
                    .isEqualTo(true);
        }
    }
}
