package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.people.CourseRegister;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.PrintedPage;

/** Lists that people hang up or take along, as a browser prints them: what they tell, black on white, and nothing to press. */
@OnH2
@BrowserTest
class PrintedPagesIT {

    private static final String PASSWORD = "four beaks on a quiet pier";
    private static final int STUDENTS = 60;

    @Autowired
    ApplicationContext application;

    @Autowired
    CourseRegister courses;

    @Autowired
    MovableClock clock;

    private @Nullable LabScope scope;
    private List<Person> students = List.of();
    private String login = "";

    /** In a lab of its own, so that its pages list these people and none of other tests. */
    @BeforeEach
    void aLabWithASection() {
        clock.moveToStart();
        scope = LabScope.enter(SecondLab.empty(application, "Europe/London"));
        var lab = new SampleLab(application);
        Person ines = lab.person("Ines Quarryvale", new Password.Chosen(PASSWORD), Role.INSTRUCTOR);
        login = ines.login();
        var course = ((CourseRegister.Outcome.Done<CourseId>) courses.addCourse("RBT 110", "Robots", ines.id())).id();
        SectionId section = ((CourseRegister.Outcome.Done<SectionId>) courses.addSection(course, "01", ines.id())).id();
        students = new ArrayList<>();
        for (int i = 0; i < STUDENTS; i++) {
            Person student = lab.student("Student %02d".formatted(i));
            courses.enrol(student.id(), section, ines.id());
            students.add(student);
        }
        lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", students.get(0), students.get(1));
    }

    @AfterEach
    void leaveTheLab() {
        if (scope != null) {
            scope.close();
        }
    }

    private PrintedPage printed(Browser browser, String path) throws IOException {
        signIn(browser);
        // whoever reads in the dark prints on white all the same
        browser.driver()
                .executeCdpCommand(
                        "Emulation.setEmulatedMedia",
                        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", "dark"))));
        browser.visit(path).find("main.sheet");
        return PrintedPage.of(browser);
    }

    private void signIn(Browser browser) {
        browser.visit("/sign-in");
        browser.find("input[name=username]").sendKeys(login);
        browser.find("input[name=password]").sendKeys(PASSWORD);
        browser.find("main form button").click();
        browser.find("nav.tabs");
    }

    @Test
    void theUseOfTheLabKeepsItsHeadsAndItsColumnsOnEverySheet(Browser browser) throws IOException {
        PrintedPage paper = printed(browser, "/fairness");

        assertThat(paper.sheets()).hasSizeGreaterThan(1);
        assertThat(paper.sheets().stream().filter(sheet -> sheet.contains("Student ")))
                .hasSizeGreaterThan(1)
                .allSatisfy(sheet -> assertThat(sheet)
                        .containsSubsequence(
                                "Who",
                                "Sections",
                                "Slots",
                                "Missed",
                                "Late cancels",
                                "Excused",
                                "Left out",
                                "Waited in vain",
                                "Wait",
                                "Student "));
        assertThat(paper.text())
                .contains(students.stream().map(Person::printedName).toList())
                .doesNotContain("Sign out", "Check a program", "Show these days", "As CSV");
        assertThat(paper.outside()).as("letters cut off").isEmpty();
    }

    @Test
    void nothingIsDark(Browser browser) throws IOException {
        assertThat(printed(browser, "/fairness").darkest()).isGreaterThan(0.85);
    }

    @Test
    void headsAndHintsAreNoLargerThanWhatTheyStandBy(Browser browser) {
        signIn(browser);
        browser.visit("/fairness").find("main.sheet");
        browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));

        Object sizes = browser.driver()
                .executeScript(
                        "return ['thead th', 'caption', 'tbody th', 'main > header > p:last-of-type', 'h2'].map("
                                + "css => parseFloat(getComputedStyle(document.querySelector('main').querySelector(css)).fontSize))");

        assertThat(sizes)
                .asInstanceOf(org.assertj.core.api.InstanceOfAssertFactories.list(Number.class))
                .extracting(Number::doubleValue)
                .satisfies(all -> {
                    assertThat(all.get(0)).as("a column's head").isLessThanOrEqualTo(all.get(2));
                    assertThat(all.get(1)).as("a caption").isLessThanOrEqualTo(all.get(2));
                    assertThat(all.get(3)).as("a lead").isLessThan(all.get(4));
                });
    }

    @Test
    void aDayTellsTheTimesAndNamesThatItsStripHasNoRoomFor(Browser browser) throws IOException {
        PrintedPage paper = printed(browser, "/book?day=2026-03-12");

        assertThat(paper.text()).containsSubsequence("12:07-12:37", "Student 00", "Student 01", "booked");
        assertThat(paper.text()).doesNotContain("as a table", "Opening hours", "Keep ", "12:37-13:07");
        assertThat(paper.sheets()).as("what is free is drawn, not listed").hasSize(1);
        assertThat(paper.outside()).isEmpty();
    }

    @Test
    void theDutyOfAWeekIsPrintedWithoutTheFormToPlanIt(Browser browser) throws IOException {
        PrintedPage paper = printed(browser, "/people/duty");

        assertThat(paper.text()).contains("Who is on duty", "The week", "Wed 11 Mar");
        assertThat(paper.text()).doesNotContain("Plan somebody", "Person", "The week after", "Take off");
    }

    @Test
    void theTermReportSaysWhichDaysItIsAbout(Browser browser) throws IOException {
        PrintedPage paper = printed(browser, "/report?first=2026-02-01&last=2026-03-11");

        assertThat(paper.sheets().get(0)).contains("Term report, 2026-02-01 to 2026-03-11", "What happened");
        assertThat(paper.text()).doesNotContain("First day", "Show these days", "Paper (PDF)");
        assertThat(paper.outside()).isEmpty();
    }
}
