package org.standclear.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** Signing in, staying in and being shut out, as a browser meets it, on both engines. */
class SignInIT {

    abstract static class Cases {

        static final String PASSWORD = "a lamp over tern hall";

        @LocalServerPort
        int port;

        @Autowired
        PeopleRegister register;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock clock;

        private Person admin;

        @BeforeEach
        void startWithoutTries() {
            jdbc.sql("delete from tries").update();
            admin = add(new Password.Chosen(PASSWORD), Role.ADMINISTRATOR);
        }

        private Person add(Password password, Role... roles) {
            return ((Outcome.Done) register.add(
                            new NewPerson("s" + UUID.randomUUID(), "Saoirse Pinwheel", Set.of(roles), password, null)))
                    .person();
        }

        private Person student() {
            return add(new Password.Chosen(PASSWORD), Role.STUDENT);
        }

        private WebUser browser() {
            return WebUser.atPort(port);
        }

        private static WebPage tryToSignIn(WebUser user, String login, String password) {
            return user.submit(user.get("/sign-in")
                    .form("/sign-in")
                    .with("username", login)
                    .with("password", password));
        }

        @Test
        void leadsBackToWhereOneWasButNowhereElse() {
            WebUser user = browser();
            WebPage asked = user.get("/me/pin?chosen");
            assertThat(asked.location()).isEqualTo("/sign-in?to=%2Fme%2Fpin%3Fchosen");
            WebPage form = user.follow(asked);
            Person person = student();
            WebPage answer = user.submit(
                    form.form("/sign-in").with("username", person.login()).with("password", PASSWORD));
            assertThat(answer.location()).isEqualTo("/me/pin?chosen");
            assertThat(user.follow(answer).text()).contains("You have no signing PIN yet", "Saoirse Pinwheel");

            for (String elsewhere : new String[] {"https://example.org/", "//example.org", "/\\example.org", "me"}) {
                WebUser other = browser();
                WebPage to = other.submit(other.get("/sign-in")
                        .form("/sign-in")
                        .with("to", elsewhere)
                        .with("username", person.login())
                        .with("password", PASSWORD));
                assertThat(to.location()).as(elsewhere).isEqualTo("/");
            }
        }

        @Test
        void saysTheSameForWrongPasswordsUnknownNamesAndClosedAccounts() {
            Person closed = student();
            register.deactivate(closed.id(), "left", admin.id());
            String wrong =
                    tryToSignIn(browser(), student().login(), "something else").text();

            assertThat(wrong).contains("The sign-in name or the password is not right.");
            assertThat(tryToSignIn(browser(), "nobody-at-all", PASSWORD).text()).isEqualTo(wrong);
            assertThat(tryToSignIn(browser(), closed.login(), PASSWORD).text()).isEqualTo(wrong);
            assertThat(tryToSignIn(browser(), "nobody-at-all", PASSWORD).status())
                    .isEqualTo(422);
        }

        @Test
        void pausesAnAccountAfterFiveWrongTriesWhetherItExistsOrNot() {
            Person person = student();
            for (String login : new String[] {person.login(), "nobody-" + UUID.randomUUID()}) {
                for (int i = 0; i < 5; i++) {
                    assertThat(tryToSignIn(browser(), login, "wrong " + i).status())
                            .isEqualTo(422);
                }
                WebPage paused = tryToSignIn(browser(), login, PASSWORD);
                assertThat(paused.status()).isEqualTo(429);
                assertThat(paused.text()).contains("Too many tries. The next one is looked at from 09:00:30");
            }
            assertThat(tryToSignIn(browser(), student().login(), PASSWORD).location())
                    .isEqualTo("/");

            clock.moveBy(Duration.ofSeconds(30));
            assertThat(tryToSignIn(browser(), person.login(), "wrong again").status())
                    .isEqualTo(422);
            assertThat(tryToSignIn(browser(), person.login(), PASSWORD).text()).contains("09:01:30");
            clock.moveBy(Duration.ofSeconds(60));
            assertThat(tryToSignIn(browser(), person.login(), PASSWORD).location())
                    .isEqualTo("/");
        }

        @Test
        void pausesAnAddressAfterFortyWrongTries() {
            for (int i = 0; i < 40; i++) {
                assertThat(tryToSignIn(browser(), "guess-" + i, "wrong").status())
                        .isEqualTo(422);
            }
            assertThat(tryToSignIn(browser(), student().login(), PASSWORD).status())
                    .isEqualTo(429);
            clock.moveBy(Duration.ofSeconds(30));
            for (int i = 0; i < 3; i++) {
                assertThat(tryToSignIn(browser(), student().login(), PASSWORD).location())
                        .as("person %d", i)
                        .isEqualTo("/");
            }
        }

        @Test
        void countsNoTryOfAPausedAccountForTheAddress() {
            for (int i = 0; i < 45; i++) {
                tryToSignIn(browser(), "the-same-name", "wrong");
            }
            assertThat(tryToSignIn(browser(), student().login(), PASSWORD).location())
                    .isEqualTo("/");
        }

