package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.people.PersonalTokens;
import org.standclear.people.PersonalTokens.Created;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** A token is made with the password, shown once, and revoked by its owner alone. */
class OwnTokenPagesIT {

    abstract static class Cases extends PageCases {

        private static final String PASSWORD = "a lamp over tern hall";

        @Autowired
        PersonalTokens tokens;

        @Autowired
        PasswordEncoder encoder;

        @Autowired
        JdbcClient jdbc;

        private Person student() {
            Password hashed = new Password.Hashed(String.valueOf(encoder.encode(PASSWORD)));
            return ((Outcome.Done) people.add(new NewPerson(
                            "t" + UUID.randomUUID(), "Noor Candlewick", Set.of(Role.STUDENT), hashed, null)))
                    .person();
        }

        private MockHttpServletResponse make(Person person, String formToken, String name, String password) {
            return send(
                    post("/me/tokens")
                            .param("formToken", formToken)
                            .param("name", name)
                            .param("days", "30")
                            .param("current", password),
                    person);
        }

        @Test
        void isShownOnce() {
            Person noor = student();
            String form = token(page(get("/me/tokens"), noor));
            Document made = document(make(noor, form, "homework", PASSWORD));
            String text = made.select("code.token").text();
            assertThat(text).matches("sctok_[a-z2-9]{10}_[a-z2-9]{32}");

            assertThat(location(make(noor, form, "homework", PASSWORD))).isEqualTo("/me/tokens");
            Document later = page(get("/me/tokens"), noor);
            assertThat(later.text()).contains("homework", "not used yet", "You have one personal token");
            assertThat(later.html()).doesNotContain(text.substring(text.lastIndexOf('_') + 1));
            assertThat(tokens.of(noor.id())).hasSize(1);
        }

        @Test
        void keepsNoSecretInTheDatabase() {
            Person noor = student();
            String text = ((Created.Kept) tokens.create(noor.id(), "homework", 7)).text();
            assertThat(jdbc.sql("select secret_sha256 from personal_tokens where person_id = :id")
                            .param("id", noor.id().value())
                            .query(String.class)
                            .single())
                    .hasSize(64)
                    .doesNotContain(text.substring(text.lastIndexOf('_') + 1));
        }

        @Test
        void asksForThePasswordAndAName() {
            Person noor = student();
            String form = token(page(get("/me/tokens"), noor));
            MockHttpServletResponse wrong = make(noor, form, "homework", "not mine");
            assertThat(wrong.getStatus()).isEqualTo(422);
            assertThat(document(wrong).text()).contains("This is not your password.");
            MockHttpServletResponse nameless = make(noor, token(document(wrong)), " ", PASSWORD);
            assertThat(nameless.getStatus()).isEqualTo(422);
            assertThat(tokens.of(noor.id())).isEmpty();
        }

        @Test
        void isRevokedByItsOwnerAlone() {
            Person noor = student();
            Person mateo = person(Role.STUDENT);
            tokens.create(noor.id(), "homework", 7);
            String revoke = "/me/tokens/" + tokens.of(noor.id()).get(0).id() + "/revoke";
            String form = page(get("/me/tokens"), noor)
                    .select("form.inline input[name=formToken]")
                    .val();

            assertThat(send(post(revoke).param("formToken", form), mateo).getStatus())
                    .isEqualTo(404);
            assertThat(tokens.of(noor.id()).get(0).revokedAt()).isNull();
            assertThat(location(send(post(revoke).param("formToken", form), noor)))
                    .isEqualTo("/me/tokens");
            assertThat(page(get("/me/tokens"), noor).text()).contains("revoked", "You have no personal token");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
