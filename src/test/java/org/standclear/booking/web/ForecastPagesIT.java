package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.SampleLab;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.people.DueDates;
import org.standclear.people.DueDates.DueSection;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Due dates and what they lead to, and the use of the lab. It is Wed 11 March 2026, 09:00 UTC. */
class ForecastPagesIT {

    private static final Instant THURSDAY_FIVE = Instant.parse("2026-03-19T17:00:00Z");

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        CourseRegister courses;

        @Autowired
        DueDates dueDates;

        private @Nullable SampleLab lab;
        private Person ines = new Person(PersonId.next(), "", "", java.util.Set.of(), false);
        private AssignmentId assignment = AssignmentId.next();
        private SectionId first = SectionId.next();
        private SectionId second = SectionId.next();
        private String code = "";

        @BeforeEach
        void twoSections() {
            SampleLab made = new SampleLab(application);
            lab = made;
            ines = made.person("Ines Quarryvale", Role.INSTRUCTOR);
            made.cell(0);
            code = "C" + UUID.randomUUID().toString().substring(0, 8);
            CourseId course = done(courses.addCourse(code, "Robot Programming", ines.id()));
            first = done(courses.addSection(course, "01", ines.id()));
            second = done(courses.addSection(course, "02", ines.id()));
            for (int student = 0; student < 3; student++) {
                courses.enrol(made.student("=Noor " + student).id(), first, ines.id());
                courses.enrol(made.student("Mateo " + student).id(), second, ines.id());
            }
            assignment = done(courses.addAssignment(new NewAssignment(
                    course, "Peg and plate", 100, Map.of(first, THURSDAY_FIVE, second, THURSDAY_FIVE), ines.id())));
        }

        private static <T> T done(Outcome<T> outcome) {
            return ((Outcome.Done<T>) outcome).id();
        }

        private Instant due(SectionId section) {
            return dueDates.find(assignment).orElseThrow().sections().stream()
                    .filter(one -> one.id().equals(section))
                    .map(DueSection::due)
                    .findFirst()
                    .orElseThrow();
        }

        private Document shown(String day) {
            return page(get("/forecast/" + assignment).param("due-" + first, day), ines);
        }

        @Test
        void showsTheUsePerDayForDatesThatAreOnlyTried() {
            Document together = page(get("/forecast/" + assignment), ines);
            Document apart = shown("2026-03-24");

            assertThat(together.expectFirst("h1").text())
                    .startsWith("Thu 19 Mar is at ")
                    .contains("%");
            assertThat(together.select("#asked ~ figure rect.wanted")).isNotEmpty();
            assertThat(together.select("#asked ~ figure tbody tr")).isNotEmpty();
            assertThat(apart.select("input[name=due-" + first + "]").val()).isEqualTo("2026-03-24");
            assertThat(apart.select("#tried").text()).isEqualTo("Due: section 01 Tue 24 Mar, section 02 Thu 19 Mar");
            assertThat(peak(apart)).isLessThan(peak(together));
            assertThat(due(first)).isEqualTo(THURSDAY_FIVE);
        }

        @Test
        void saysFirstWhenADueDateLeavesNoDay() {
            Document page = shown("2026-03-10");

            // three students of the first section need 100 turns each, and the tenth is past
            assertThat(page.expectFirst("h1").text())
                    .isEqualTo("300 turns have no open day left before their due date");
            assertThat(page.select(".answer").text()).contains("of this assignment's turns are not given");
            assertThat(page.select("section:has(#staggered) > p").text())
                    .contains("300 of the 300 turns without an open day get one; the peak is then at ")
                    .doesNotContain("The peak falls");
            assertThat(page.select("section:has(#staggered) p.acts a")).hasSize(1);
        }

        private static int peak(Document page) {
            return Integer.parseInt(page.expectFirst("h1").text().replaceAll(".* at (\\d+) %.*", "$1"));
        }

        @Test
        void suggestsToStaggerAndAppliesItWhenConfirmed() {
            // the tenth is past, so there is something to mend however many cells other tests have made
            Document page = shown("2026-03-10");
            String confirm = page.select("#staggered ~ p.acts a").attr("href");
            assertThat(confirm).startsWith("/forecast/" + assignment + "/move?due-");
            Document asked = page(get(confirm), ines);
            assertThat(due(second)).isEqualTo(THURSDAY_FIVE);
            MockHttpServletRequestBuilder send = post("/forecast/" + assignment + "/move");
            asked.select("main form input[type=hidden]").forEach(input -> send.param(input.attr("name"), input.val()));

            MockHttpServletResponse without = send(send, ines);
            assertThat(without.getStatus()).isEqualTo(422);
            location(send(send.param("reason", "Thursday would be overrun"), ines));

            assertThat(due(first).equals(THURSDAY_FIVE) && due(second).equals(THURSDAY_FIVE))
                    .isFalse();
            assertThat(due(first).toString()).endsWith("T17:00:00Z");
        }

