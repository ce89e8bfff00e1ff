package org.standclear.routes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.springframework.http.HttpMethod;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.routes.RouteMatrix.Row;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.DemoOnPostgres;
import org.standclear.testing.web.WebUser;

/** The people of each of the demo's two labs try what the other has: they find nothing and change nothing. */
class TwoDemoLabsIT {

    @SuppressWarnings("NullAway.Init") // made before the first test, once for all of them
    @TestInstance(TestInstance.Lifecycle.PER_CLASS)
    abstract static class Cases {

        private static final List<String> OF_TERN_HALL = List.of("noor", "adaeze", "ines", "rosalind", "bench");
        private static final List<String> OF_SALTGRASS = List.of("ottilie.kelpwick", "sorrel", "oriel");

        @LocalServerPort
        int port;

        @Autowired
        MockMvc mvc;

        @Autowired
        ApplicationContext application;

        @Autowired
        People people;

        @Autowired
        Labs labs;

        @Autowired
        JdbcClient jdbc;

        private LabId saltgrass;
        private List<Attack> attacks;

        /** Some people of one lab, and the other. */
        private record Attack(LabId from, List<Person> by, OneLab on) {}

        @BeforeEach
        void readBothLabs() {
            if (attacks == null) {
                saltgrass = labs.all().stream()
                        .filter(lab -> lab.name().equals("Saltgrass Robot Loft"))
                        .findFirst()
                        .orElseThrow()
                        .id();
                attacks = List.of(
                        new Attack(saltgrass, named(saltgrass, OF_SALTGRASS), new OneLab(application, OneLab.FIRST)),
                        new Attack(
                                OneLab.FIRST, named(OneLab.FIRST, OF_TERN_HALL), new OneLab(application, saltgrass)));
            }
        }

        private List<Person> named(LabId lab, List<String> logins) {
            return LabScope.in(
                    lab,
                    () -> logins.stream()
                            .map(login -> people.byLogin(login).orElseThrow())
                            .toList());
        }

        private int ask(HttpMethod method, String path, Person by, Map<String, String> named) throws Exception {
            return answer(method, path, by, named).getStatus();
        }

        private MockHttpServletResponse answer(HttpMethod method, String path, Person by, Map<String, String> named)
                throws Exception {
            var asked = request(method, URI.create(path))
                    .param("formToken", UUID.randomUUID().toString())
                    .with(csrf())
                    .with(user(new SignedInPerson(by.id(), by.login(), by.printedName(), by.roles(), null)));
            named.forEach(asked::param);
            return mvc.perform(asked).andReturn().getResponse();
        }

        private static boolean mayUse(Row row, Person person) {
            return person.roles().stream()
                    .anyMatch(role -> Boolean.TRUE.equals(row.allowed().get(Optional.of(role))));
        }

        private int entries(LabId lab) {
            return jdbc.sql("select count(*) from trail_entries where lab = :lab")
                    .param("lab", lab.value())
                    .query(Integer.class)
                    .single();
        }

        @Test
        void noAddressOfTheOthersThingsIsFoundAndNothingOfThemChanges() throws Exception {
            List<String> faults = new ArrayList<>();
            for (Attack attack : attacks) {
                LabId target = attack.from().equals(saltgrass) ? OneLab.FIRST : saltgrass;
                Map<String, String> before = attack.on().rows();
                int entries = entries(target);
                int tried = 0;
                for (Row row : RouteMatrix.read().rows()) {
                    Optional<String> path =
                            NamedThings.filled(attack.on(), row.route().pattern());
                    if (path.isEmpty()
                            || OtherLabIT.AT_THE_CELL.contains(row.route().pattern())) {
                        continue;
                    }
                    for (Person person : attack.by()) {
                        int status = ask(row.route().method(), path.get(), person, Map.of("reason", "because"));
                        tried++;
                        if (status != (mayUse(row, person) ? 404 : 403)) {
                            faults.add(row.route() + " as " + person.login() + " answers " + status);
                        }
                    }
                }
                assertThat(tried).isGreaterThan(150);
                assertThat(attack.on().rows()).as("what the other lab has").isEqualTo(before);
                assertThat(entries(target))
                        .as("entries in the other lab's record")
                        .isEqualTo(entries);
            }
            assertThat(faults).isEmpty();
        }

