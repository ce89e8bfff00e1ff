package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SecondLab;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellStates.StopCell;
import org.standclear.cell.CellTag;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;

/** Programs are checked and mended, and cells tested, stopped and changed, in a real browser at three sizes. */
@OnH2
@BrowserTest
class CellsAndChecksBrowserIT {

    private static final String PASSWORD = "four beaks on a quiet pier";
    private static final Path PROGRAM = Path.of("seed-data/programs/peg-and-plate.yaml");

    @Autowired
    ApplicationContext application;

    @Autowired
    CellRegister register;

    @Autowired
    CellStates states;

    @Autowired
    DayTests dayTests;

    @Autowired
    PeopleRegister people;

    @Autowired
    MovableClock clock;

    private String name = "";
    private CellId cell = CellId.next();
    private @Nullable LabScope scope;

    /** In a lab of its own, so that its pages show this cell and none of other tests' hundreds. */
    @BeforeEach
    void aCellWithHistory() {
        scope = LabScope.enter(SecondLab.empty(application, "Europe/London"));
        name = SampleCell.name();
        cell = SampleCell.inForce(register, name);
        PersonId technician = person("Adaeze Lanternby", Role.TECHNICIAN).id();
        dayTests.record(cell, technician, SampleCell.goodReadings());
        clock.moveBy(Duration.ofMinutes(1));
        states.stop(new StopCell(cell, CellTag.Kind.OUT_OF_SERVICE, technician, "Cable chafed at the elbow", null));
        clock.moveBy(Duration.ofMinutes(1));
        dayTests.record(cell, technician, SampleCell.goodReadings());
        SampleCell.readByTwo(application, cell);
        states.returnToService(cell, technician, "New cable guide fitted");
    }

    @AfterEach
    void leaveTheLab() {
        if (scope != null) {
            scope.close();
        }
    }

    @Test
    void aStudentSeesWhyAProgramIsOutsideAndMendsIt(Browser browser) throws IOException {
        signIn(browser, person("Noor Candlewick", Role.STUDENT));
        String sheet = Files.readString(PROGRAM);
        look(browser, "/programs", "programs-empty");
        look(browser, "/check", "check-form");

        browser.select("Cell", name + ", version 7");
        paste(browser, sheet.replace("override-percent: 50", "override-percent: 80"));
        browser.press("Check it").waitForText("is outside " + name + "'s limits");
        look(browser, browser.path(), "answer-outside");

        browser.follow("Bring the mended program");
        paste(browser, sheet);
        browser.press("Check it").waitForText("is within " + name + "'s limits");
        look(browser, browser.path(), "answer-within");
        look(browser, "/programs", "programs");
        browser.follow("Peg and plate").waitForText("Revision 2");
        look(browser, browser.path(), "program");

        browser.visit("/check").select("Cell", name + ", version 7");
        paste(browser, sheet.replace("y: 300", "y: three hundred"));
        browser.press("Check it").waitForText("Not sent");
        look(browser, null, "check-refused");
    }

    @Test
    void staffTestStopProposeAndReturn(Browser technician, Browser instructor) {
        signIn(technician, person("Hemi Coppergate", Role.TECHNICIAN));
        signIn(instructor, person("Ines Quarryvale", Role.INSTRUCTOR));
        look(technician, "/cells", "cells");
        look(technician, "/cells/" + cell, "cell");
        look(technician, "/cells/" + cell + "/day-test", "day-test");
        technician.press("Record the day test").waitForText("Not sent");
        look(technician, null, "day-test-refused");
        technician.visit("/cells/" + cell + "/propose");
        String file = SampleCell.file(name, 8)
                .replace("tool-speed-mm-s: 250", "tool-speed-mm-s: 200")
                .replace("fitted-tool: G-02", "fitted-tool: V-01");
        technician.fill("Why", "Vacuum cup fitted for the plate; slower until its hold is measured");
        technician.driver().executeScript("document.getElementById('file').value = arguments[0]", file);
        look(technician, null, "propose");
        technician.press("Propose it").waitForText("waits for a second person");
        String proposal = technician.path();
        look(instructor, proposal, "proposal");
        instructor.press("Put version 8 in force").waitForText("Version 8");

        look(technician, "/cells/" + cell + "/stop", "stop");
        technician.driver().findElement(By.cssSelector("input[value=hold]")).click();
        technician.fill("What is the matter?", "The cup lost a plate twice; somebody has to look first.");
        technician.press("No release on " + name).waitForText("no release now");
        look(technician, null, "cell-held");
        look(technician, "/cells/" + cell + "/return", "return");
        look(technician, "/cells/" + cell + "/versions/7", "version");
        look(instructor, "/cells/" + cell + "/restriction", "restriction");
    }

    private static void paste(Browser browser, String sheet) {
        browser.driver().executeScript("document.getElementById('pasted').value = arguments[0]", sheet);
    }

    private static void look(Browser browser, @Nullable String path, String name) {
        if (path != null) {
            browser.visit(path);
        }
        for (ScreenSize size : ScreenSize.values()) {
            browser.resize(size);
            assertThat(browser.accessibilityFindings()).as(name + " on " + size).isEmpty();
            assertThat(browser.driver()
                            .executeScript("return document.documentElement.scrollWidth"
                                    + " <= document.documentElement.clientWidth"))
                    .as(name + " scrolls sideways on " + size)
                    .isEqualTo(true);
            browser.picture("cells-" + name + "-" + size.name().toLowerCase(Locale.ROOT));
        }
        assertThat(browser.consoleErrors().stream().filter(error -> !error.contains("422")))
                .isEmpty();
    }

    private static void signIn(Browser browser, Person person) {
        browser.visit("/sign-in");
        browser.find("input[name=username]").sendKeys(person.login());
        browser.find("input[name=password]").sendKeys(PASSWORD);
        browser.find("main form button").click();
        browser.find("nav.tabs");
        // what the start page has to say is not asked here
        browser.consoleErrors();
    }

    private Person person(String printedName, Role role) {
        Outcome added = people.add(
                new NewPerson("b" + UUID.randomUUID(), printedName, Set.of(role), new Password.Chosen(PASSWORD), null));
        if (added instanceof Outcome.Done done) {
            return done.person();
        }
        throw new AssertionError(added.toString());
    }
}