        @Test
        void tellsTheSectionThatMovesAndNobodyElse() {
            Person noor = Objects.requireNonNull(lab).student("Noor of one");
            Person mateo = Objects.requireNonNull(lab).student("Mateo of two");
            courses.enrol(noor.id(), first, ines.id());
            courses.enrol(mateo.id(), second, ines.id());

            location(send(
                    post("/forecast/" + assignment + "/move")
                            .param("formToken", UUID.randomUUID().toString())
                            .param("reason", "the arm is away")
                            .param("due-" + first, "2026-03-20"),
                    ines));

            assertThat(page(get("/me/messages"), noor).select("main").text())
                    .contains("is due Fri 20 Mar 2026", "section 01: it was due Thu 19 Mar 2026", "the arm is away");
            assertThat(page(get("/me/messages"), mateo).select("main").text()).doesNotContain("the arm is away");
        }

        @Test
        void asksForNothingWhereNothingChanges() {
            Document page = page(get("/forecast/" + assignment + "/move"), ines);

            assertThat(page.expectFirst("h1").text()).isEqualTo("These due dates are in force already");
            assertThat(page.select("main form")).isEmpty();
        }

        @Test
        void refusesAMoveOverSomebodyElsesMove() {
            MockHttpServletRequestBuilder send = post("/forecast/" + assignment + "/move")
                    .param("formToken", UUID.randomUUID().toString())
                    .param("reason", "why")
                    .param("due-" + first, "2026-03-20")
                    .param("seen-" + first, "2026-03-18T17:00:00Z");

            MockHttpServletResponse answer = send(send, ines);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).text()).contains("Somebody changed the due date of section 01");
            assertThat(due(first)).isEqualTo(THURSDAY_FIVE);
        }

        @Test
        void namesTheFieldThatCannotBeRead() {
            Document page = page(
                    get("/forecast/" + assignment).param("due-" + first, "soon").param("growth", "NaN"), ines);

            assertThat(page.select("[data-state=error]")).hasSize(2);
            assertThat(page.select("input[name=growth]").val()).isEqualTo("NaN");
        }

        @Test
        void saysWhereTheStepTimesComeFrom() {
            assertThat(page(get("/forecast/" + assignment), ines)
                            .select("#waits ~ ul")
                            .text())
                    .containsAnyOf(
                            "Release work is estimated (2.5 to 7 min)", "Release work is that of the lab's own last")
                    .containsAnyOf("No-shows are assumed (12 %)", "No-shows are those of the lab's own last");
        }

        @Test
        void countsSlotsBySectionAndPersonAndNeutralisesFormulas() throws Exception {
            Person student = Objects.requireNonNull(lab).student("=Kofi");
            Objects.requireNonNull(lab)
                    .booked(Objects.requireNonNull(lab).cell(0), "2026-03-12T12:00:00Z", student, null);
            courses.enrol(student.id(), first, ines.id());

            Document page = page(get("/fairness"), ines);
            String csv = send(get("/fairness/people.csv"), ines).getContentAsString();

            assertThat(page.select("#sections ~ div tbody tr").stream()
                            .map(row -> row.text())
                            .filter(row -> row.startsWith(code + "-01")))
                    .containsExactly(code + "-01 4 1 0 0.0 1 0");
            assertThat(page.select("h1").text()).contains("% of the lab’s slots were used");
            assertThat(csv).contains("\"'=Kofi\",\"" + code + "-01\",1,0,0,0,0,0,27.0\r\n");
            assertThat(csv.lines().filter(line -> line.startsWith("=") || line.contains("\"=")))
                    .isEmpty();
        }

        @Test
        void refusesDaysThatCannotBe() {
            MockHttpServletResponse answer =
                    send(get("/fairness").param("first", "2026-03-11").param("last", "2026-03-10"), ines);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).select("input[name=last]").val()).isEqualTo("2026-03-10");
            MockHttpServletResponse file = send(
                    get("/fairness/people.csv").param("first", "2026-03-11").param("last", "tomorrow"), ines);
            assertThat(file.getStatus()).isEqualTo(422);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