        @Test
        void changesTheSessionWhenSomebodySignsIn() throws Exception {
            HttpClient client = HttpClient.newHttpClient();
            URI signIn = URI.create("http://localhost:" + port + "/sign-in");
            var form = client.send(HttpRequest.newBuilder(signIn).build(), BodyHandlers.ofString());
            String before = sessionOf(form.headers().firstValue("Set-Cookie").orElse(""));
            String token = org.jsoup.Jsoup.parse(form.body())
                    .select("input[name=_csrf]")
                    .val();
            var answer = client.send(
                    HttpRequest.newBuilder(signIn)
                            .header("Cookie", "SESSION=" + before)
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .POST(BodyPublishers.ofString(
                                    "username=" + student().login() + "&_csrf="
                                            + java.net.URLEncoder.encode(token, java.nio.charset.StandardCharsets.UTF_8)
                                            + "&password=a+lamp+over+tern+hall"))
                            .build(),
                    BodyHandlers.ofString());

            assertThat(answer.statusCode()).isEqualTo(302);
            String cookie = answer.headers().firstValue("Set-Cookie").orElse("");
            assertThat(sessionOf(cookie)).isNotEmpty().isNotEqualTo(before);
            assertThat(cookie).contains("HttpOnly").contains("SameSite=Lax");
        }

        private static String sessionOf(String cookie) {
            return cookie.replaceFirst("^SESSION=([^;]*).*", "$1");
        }

        @Test
        void keepsSessionsInTheDatabase() {
            Person person = student();
            browser().signIn(person.login(), PASSWORD);

            assertThat(jdbc.sql("select count(*) from spring_session where principal_name = ?")
                            .param(person.login())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(1);
        }

        @Test
        void signsOutByPostOnly() {
            WebUser user = browser().signIn(student().login(), PASSWORD);
            assertThat(user.get("/sign-out").status()).isEqualTo(404);
            WebPage page = user.get("/me/pin");
            assertThat(page.status()).isEqualTo(200);

            WebPage out = user.submit(page.form("/sign-out"));
            assertThat(out.location()).isEqualTo("/sign-in?out");
            assertThat(user.follow(out).text()).contains("You have signed out.");
            assertThat(user.get("/me/pin").location()).startsWith("/sign-in");
        }

        @Test
        void endsTheSessionsOfAClosedAccountAndSaysSo() {
            Person person = student();
            WebUser user = browser().signIn(person.login(), PASSWORD);
            WebPage open = user.get("/me/pin");
            register.deactivate(person.id(), "left", admin.id());

            WebPage lost = user.submit(open.form("/me/pin"));
            assertThat(lost.location()).startsWith("/sign-in?lost");
            assertThat(user.follow(lost).text()).contains("nothing was stored");
            assertThat(user.get("/me/pin").location()).startsWith("/sign-in");
        }

        @Test
        void saysThatASessionHasEnded() {
            Person person = student();
            WebUser user = browser().signIn(person.login(), PASSWORD);
            jdbc.sql("delete from spring_session where principal_name = ?")
                    .param(person.login())
                    .update();

            WebPage ended = user.get("/me/pin");
            assertThat(ended.location()).isEqualTo("/sign-in?ended&to=%2Fme%2Fpin");
            assertThat(user.follow(ended).text()).contains("Your session has ended.");
        }

        @Test
        void followsChangedRolesInRunningSessions() {
            Person person = student();
            WebUser user = browser().signIn(person.login(), PASSWORD);
            assertThat(user.get("/people").status()).isEqualTo(403);

            register.setRoles(person.id(), Set.of(Role.TECHNICIAN), 1, admin.id());
            assertThat(user.get("/people").status()).isEqualTo(200);
            register.setRoles(person.id(), Set.of(Role.STUDENT), 2, admin.id());
            assertThat(user.get("/people").status()).isEqualTo(403);
        }

        @Test
        void asksForAnotherPasswordAfterATemporaryOne() {
            Person person = add(new Password.Temporary(PASSWORD), Role.STUDENT);
            WebUser user = browser().signIn(person.login(), PASSWORD);
            assertThat(user.get("/me/pin").location()).isEqualTo("/me/password");
            WebPage form = user.get("/me/password");
            assertThat(form.text()).contains("Choose a password of your own");

            WebPage.WebForm filled = form.form("/me/password").with("current", PASSWORD);
            assertThat(user.submit(filled.with("password", PASSWORD).with("passwordAgain", PASSWORD))
                            .text())
                    .contains("That is the password you have");
            assertThat(user.submit(filled.with("password", "short").with("passwordAgain", "short"))
                            .text())
                    .contains("12 characters or more");
            assertThat(user.submit(filled.with("password", "new lamp in tern hall")
                                    .with("passwordAgain", "other"))
                            .text())
                    .contains("differ");
            assertThat(user.submit(filled.with("current", "wrong")
                                    .with("password", "new lamp in tern hall")
                                    .with("passwordAgain", "new lamp in tern hall"))
                            .text())
                    .contains("This is not your password");
            WebPage done = user.submit(
                    filled.with("password", "new lamp in tern hall").with("passwordAgain", "new lamp in tern hall"));

            assertThat(done.location()).isEqualTo("/sign-in?changed");
            assertThat(user.get("/me/pin").location()).startsWith("/sign-in");
            user.signIn(person.login(), "new lamp in tern hall");
            assertThat(user.get("/me/pin").status()).isEqualTo(200);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
