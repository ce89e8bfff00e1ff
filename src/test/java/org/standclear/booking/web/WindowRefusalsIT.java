package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What is refused of windows and requests, and a search that nobody ends. */
class WindowRefusalsIT {

    abstract static class Cases extends WindowCases {

        private static final Instant FRIDAY_BEGINS = Instant.parse("2026-03-13T00:00:00Z");

        @Test
        void refusesRequestsThatCannotBe() {
            UUID window = window();

            assertThat(refused(request(window, 13, FRIDAY_EIGHT))).contains("0 to 12 turns");
            assertThat(refused(request(window, 1))).contains("at least one time");
            assertThat(refused(request(window, 1, "2026-03-14T08:00:00Z"))).contains("times from the list");
            assertThat(refused(request(window, 0, FRIDAY_EIGHT))).contains("at least one turn");
            assertThat(refused(request(window, 1, FRIDAY_EIGHT).param("partner", noor.login())))
                    .contains("nobody attends the own run");
            assertThat(refused(request(window, 1, FRIDAY_EIGHT).param("first", FRIDAY_TEN)))
                    .contains("Wish for a time at which you can come");
            clock.moveTo(Instant.parse("2026-03-12T12:00:00Z"));
            assertThat(refused(request(window, 1, FRIDAY_EIGHT))).contains("have ended");
        }

        @Test
        void offersNoUndoingOnceTheWindowHasBegun() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            location(send(form("/searches/" + search + "/accept"), ines));
            assertThat(page(get("/windows/" + window + "/undo"), ines).select("form[action$=undo]"))
                    .hasSize(1);

            clock.moveTo(FRIDAY_BEGINS);

            Document asked = page(get("/windows/" + window + "/undo"), ines);
            assertThat(asked.select("h1").text()).isEqualTo("The plan can no longer be undone");
            assertThat(asked.select("main").text())
                    .contains("The window began on Fri 13 Mar", "move or cancel bookings one by one");
            assertThat(asked.select("form[action$=undo]")).isEmpty();
            MockHttpServletResponse sent = send(form("/windows/" + window + "/undo"), ines);
            assertThat(sent.getStatus()).isEqualTo(422);
            assertThat(document(sent).select("h1").text()).isEqualTo("The plan can no longer be undone");
            assertThat(document(sent).select("form[action$=undo]")).isEmpty();
            assertThat(page(get("/windows/" + window), ines).select("a[href$=undo]"))
                    .isEmpty();
            assertThat(ahead(noor)).as("they stand").isNotEmpty();
        }

        @Test
        void offersNoUndoingOfAPlanThatNobodyAccepted() {
            UUID window = window();

            Document asked = page(get("/windows/" + window + "/undo"), ines);

            assertThat(asked.select("h1").text()).isEqualTo("There is no plan to undo");
            assertThat(asked.select("form[action$=undo]")).isEmpty();
        }

        @Test
        void offersNoPlanToAcceptOnceTheWindowHasBegun() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            clock.moveTo(FRIDAY_BEGINS);

            Document page = page(get("/searches/" + search), ines);

            assertThat(page.select("form[action$=accept]")).isEmpty();
            assertThat(page.text()).contains("began on Fri 13 Mar, and a plan is accepted only before that");
            assertThat(send(form("/searches/" + search + "/accept"), ines).getStatus())
                    .isEqualTo(422);
        }

        @Test
        void showsASearchWhoseProgramDiedAsLostAndSearchesAgain() {
            UUID window = window();
            bothAsk(window);
            UUID died = UUID.randomUUID();
            jdbc.sql("""
                    insert into booking_searches (id, window_id, state, seed, standing, stop_asked, says, begun_by,
                        begun_at, alive_at)
                    values (:id, :window, 'RUNNING', 1, 'UNPLACED 3 1', false, '', :by, :at, :at)""")
                    .param("id", died)
                    .param("window", window)
                    .param("by", ines.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            assertThat(page(get("/searches/" + died), ines).text())
                    .contains("Searching for the best plan", "at most 2 too many");

            clock.moveBy(Duration.ofSeconds(31));

            assertThat(page(get("/searches/" + died), ines).text()).contains("The search was lost; nothing was booked");
            assertThat(send(form("/searches/" + died + "/accept"), ines).getStatus())
                    .isEqualTo(422);
            assertThat(search(window)).isNotEqualTo(died);
        }

        /** It is Wed 11 March, and slots are booked 14 days ahead: until Wed 25. */
        @Test
        void saysFromWhenAPlanOfAFarWindowCanBeAccepted() {
            String location = location(send(
                    form("/windows")
                            .param("windowTitle", "Far Friday")
                            .param("firstDay", "2026-03-27")
                            .param("lastDay", "2026-03-27")
                            .param("untilDay", "2026-03-12")
                            .param("untilTime", "12:00"),
                    ines));
            UUID window = UUID.fromString(location.substring("/windows/".length()));
            String eight = "2026-03-27T08:00:00Z";
            location(send(request(window, 1, eight).param("partner", mateo.login()), noor));
            UUID search = search(window);

            MockHttpServletResponse early = send(form("/searches/" + search + "/accept"), ines);
            assertThat(early.getStatus()).isEqualTo(422);
            assertThat(document(early).text())
                    .contains(
                            "slots can be booked until Wed 25 Mar now, and the last turn of this plan is on Fri 27 Mar."
                                    + " It can be accepted from Fri 13 Mar on.")
                    .doesNotContain("Search again");

            clock.moveTo(Instant.parse("2026-03-13T08:00:00Z"));
            location(send(form("/searches/" + search + "/accept"), ines));
            assertThat(ahead(noor)).hasSize(1);
        }

        @Test
        void refusesWindowsThatCannotBe() {
            MockHttpServletResponse answer = send(
                    form("/windows")
                            .param("windowTitle", "")
                            .param("firstDay", "2026-03-13")
                            .param("lastDay", "2026-03-12")
                            .param("untilDay", "2026-03-14")
                            .param("untilTime", "25:00"),
                    ines);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).select("[data-state=error]")).isNotEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
