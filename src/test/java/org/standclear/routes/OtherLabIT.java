package org.standclear.routes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import jakarta.servlet.ServletException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.http.HttpMethod;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.standclear.booking.SecondLab;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.routes.RouteMatrix.Row;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.DemoOnPostgres;

/**
 * People of a second lab come to nothing of the demo college's, whose tables are full: no page of theirs shows a name or
 * an id of it, and every address with an id of it answers as for an id that nobody has. But a stop is refused to nobody
 * who stands at a cell: what that opens is tried in {@code run.web.StrangerStopIT}.
 */
class OtherLabIT {

    /** Where whoever stands at a cell logs a stop. */
    static final Set<String> AT_THE_CELL = Set.of(
            "/bench/{cell}", "/bench/{cell}/pulse", "/bench/{cell}/stop", "/bench/{cell}/holds", "/cells/{cell}/stop");

    @SuppressWarnings("NullAway.Init") // made before the first test, once for all of them
    @TestInstance(TestInstance.Lifecycle.PER_CLASS)
    abstract static class Cases {

        @Autowired
        MockMvc mvc;

        @Autowired
        ApplicationContext application;

        @Autowired
        JdbcClient jdbc;

        private boolean made;
        private OneLab first;
        private SecondLab second;

        @BeforeEach
        void makeASecondLab() {
            if (!made) {
                made = true;
                first = new OneLab(application, OneLab.FIRST);
                second = new SecondLab(application, "America/Halifax");
            }
        }

        @Test
        void everyAddressOfAThingOfTheOtherLabIsNotFound() throws Exception {
            List<String> faults = new ArrayList<>();
            Set<String> tried = new TreeSet<>();
            for (Row row : RouteMatrix.read().rows()) {
                Optional<String> path = NamedThings.filled(first, row.route().pattern());
                if (path.isEmpty() || AT_THE_CELL.contains(row.route().pattern())) {
                    continue;
                }
                tried.add(row.route().pattern());
                for (Role role : second.roles()) {
                    boolean allowed = Boolean.TRUE.equals(row.allowed().get(Optional.of(role)));
                    int status = ask(row.route().method(), path.get(), role, Map.of())
                            .getStatus();
                    if (status != (allowed ? 404 : 403)) {
                        faults.add(row.route() + " as " + role + " answers " + status);
                    }
                }
            }
            assertThat(faults).isEmpty();
            assertThat(tried).as("routes with a thing of the demo college").hasSizeGreaterThan(60);
        }

        /** An id has one spelling; the ones that a lenient reader takes too would pass the gate unseen. */
        @Test
        void noOtherSpellingOfAnIdIsFoundEither() throws Exception {
            List<String> faults = new ArrayList<>();
            int tried = 0;
            for (Row row : RouteMatrix.read().rows()) {
                Optional<String> path = NamedThings.filled(first, row.route().pattern());
                if (path.isEmpty() || AT_THE_CELL.contains(row.route().pattern())) {
                    continue;
                }
                for (String spelled : List.of(
                        path.get().replaceFirst("/0([0-9a-f]{7}-)", "/$1"),
                        path.get().replaceFirst("-([0-9a-f]{12})", "%2d$1"),
                        path.get().replaceFirst("/0([0-9a-f]{7})-0?", "/%30$1-"))) {
                    int status = mvc.perform(request(row.route().method(), URI.create(spelled))
                                    .with(user(signedIn(second.person(Role.INSTRUCTOR))))
                                    .with(csrf()))
                            .andReturn()
                            .getResponse()
                            .getStatus();
                    tried++;
                    if (status < 400) {
                        faults.add(row.route() + " spelled " + spelled + " answers " + status);
                    }
                }
            }
            assertThat(faults).isEmpty();
            assertThat(tried).isGreaterThan(180);
        }

        @Test
        void aFormWithMoreIdsThanAnyIsNotTaken() throws Exception {
            String cell = first.ids("cells").get(0).toString();
            String padding = Stream.generate(UUID::randomUUID)
                    .limit(2100)
                    .map(UUID::toString)
                    .collect(Collectors.joining(" "));
            assertThat(ask(HttpMethod.GET, "/book", Role.STUDENT, Map.of("a", padding, "cell", cell))
                            .getStatus())
                    .isEqualTo(404);
            assertThat(ask(HttpMethod.GET, "/book", Role.STUDENT, Map.of("cell", " ".repeat(100_001) + cell))
                            .getStatus())
                    .isEqualTo(404);
        }

        @Test
        void everyKindOfThingIsTried() {
            Set<String> empty = NamedThings.TABLES.values().stream()
                    .filter(table -> first.ids(table).isEmpty())
                    .collect(Collectors.toCollection(TreeSet::new));

            // what the demo has none of; each is behind the same gate, and LabThingsIT holds it to that
            assertThat(empty)
                    .isSubsetOf(
                            "booking_searches",
                            "roster_imports",
                            "report_questions",
                            "booking_bulk_moves",
                            "booking_make_ups",
                            "retention_lists",
                            "retention_proposals");
        }

