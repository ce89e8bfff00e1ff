package org.standclear.cell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** The pages about cells, for each role and for forms that are wrong, late or sent twice. */
class CellPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        DayTests dayTests;

        @Autowired
        MovableClock clock;

        private String name = "";
        private CellId cell = CellId.next();

        @BeforeEach
        void aCell() {
            name = SampleCell.name();
            cell = SampleCell.inForce(register, name);
        }

        @Test
        void everybodySignedInSeesTheCellsAndOthersSignIn() throws Exception {
            Person student = person(Role.STUDENT);
            assertThat(page(get("/cells"), student).text()).contains(name);
            Document page = page(get("/cells/" + cell), student);

            assertThat(page.title()).startsWith(name);
            assertThat(page.select("h1").text()).isEqualTo(name + ": no release now");
            assertThat(page.text())
                    .contains("has had no day test today")
                    .contains("ISO 10218-1 reduced speed")
                    .contains("camera post");
            assertThat(page.select("a[href$=/stop]")).isNotEmpty();
            assertThat(page.select("a[href$=/propose], a[href$=/day-test]")).isEmpty();
            assertThat(mvc.perform(get("/cells")).andReturn().getResponse().getStatus())
                    .isEqualTo(302);
        }

        @Test
        void aStudentStopsTheCellWithAReason() throws Exception {
            Person student = person(Role.STUDENT);
            Document form = page(get("/cells/" + cell + "/stop"), student);
            String token = token(form);

            assertThat(send(stop(token, "", ""), student).getStatus()).isEqualTo(422);
            assertThat(send(stop(token, "hold", "bolt\u0007loose"), student).getStatus())
                    .isEqualTo(422);
            assertThat(send(stop(token, "out-of-service", "<b>bolt</b> loose"), student)
                            .getRedirectedUrl())
                    .isEqualTo("/cells/" + cell);
            assertThat(send(stop(token, "out-of-service", "<b>bolt</b> loose"), student)
                            .getRedirectedUrl())
                    .isEqualTo("/cells/" + cell);

            assertThat(cells.find(cell).orElseThrow().state()).isEqualTo(CellState.OUT_OF_SERVICE);
            Document page = page(get("/cells/" + cell), student);
            assertThat(page.text()).contains("<b>bolt</b> loose");
            assertThat(page.select("section[aria-labelledby=tags] tbody tr")).hasSize(1);
        }

        private AbstractMockHttpServletRequestBuilder<?> stop(String token, String kind, String reason) {
            return post("/cells/" + cell + "/stop")
                    .param("formToken", token)
                    .param("kind", kind)
                    .param("reason", reason);
        }

        @Test
        void theDayTestAsksForEveryItemAndKeepsWhatWasTyped() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            assertThat(send(get("/cells/" + cell + "/day-test"), person(Role.STUDENT))
                            .getStatus())
                    .isEqualTo(403);
            String token = token(page(get("/cells/" + cell + "/day-test"), technician));

            var incomplete = post("/cells/" + cell + "/day-test")
                    .param("formToken", token)
                    .param("power", "turbo")
                    .param("overridePercent", "NaN");
            MockHttpServletResponse refused = send(incomplete, technician);
            Document form = document(refused);

            assertThat(refused.getStatus()).isEqualTo(422);
            assertThat(form.select(".errors li")).hasSize(9);
            assertThat(form.select("input[name=power]").val()).isEqualTo("turbo");
            assertThat(send(dayTest(token, "reduced"), technician).getRedirectedUrl())
                    .isEqualTo("/cells/" + cell);
            assertThat(page(get("/cells/" + cell), technician).select("h1").text())
                    .isEqualTo(name + " is in service, and its day test has passed");
        }

        @Test
        void aCellReturnsAfterADayTestAndAConfirmation() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            send(stop(UUID.randomUUID().toString(), "hold", "look first"), technician);
            clock.moveBy(Duration.ofMinutes(1));
            String token = UUID.randomUUID().toString();

            MockHttpServletResponse untested = send(returned(token), technician);
            assertThat(untested.getStatus()).isEqualTo(422);
            assertThat(untested.getContentAsString()).contains("No day test has passed");

            dayTests.record(cell, technician.id(), SampleCell.goodReadings());
            assertThat(send(reading("-60"), technician).getRedirectedUrl()).isEqualTo("/cells/" + cell);
            assertThat(send(returned(token), technician).getStatus()).isEqualTo(422);
            assertThat(send(reading("-60"), person(Role.TECHNICIAN)).getStatus())
                    .isEqualTo(302);
            assertThat(send(returned(token), technician).getRedirectedUrl()).isEqualTo("/cells/" + cell);
            assertThat(cells.find(cell).orElseThrow().state()).isEqualTo(CellState.IN_SERVICE);
        }

        @Test
        void aTagSaysWhyToEverybodyAndWhoseHandItWasToStaffOnly() throws Exception {
            Person student = person(Role.STUDENT);
            Person technician = person(Role.TECHNICIAN);
            send(stop(UUID.randomUUID().toString(), "out-of-service", "cable chafe"), student);
            String href = page(get("/cells/" + cell), technician)
                    .select("section[aria-labelledby=tags] td a")
                    .attr("href");
            Document hung = page(get(href), technician);
            assertThat(hung.text())
                    .contains(
                            "out of service",
                            "Do not run this robot",
                            "cable chafe",
                            "Comes off By staff who had no part in it",
                            "This tag is not a lockout. It isolates no energy.")
                    .doesNotContain("taken off");
            assertThat(hung.select("dt").eachText()).contains("Hung by");
            assertThat(page(get(href), student).select("dt").eachText()).doesNotContain("Hung by");

            clock.moveBy(Duration.ofMinutes(1));
            dayTests.record(cell, technician.id(), SampleCell.goodReadings());
            send(reading("-60"), technician);
            send(reading("-60"), person(Role.TECHNICIAN));
            assertThat(send(returned(UUID.randomUUID().toString()), technician).getRedirectedUrl())
                    .isEqualTo("/cells/" + cell);

            assertThat(page(get(href), student).text()).contains("This tag has been taken off. Do not hang it.");
            Document staffs = page(get("/cells/" + cell), technician);
            assertThat(staffs.select("td[data-label=Hung]").text()).contains(student.printedName());
            assertThat(staffs.select("td[data-label='Taken off']").text()).contains(technician.printedName());
            Document students = page(get("/cells/" + cell), student);
            assertThat(students.select("td[data-label=Hung]").text()).doesNotContain(student.printedName());
            assertThat(students.select("td[data-label='Taken off']").text()).doesNotContain(technician.printedName());
        }

        @Test
        void aReadingOfSomebodyNotAuthorisedAtTheCellIsRefusedInItsForm() throws Exception {
            MockHttpServletResponse refused = send(reading("-61"), person(Role.STUDENT));

            assertThat(refused.getStatus()).isEqualTo(422);
            Document form = document(refused);
            assertThat(form.select(".errors li").text()).contains("authorised at this cell");
            assertThat(form.select("input[name=offsetZ]").val()).isEqualTo("-61");
        }

        private AbstractMockHttpServletRequestBuilder<?> returned(String token) {
            return post("/cells/" + cell + "/return")
                    .param("formToken", token)
                    .param("reason", "looked at, nothing found")
                    .param("confirmed", "true");
        }

        private AbstractMockHttpServletRequestBuilder<?> reading(String offsetZ) {
            return post("/cells/" + cell + "/tool-reading")
                    .param("formToken", UUID.randomUUID().toString())
                    .param("toolCode", "G-02")
                    .param("offsetX", "0")
                    .param("offsetY", "0")
                    .param("offsetZ", offsetZ);
        }

        private AbstractMockHttpServletRequestBuilder<?> dayTest(String token, String power) {
            return post("/cells/" + cell + "/day-test")
                    .param("formToken", token)
                    .param("stopStation", "pillar")
                    .param("stayedStopped", "yes")
                    .param("restartedOnUnlatching", "no")
                    .param("armSound", "yes")
                    .param("power", power)
                    .param("overridePercent", "50 %")
                    .param("sensitivity", "level 3")
                    .param("toolCode", "G-02")
                    .param("lineAndSignInPlace", "yes");
        }

        @Test
        void anInstructorRestrictsWhoAttends() throws Exception {
            Person instructor = person(Role.INSTRUCTOR);
            var restrict = post("/cells/" + cell + "/restriction")
                    .param("formToken", UUID.randomUUID().toString())
                    .param("act", "restrict")
                    .param("reason", "new bit holder");

            assertThat(send(restrict, instructor).getStatus()).isEqualTo(302);
            assertThat(cells.find(cell).orElseThrow().state()).isEqualTo(CellState.RESTRICTED);
            assertThat(page(get("/cells/" + cell + "/restriction"), instructor)
                            .select("h1")
                            .text())
                    .contains("Only staff attend");
        }

        @Test
        void theCellFileIsSavedAsText() throws Exception {
            MockHttpServletResponse file = send(get("/cells/" + cell + "/versions/7/file"), person(Role.STUDENT));

            assertThat(file.getContentAsString()).isEqualTo(SampleCell.file(name, 7));
            assertThat(file.getContentType()).startsWith("text/plain");
            assertThat(file.getHeader("Content-Disposition")).startsWith("attachment");
            assertThat(file.getHeader("X-Content-Type-Options")).isEqualTo("nosniff");
        }

        @Test
        void whatDoesNotExistIsNotFound() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            for (String path : new String[] {
                "/cells/" + CellId.next(),
                "/cells/not-an-id",
                "/cells/" + cell + "/versions/99",
                "/cells/" + cell + "/versions/99/file",
                "/cells/proposals/" + UUID.randomUUID(),
                "/cells/" + CellId.next() + "/day-test"
            }) {
                assertThat(send(get(path), technician).getStatus()).as(path).isEqualTo(404);
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
