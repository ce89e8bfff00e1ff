package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A tap that logs a stop is kept from anybody, and says so when it is no new one. */
class StopTapsIT {

    abstract static class Cases extends BenchPageCases {

        @Autowired
        PeopleRegister register;

        @Autowired
        Cells cells;

        @Autowired
        JdbcClient jdbc;

        private Person withTemporaryPassword() {
            NewPerson person = new NewPerson(
                    "t" + UUID.randomUUID(),
                    "Saoirse Pinwheel",
                    Set.of(Role.STUDENT),
                    new Password.Temporary("a lamp over tern hall"),
                    null);
            return ((PeopleRegister.Outcome.Done) register.add(person)).person();
        }

        private String told(Person who, String token) throws Exception {
            return toldBy(post("/bench/" + scene().cell + "/stop").param("kind", "press"), who, token);
        }

        private String toldBy(MockHttpServletRequestBuilder post, Person who, String token) throws Exception {
            MvcResult result = mvc.perform(post.param("formToken", token)
                            .with(user(signedIn(who)))
                            .with(csrf()))
                    .andReturn();
            return String.valueOf(result.getFlashMap().get("told"));
        }

        private int stops() {
            return jdbc.sql("select count(*) from run_events where cell_id = :cell")
                    .param("cell", scene().cell.value())
                    .query(Integer.class)
                    .single();
        }

        @Test
        void aSecondTapOnTheSamePageSaysThatItIsLoggedAlready() throws Exception {
            String token = UUID.randomUUID().toString();

            assertThat(told(scene().noor, token)).startsWith("Logged: ");
            assertThat(told(scene().noor, token))
                    .startsWith("This tap was already logged at 10:09.")
                    .contains("once more");
            assertThat(told(scene().noor, UUID.randomUUID().toString())).startsWith("Logged: ");
            assertThat(stops()).isEqualTo(2);
        }

        @Test
        void neverSaysThatItHeldWhatAnotherPostHeldLongAgo() throws Exception {
            String token = UUID.randomUUID().toString();
            String path = "/bench/" + scene().cell + "/holds";

            assertThat(toldBy(post(path).param("kind", "hold").param("reason", "odd noise"), scene().noor, token))
                    .startsWith("Held.");
            assertThat(toldBy(post(path).param("kind", "tag").param("reason", "odd noise"), scene().noor, token))
                    .startsWith("This form was already sent at 10:09.");
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
        }

        @Test
        void refusesNobodysIdInAHandover() throws Exception {
            scene().released();
            MockHttpServletResponse answer = send(
                    scene().noor,
                    post("/bench/" + scene().cell + "/handover")
                            .param("booking", scene().booking.toString())
                            .param("attendant", UUID.randomUUID().toString())
                            .param("formToken", UUID.randomUUID().toString()));
            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(answer.getContentAsString()).contains("Choose who takes over the e-stop.");
        }

        @Test
        void aPasswordThatHasToBeChangedHoldsUpNoStopAndNoHold() throws Exception {
            Person person = withTemporaryPassword();
            MockHttpServletResponse page = send(person, get("/bench/" + scene().cell));
            assertThat(page.getRedirectedUrl()).isEqualTo("/me/password");

            assertThat(told(person, UUID.randomUUID().toString())).startsWith("Logged: ");
            assertThat(stops()).isEqualTo(1);
            send(
                    person,
                    post("/bench/" + scene().cell + "/holds")
                            .param("kind", "hold")
                            .param("reason", "odd noise")
                            .param("formToken", UUID.randomUUID().toString()));
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
            MockHttpServletResponse start = send(person, post("/bench/" + scene().cell + "/start"));
            assertThat(start.getRedirectedUrl()).isEqualTo("/me/password");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
