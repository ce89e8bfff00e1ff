package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.SecondLab;
import org.standclear.message.Messages;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Somebody guesses sign-in names of another lab and enrols them: nothing is learned before the person says yes. */
class InvitationsIT {

    abstract static class Cases extends RosterCases {

        @Autowired
        Messages messages;

        @Autowired
        PeopleRegister accounts;

        @Autowired
        MovableClock clock;

        private SecondLab other;
        private Person far;

        @BeforeEach
        void somebodyOfAnotherLab() {
            other = new SecondLab(application, "America/Halifax");
            far = other.in(() -> other.sample().person("Ottilie Realname", Role.STUDENT));
        }

        private String course() {
            return "/courses/" + courseId;
        }

        private Document enrol(String login) {
            String location = location(act(
                    course() + "/students",
                    "section",
                    Objects.requireNonNull(first).toString(),
                    "logins",
                    login));
            assertThat(location).isEqualTo(course());
            return page(get(course()), ines());
        }

        private String only(Document shown) {
            return shown.select("#invited ~ ul form").attr("action");
        }

        private List<String> asked() {
            return page(get("/me/invitations"), far).select("main .roll b").eachText();
        }

        @Test
        void theAnswerIsTheSameWhetherSomebodyHasTheNameOrNot() {
            Person gone = other.in(() -> other.sample().person("Quentin Realname", Role.STUDENT));
            other.in(() -> accounts.deactivate(
                    gone.id(), "left", other.person(Role.INSTRUCTOR).id()));
            String there = letters(enrol(far.login()), far.login());
            assertThat(location(act(only(page(get(course()), ines()))))).isEqualTo(course());
            String closed = letters(enrol(gone.login()), gone.login());
            location(act(only(page(get(course()), ines()))));
            String nobody = letters(enrol("nobody." + own), "nobody." + own);

            assertThat(there).isEqualTo(nobody).contains("Asked, no answer yet").doesNotContain("Realname");
            assertThat(closed).isEqualTo(nobody);
        }

        /** What the page says, without the name that was typed and the marks of its forms. */
        private String letters(Document shown, String login) {
            return shown.select("main").text().replace(login, "NAME");
        }

        @Test
        void nothingOfThemIsHereBeforeTheySayYes() {
            enrol(far.login());

            assertThat(everybody.find(far.id()).orElseThrow().roles()).isEmpty();
            assertThat(courses.enrolmentsOf(far.id())).isEmpty();
            assertThat(send(get("/people/" + far.id()), ines()).getStatus()).isEqualTo(404);
            assertThat(page(get("/people?find=Realname"), ines()).text()).doesNotContain(far.login());
            assertThat(messages.of(far.id(), 1)).singleElement().satisfies(told -> {
                assertThat(told.href()).isEqualTo("/me/invitations");
                assertThat(told.lines()).contains("Robots.");
            });
            assertThat(asked()).singleElement().asString().contains("Robots, section 01");
        }

        @Test
        void whoSaysYesIsEnrolledAndNamed() {
            enrol(far.login());
            Document mine = page(get("/me/invitations"), far);
            String accept = mine.select("form[action$=/accept]").attr("action");

            assertThat(location(send(form(accept), far))).isEqualTo("/me/invitations");

            assertThat(asked()).isEmpty();
            assertThat(courses.enrolmentsOf(far.id())).hasSize(1);
            assertThat(everybody.find(far.id()).orElseThrow().roles()).containsExactly(Role.STUDENT);
            assertThat(page(get("/people/" + far.id()), ines()).text()).contains("Ottilie Realname");
            assertThat(page(get(course()), ines()).select("#invited")).isEmpty();
            assertThat(send(form(accept), far).getStatus()).as("once").isEqualTo(404);
        }

        @Test
        void whoSaysNoLeavesNoTraceOfBeingThere() {
            enrol(far.login());
            String decline = page(get("/me/invitations"), far)
                    .select("form[action$=/decline]")
                    .attr("action");

            location(send(form(decline), far));

            assertThat(asked()).isEmpty();
            assertThat(page(get(course()), ines()).text()).doesNotContain("Realname", "declined", "said no");
            assertThat(everybody.find(far.id()).orElseThrow().roles()).isEmpty();
        }

        @Test
        void nobodyAnswersForSomebodyElseAndNoOtherCourseWithdrawsIt() {
            enrol(far.login());
            String accept = page(get("/me/invitations"), far)
                    .select("form[action$=/accept]")
                    .attr("action");

            assertThat(send(form(accept), ines()).getStatus()).isEqualTo(404);
            assertThat(send(form(accept.replace("/accept", "/decline")), other.person(Role.STUDENT))
                            .getStatus())
                    .isEqualTo(404);
            String withdraw = only(page(get(course()), ines()));
            var another = done(register.addCourse("X" + own, "Other robots", null));
            assertThat(act(withdraw.replace(String.valueOf(courseId), another.toString()))
                            .getStatus())
                    .isEqualTo(404);
            assertThat(send(form(withdraw), other.person(Role.INSTRUCTOR)).getStatus())
                    .isEqualTo(404);
            assertThat(asked()).hasSize(1);
        }

        @Test
        void isForgottenAfterAMonthWithoutAnAnswer() {
            enrol(far.login());
            String accept = page(get("/me/invitations"), far)
                    .select("form[action$=/accept]")
                    .attr("action");

            clock.moveBy(Duration.ofDays(31));

            assertThat(asked()).isEmpty();
            assertThat(send(form(accept), far).getStatus()).isEqualTo(404);
            assertThat(page(get(course()), ines()).select("#invited")).isEmpty();
            clock.moveToStart();
        }

        @Test
        void peopleOfThisLabAreEnrolledAtOnceBesideOthersAndOnceOnly() {
            Person noor = person(Role.STUDENT);

            enrol(noor.login() + "\n" + far.login());
            Document twice = enrol(far.login().toUpperCase(java.util.Locale.ROOT));

            assertThat(courses.enrolmentsOf(noor.id())).hasSize(1);
            assertThat(twice.select("#invited ~ ul b").eachText()).containsExactly(far.login());
            assertThat(messages.of(far.id(), 5)).hasSize(1);
            assertThat(everybody.find(far.id()).orElseThrow().roles()).isEqualTo(Set.of());
        }

        private static org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder form(String path) {
            return org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post(path)
                    .param("formToken", java.util.UUID.randomUUID().toString());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