        @Test
        void noFormThatNamesAThingOfTheOtherIsTaken() throws Exception {
            List<String> faults = new ArrayList<>();
            for (Attack attack : attacks) {
                Map<String, String> before = attack.on().rows();
                Map<String, String> named = Map.of(
                        "cell", attack.on().ids("cells").get(0).toString(),
                        "person", attack.on().ids("people").get(0).toString(),
                        "booking", attack.on().ids("bookings").get(0).toString());
                int tried = 0;
                for (Row row : RouteMatrix.read().rows()) {
                    if (!row.route().method().equals(HttpMethod.POST)
                            || row.route().pattern().contains("{")
                            || Boolean.TRUE.equals(row.allowed().get(Optional.<Role>empty()))) {
                        continue;
                    }
                    for (Person person : attack.by()) {
                        int status = ask(HttpMethod.POST, row.route().pattern(), person, named);
                        tried++;
                        if (status != (mayUse(row, person) ? 404 : 403)
                                && !row.route().pattern().startsWith("/api/")) {
                            faults.add(row.route() + " as " + person.login() + " answers " + status);
                        }
                    }
                }
                assertThat(tried).isGreaterThan(40);
                assertThat(attack.on().rows()).isEqualTo(before);
            }
            assertThat(faults).isEmpty();
        }

        /** The mock of a request knows the fields of a form with files by itself; a real one has to be read first. */
        @Test
        void aFormWithFilesIsReadBeforeItIsLetIn() throws Exception {
            WebUser sorrel = WebUser.atPort(port).signIn("sorrel", DemoCollege.password());
            String page = sorrel.get("/programs/upload").html();
            String csrf = page.replaceAll("(?s).*name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
            String own = new OneLab(application, saltgrass).ids("cells").get(0).toString();
            String theirs =
                    new OneLab(application, OneLab.FIRST).ids("cells").get(0).toString();

            assertThat(upload(sorrel, csrf, theirs)).isEqualTo(404);
            assertThat(upload(sorrel, csrf, own))
                    .as("the same with a cell of her own")
                    .isNotEqualTo(404);
        }

        private int upload(WebUser user, String csrf, String cell) throws Exception {
            String boundary = "----" + UUID.randomUUID();
            StringBuilder body = new StringBuilder();
            Map.of("_csrf", csrf, "formToken", UUID.randomUUID().toString(), "cell", cell, "text", "x")
                    .forEach((name, value) -> body.append("--")
                            .append(boundary)
                            .append("\r\nContent-Disposition: form-data; name=\"")
                            .append(name)
                            .append("\"\r\n\r\n")
                            .append(value)
                            .append("\r\n"));
            body.append("--").append(boundary).append("--\r\n");
            HttpRequest sent = HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/check"))
                    .header("Cookie", user.cookieHeader())
                    .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                    .POST(BodyPublishers.ofString(body.toString()))
                    .build();
            return HttpClient.newHttpClient()
                    .send(sent, BodyHandlers.ofString())
                    .statusCode();
        }

        @Test
        void pagesAboutSomebodyOfBothShowNothingOfTheOther() throws Exception {
            String halima = people.byLogin("halima.sableton").orElseThrow().id().toString();
            List<String> faults = new ArrayList<>();
            int pages = 0;
            for (Attack attack : attacks) {
                for (String path : List.of("", "/turns", "/authorisations", "/runs", "/use")) {
                    for (Person person : attack.by()) {
                        MockHttpServletResponse answer =
                                answer(HttpMethod.GET, "/people/" + halima + path, person, Map.of());
                        pages += answer.getStatus() == 200 ? 1 : 0;
                        faults.addAll(attack.on()
                                .shown("/people/halima" + path + " as " + person.login(), answer, attack.from()));
                    }
                }
            }
            assertThat(faults).isEmpty();
            assertThat(pages).as("pages that were opened").isGreaterThan(3);
        }
    }

    @Nested
    @DemoOnH2
    class OnH2Engine extends Cases {}

    @Nested
    @DemoOnPostgres
    class OnPostgresEngine extends Cases {}
}
