package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.booking.labs.LabRegister;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** Making labs, appointing staff, changing from one lab to another, and taking one out of use, at a browser. */
class LabsPagesIT {

    private static final String PASSWORD = "heron walks on ice 27";

    abstract static class Cases {

        @LocalServerPort
        int port;

        @Autowired
        ApplicationContext application;

        @Autowired
        LabRegister register;

        @Autowired
        Labs labs;

        private SampleLab first;

        @BeforeEach
        void inTheFirstLab() {
            first = new SampleLab(application);
        }

        private Person account(String name, Role role) {
            return first.person(name, new Password.Chosen(PASSWORD), role);
        }

        private WebUser signedIn(Person person) {
            return WebUser.atPort(port).signIn(person.login(), PASSWORD);
        }

        private static Map<String, String> facts(String name) {
            return Map.of(
                    "name",
                    name,
                    "college",
                    "Far college",
                    "room",
                    "Room 3",
                    "zone",
                    "America/Halifax",
                    "hours",
                    "09:00-17:00",
                    "emergencyNumber",
                    "555 0303",
                    "firstAider",
                    "Tomke, next door",
                    "stopMap",
                    "one on the bench");
        }

        private static WebPage.WebForm filled(WebPage page, Map<String, String> values) {
            WebPage.WebForm form = page.form("/labs");
            for (Map.Entry<String, String> value : values.entrySet()) {
                form = form.with(value.getKey(), value.getValue());
            }
            return form;
        }

        @Test
        void anAdministratorMakesALabWithItsFirstTechnician() {
            Person adaeze = account("Adaeze Lanternby", Role.TECHNICIAN);
            WebUser marit = signedIn(account("Marit Ashgrove", Role.ADMINISTRATOR));
            String name = "Far bench " + UUID.randomUUID();

            WebPage refused = marit.submit(marit.get("/labs").form("/labs").with("name", name));
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.document().select("#name").val()).isEqualTo(name);
            assertThat(refused.text()).contains("Choose the zone");
            assertThat(labs.all()).noneMatch(lab -> lab.name().equals(name));

            WebPage nobody =
                    marit.submit(filled(marit.get("/labs"), facts(name)).with("login", "nobody-at-all"));
            assertThat(nobody.status()).isEqualTo(422);
            assertThat(labs.all()).noneMatch(lab -> lab.name().equals(name));

            WebPage made = marit.follow(
                    marit.submit(filled(marit.get("/labs"), facts(name)).with("login", adaeze.login())));
            assertThat(made.status()).isEqualTo(200);
            assertThat(made.text()).contains(name).contains("America/Halifax").contains("Adaeze Lanternby");
            assertThat(marit.get("/labs").text()).contains(name);

            WebPage twice = marit.submit(filled(marit.get("/labs"), facts(name)));
            assertThat(twice.status()).isEqualTo(422);
        }

        @Test
        void somebodyOfTwoLabsChangesFromOneToTheOther() {
            SecondLab second = new SecondLab(application, "America/Halifax");
            Person wren = account("Wren Hollowell", Role.TECHNICIAN);
            WebUser user = signedIn(wren);
            assertThat(user.get("/people").document().select("form[action=/labs/here]"))
                    .as("a person of one lab has nothing to choose")
                    .isEmpty();

            register.appoint(second.id(), wren.login(), Set.of(Role.INSTRUCTOR), PersonId.next());
            WebPage before = user.get("/people?find=Otherlab");
            assertThat(before.document().select("form[action=/labs/here]")).hasSize(1);
            assertThat(before.text()).doesNotContain("Otherlab student");
            assertThat(user.get("/courses").status())
                    .as("no instructor in the first")
                    .isEqualTo(403);

            WebPage after = user.follow(user.submit(
                    before.form("/labs/here").with("lab", second.id().toString())));
            assertThat(after.document().select(".mark small").text())
                    .isEqualTo(labs.find(second.id()).orElseThrow().name());
            assertThat(user.get("/people?find=Otherlab").text()).contains("Otherlab student");
            assertThat(user.get("/courses").status())
                    .as("an instructor in the second")
                    .isEqualTo(200);
            assertThat(user.get("/desk").status()).isEqualTo(200);
        }