        @Test
        void aFormOrAQueryThatNamesSomethingOfTheOtherLabIsNotFound() throws Exception {
            String cell = first.ids("cells").get(0).toString();
            String person = first.ids("people").get(0).toString();
            for (String path : List.of("/book/slot", "/book", "/runs", "/today", "/incidents/near-miss")) {
                for (Map<String, String> named : List.of(Map.of("cell", cell), Map.of("whatever", "x" + person))) {
                    assertThat(ask(HttpMethod.GET, path, Role.STUDENT, named).getStatus())
                            .as("%s with %s", path, named)
                            .isEqualTo(404);
                }
            }
            assertThat(ask(HttpMethod.POST, "/book", Role.STUDENT, Map.of("cell", cell))
                            .getStatus())
                    .isEqualTo(404);
            assertThat(ask(HttpMethod.POST, "/people/duty", Role.TECHNICIAN, Map.of("person", person))
                            .getStatus())
                    .isEqualTo(404);
        }

        @Test
        void noPageShowsAnythingOfTheOtherLab() throws Exception {
            List<String> faults = new ArrayList<>();
            int pages = 0;
            for (Row row : RouteMatrix.read().rows()) {
                String pattern = row.route().pattern();
                if (!row.route().method().equals(HttpMethod.GET) || pattern.contains("{") || pattern.equals("/live")) {
                    continue;
                }
                for (Role role : second.roles()) {
                    if (!Boolean.TRUE.equals(row.allowed().get(Optional.of(role)))) {
                        continue;
                    }
                    MockHttpServletResponse answer = ask(HttpMethod.GET, pattern, role, Map.of());
                    pages += answer.getStatus() == 200 ? 1 : 0;
                    faults.addAll(first.shown(pattern + " as " + role, answer, second.id()));
                }
            }
            assertThat(faults).isEmpty();
            assertThat(pages).as("pages that people of the second lab opened").isGreaterThan(80);
        }

        @Test
        void noPageOfTheirOwnThingsShowsAnythingOfTheOtherLab() throws Exception {
            List<String> faults = new ArrayList<>();
            for (String path : List.of(
                    "/cells/" + second.cell(),
                    "/cells/" + second.cell() + "/stop",
                    "/cells/" + second.cell() + "/phrasebook",
                    "/cells/" + second.cell() + "/day-test",
                    "/cells/" + second.cell() + "/tool-change",
                    "/cells/" + second.cell() + "/duties",
                    "/cells/" + second.cell() + "/paper",
                    "/cells/" + second.cell() + "/move-all",
                    "/bench/" + second.cell(),
                    "/people/" + second.person(Role.STUDENT).id(),
                    "/people/" + second.person(Role.STUDENT).id() + "/turns",
                    "/people/" + second.person(Role.STUDENT).id() + "/authorisations")) {
                for (Role role : List.of(Role.TECHNICIAN, Role.INSTRUCTOR)) {
                    MockHttpServletResponse answer = ask(HttpMethod.GET, path, role, Map.of());
                    if (answer.getStatus() != 403) {
                        assertThat(answer.getStatus())
                                .as("%s as %s", path, role)
                                .isEqualTo(200);
                    }
                    faults.addAll(first.shown(path + " as " + role, answer, second.id()));
                }
            }
            assertThat(faults).isEmpty();
        }

        /** The same walk as somebody of the first lab finds plenty: what is looked for is there to be found. */
        @Test
        void theSameLookAsTheirOwnStaffFindsPlenty() throws Exception {
            String ines = jdbc.sql("select id from people where login = 'ines'")
                    .query(UUID.class)
                    .single()
                    .toString();
            var person = new SignedInPerson(PersonId.of(ines), "ines", "Ines", Set.of(Role.INSTRUCTOR), null);
            int found = 0;
            for (String path : List.of("/people", "/cells", "/today", "/courses", "/incidents", "/runs", "/record")) {
                MockHttpServletResponse answer = mvc.perform(
                                request(HttpMethod.GET, path).with(user(person)))
                        .andReturn()
                        .getResponse();
                assertThat(answer.getStatus()).isEqualTo(200);
                found += first.shown(path, answer, second.id()).isEmpty() ? 0 : 1;
            }
            assertThat(found).isEqualTo(7);
        }

        private SignedInPerson signedIn(Person person) {
            return new SignedInPerson(person.id(), person.login(), person.printedName(), person.roles(), null);
        }

        private MockHttpServletResponse ask(HttpMethod method, String path, Role role, Map<String, String> named)
                throws Exception {
            var asked = request(method, path)
                    .param("formToken", UUID.randomUUID().toString())
                    .with(csrf())
                    .with(user(signedIn(second.person(role))));
            named.forEach(asked::param);
            try {
                return mvc.perform(asked).andReturn().getResponse();
            } catch (ServletException broken) {
                MockHttpServletResponse answer = new MockHttpServletResponse();
                answer.sendError(500, Objects.toString(broken.getMessage()));
                return answer;
            }
        }
    }

    @Nested
    @DemoOnH2
    class OnH2Engine extends Cases {}

    @Nested
    @DemoOnPostgres
    class OnPostgresEngine extends Cases {}
}
