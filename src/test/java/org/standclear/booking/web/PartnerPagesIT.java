package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.booking.allocation.TurnRequests;
import org.standclear.message.Messages;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Whoever is named as a partner hears of it and gets out of it with one click; whoever asked hears of that. */
class PartnerPagesIT {

    abstract static class Cases extends WindowCases {

        private static final Instant AFTER_REQUESTS = Instant.parse("2026-03-12T12:00:00Z");

        @Autowired
        Messages messages;

        @Autowired
        TurnRequests requests;

        private UUID noorNamesMateo() {
            UUID window = window();
            location(send(request(window, 2, FRIDAY_EIGHT).param("partner", mateo.login()), noor));
            return window;
        }

        private List<String> told(Person person) {
            return messages.of(person.id(), 20).stream()
                    .map(Messages.Kept::subject)
                    .toList();
        }

        private MockHttpServletResponse answers(UUID window, Person of, String what, Person by) {
            return send(form("/windows/" + window + "/partners/" + of.id() + "/" + what), by);
        }

        private TurnRequest request(UUID window, Person of) {
            return requests.of(window, of.id()).orElseThrow();
        }

        private String page(UUID window, Person reader) {
            return page(get("/windows/" + window), reader).text();
        }

        @Test
        void tellsThePartnerAndAgainOnlyWhenSomethingElseIsAsked() {
            UUID window = noorNamesMateo();

            assertThat(told(mateo)).containsExactly("Noor Candlewick names you as partner at the e-stop");
            assertThat(messages.of(mateo.id(), 1).get(0).lines().get(0)).contains("Rush Friday", "2 turns", "08:00");
            assertThat(page(window, mateo)).contains("These people count on you", "Noor Candlewick", "2 turns");

            location(send(request(window, 2, FRIDAY_EIGHT).param("partner", mateo.login()), noor));
            assertThat(told(mateo)).as("the same once more").hasSize(1);
            location(send(request(window, 2, FRIDAY_TEN).param("partner", mateo.login()), noor));
            assertThat(told(mateo)).as("another time").hasSize(2);
        }

        @Test
        void tellsThePartnerWhenNobodyCountsOnThemAnyMore() {
            UUID window = noorNamesMateo();
            location(send(form("/windows/" + window + "/withdraw"), noor));

            assertThat(told(mateo)).first().isEqualTo("Noor Candlewick does not count on you any more");
            assertThat(page(window, mateo)).doesNotContain("Noor Candlewick");
        }

        @Test
        void declinesWithOneClickAndTellsWhoAsked() {
            UUID window = noorNamesMateo();

            assertThat(location(answers(window, noor, "decline", mateo))).isEqualTo("/windows/" + window);

            assertThat(request(window, noor).partner()).isNull();
            assertThat(request(window, noor).turns()).as("the request stands").isEqualTo(2);
            assertThat(told(noor)).containsExactly("Mateo Ironbark cannot be your partner");
            assertThat(page(window, noor)).contains("Mateo Ironbark cannot be your partner here");
            assertThat(page(window, mateo)).contains("You declined for Noor Candlewick");

            location(answers(window, noor, "decline", mateo));
            assertThat(told(noor)).as("told once").hasSize(1);
        }

        @Test
        void isNotNamedAgainByWhomItDeclined() {
            UUID window = noorNamesMateo();
            location(answers(window, noor, "decline", mateo));

            assertThat(refused(request(window, 1, FRIDAY_TEN).param("partner", mateo.login())))
                    .contains("Mateo Ironbark has declined to be your partner");
            assertThat(request(window, noor).turns()).as("nothing was changed").isEqualTo(2);
            TurnRequest past = request(window, noor);
            requests.ask(new TurnRequest(
                    UUID.randomUUID(),
                    window,
                    noor.id(),
                    mateo.id(),
                    null,
                    past.tool(),
                    1,
                    false,
                    false,
                    past.canCome(),
                    List.of()));
            assertThat(request(window, noor).partner())
                    .as("declined while the form was sent")
                    .isNull();
            assertThat(told(mateo)).hasSize(1);
        }

        @Test
        void canAfterAll() {
            UUID window = noorNamesMateo();
            location(answers(window, noor, "decline", mateo));

            location(answers(window, noor, "can", mateo));

            assertThat(request(window, noor).partner()).isEqualTo(mateo.id());
            assertThat(told(noor)).first().isEqualTo("Mateo Ironbark can be your partner after all");
            location(answers(window, noor, "can", mateo));
            assertThat(told(noor)).as("told once").hasSize(2);
        }

        @Test
        void leavesASecondChoiceWhenTheFirstCanAfterAll() {
            Person wren = student("Wren Saltmarsh");
            UUID window = noorNamesMateo();
            location(answers(window, noor, "decline", mateo));
            location(send(request(window, 2, FRIDAY_EIGHT).param("partner", wren.login()), noor));

            location(answers(window, noor, "can", mateo));

            assertThat(request(window, noor).partner()).isEqualTo(wren.id());
            assertThat(messages.of(noor.id(), 1).get(0).lines().get(0)).contains("nothing was changed");
        }

        @Test
        void nobodyAnswersForSomebodyElse() {
            Person wren = student("Wren Saltmarsh");
            UUID window = noorNamesMateo();

            assertThat(answers(window, noor, "decline", wren).getStatus()).isEqualTo(404);
            assertThat(answers(window, noor, "decline", noor).getStatus()).isEqualTo(404);
            assertThat(answers(window, wren, "decline", mateo).getStatus()).isEqualTo(404);
            assertThat(answers(window, noor, "can", wren).getStatus()).isEqualTo(404);
            assertThat(answers(UUID.randomUUID(), noor, "decline", mateo).getStatus())
                    .isEqualTo(404);

            assertThat(request(window, noor).partner()).isEqualTo(mateo.id());
            assertThat(told(noor)).isEmpty();
        }

        @Test
        void refusesOnceRequestsHaveEnded() {
            UUID window = noorNamesMateo();
            clock.moveTo(AFTER_REQUESTS);

            MockHttpServletResponse answer = answers(window, noor, "decline", mateo);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).text()).contains("Requests for this window have ended", "Tell lab staff");
            assertThat(document(answer).select("form[action$=decline]")).isEmpty();
            assertThat(request(window, noor).partner()).isEqualTo(mateo.id());
        }

        @Test
        void refusesAPlanWhosePartnerDeclinedMeanwhile() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            location(answers(window, noor, "decline", mateo));

            MockHttpServletResponse answer = send(form("/searches/" + search + "/accept"), ines);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).text()).contains("changed since this plan was made", "Mateo Ironbark");
            assertThat(ahead(noor)).isEmpty();
        }

        @Test
        void namesNobodyWithoutTurns() {
            UUID window = window();
            location(send(
                    request(window, 0, FRIDAY_EIGHT).param("attends", "true").param("partner", mateo.login()), noor));

            assertThat(told(mateo)).isEmpty();
            assertThat(answers(window, noor, "decline", mateo).getStatus()).isEqualTo(404);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