        @Test
        void thePageOfAThingIsInTheThingsLab() {
            SecondLab second = new SecondLab(application, "America/Halifax");
            Person wren = account("Wren Hollowell", Role.TECHNICIAN);
            register.appoint(second.id(), wren.login(), Set.of(Role.TECHNICIAN), PersonId.next());
            CellId here = first.cell(0);
            WebUser user = signedIn(wren);
            String firstName = labs.theLab().name();
            String secondName = labs.find(second.id()).orElseThrow().name();

            assertThat(lab(user.get("/cells/" + here))).isEqualTo(firstName);
            assertThat(lab(user.get("/cells/" + second.cell()))).isEqualTo(secondName);
            assertThat(lab(user.get("/people"))).as("what was chosen stays").isEqualTo(firstName);
            assertThat(user.get("/cells/" + here + "?cell=" + second.cell()).status())
                    .as("things of two labs together")
                    .isEqualTo(404);
        }

        private static String lab(WebPage page) {
            assertThat(page.status()).as(page.path()).isEqualTo(200);
            return page.document().select(".mark small").text();
        }

        @Test
        void nobodyChangesToALabThatIsNotTheirs() {
            SecondLab second = new SecondLab(application, "America/Halifax");
            SecondLab third = new SecondLab(application, "Europe/Berlin");
            Person wren = account("Wren Hollowell", Role.TECHNICIAN);
            register.appoint(second.id(), wren.login(), Set.of(Role.TECHNICIAN), PersonId.next());
            WebUser user = signedIn(wren);

            WebPage refused = user.submit(user.get("/people")
                    .form("/labs/here")
                    .with("lab", third.id().toString()));

            assertThat(refused.status()).isEqualTo(404);
            assertThat(refused.html())
                    .doesNotContain(labs.find(third.id()).orElseThrow().name());
        }

        @Test
        void takingALabOutOfUseAsksOnceMore() {
            SecondLab second = new SecondLab(application, "America/Halifax");
            WebUser marit = signedIn(account("Marit Ashgrove", Role.ADMINISTRATOR));
            String path = "/labs/" + second.id();

            WebPage asked = marit.get(path + "/close");
            assertThat(asked.status()).isEqualTo(200);
            assertThat(marit.submit(asked.form(path + "/close").with("reason", ""))
                            .status())
                    .isEqualTo(422);
            WebPage closed = marit.follow(marit.submit(
                    marit.get(path + "/close").form(path + "/close").with("reason", "the room is rebuilt")));

            assertThat(closed.text()).contains("out of use");
            assertThat(marit.get("/labs").status()).isEqualTo(200);
            WebPage opened = marit.follow(marit.submit(closed.form(path + "/open")));
            assertThat(opened.text()).doesNotContain("out of use.").contains("Take it out of use");
        }

        @Test
        void aPersonTakenOutOfALabFindsNothingOfItAtTheNextRequest() {
            SecondLab second = new SecondLab(application, "America/Halifax");
            Person wren = account("Wren Hollowell", Role.TECHNICIAN);
            register.appoint(second.id(), wren.login(), Set.of(Role.TECHNICIAN), PersonId.next());
            WebUser user = signedIn(wren);
            WebUser marit = signedIn(account("Marit Ashgrove", Role.ADMINISTRATOR));
            assertThat(user.get("/cells/" + second.cell()).status()).isEqualTo(200);

            marit.follow(marit.submit(marit.get("/labs")
                    .form("/labs/here")
                    .with("lab", second.id().toString())));
            WebPage page = marit.get("/people/" + wren.id());
            WebPage.WebForm roles = page.form("/people/" + wren.id() + "/roles");
            Map<String, String> none = new java.util.LinkedHashMap<>(roles.values());
            none.remove("roles");
            WebPage done = marit.submit(new WebPage.WebForm(roles.action(), none));

            assertThat(done.status()).isEqualTo(302);
            assertThat(user.get("/cells/" + second.cell()).status()).isEqualTo(404);
            assertThat(user.get("/people").status()).isEqualTo(200);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
