package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.BookingState;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Sharing a day's slots out, from the requests to the undone plan. */
class WindowPagesIT {

    abstract static class Cases extends WindowCases {

        @Test
        void sharesTheSlotsOutAndTakesThemBack() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);

            Document preview = page(get("/searches/" + search), ines);
            assertThat(preview.expectFirst("h1").text())
                    .isEqualTo("4 turns have a place, 0 are left out; no better plan exists");
            assertThat(preview.select("figure.strip")).isNotEmpty();
            assertThat(preview.select("#watches")).isEmpty();
            assertThat(ahead(noor)).isEmpty();

            location(send(form("/searches/" + search + "/accept"), ines));

            assertThat(ahead(noor))
                    .hasSize(4)
                    .allMatch(booking -> booking.cell().equals(avocet));
            assertThat(plans.places(search)).allMatch(place -> place.booking() != null);
            assertThat(page(get("/windows/" + window), noor).select("#got ~ ul li"))
                    .hasSize(4);

            assertThat(page(get("/windows/" + window + "/undo"), ines).text()).contains("nobody is counted");
            location(send(form("/windows/" + window + "/undo"), ines));
            assertThat(page(get("/me/messages"), noor).text()).contains("was taken back", "still counts");

            assertThat(ahead(noor)).isEmpty();
            assertThat(plans.places(search).stream()
                            .map(place -> bookings.find(Objects.requireNonNull(place.booking()))
                                    .orElseThrow()
                                    .state()))
                    .containsOnly(BookingState.MOVED_BY_STAFF);
        }

        @Test
        void namesWhoAttendsLongWithoutAPauseBeforeThePlanIsAccepted() {
            UUID window = window();
            location(send(request(window, 8, FRIDAY_EIGHT, FRIDAY_TEN).param("partner", mateo.login()), noor));

            Document preview = page(get("/searches/" + search(window)), ines);

            assertThat(preview.select("section[aria-labelledby=watches] li").eachText())
                    .containsExactly("Mateo Ironbark, Fri 13 Mar 8 turns in a row at most, 4 h in all");
        }

        @Test
        void saysThatASearchIsStoppingUntilItIs() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            JdbcClient jdbc = application.getBean(JdbcClient.class);
            String again = "update booking_searches set state = ?, stop_asked = false, ended_at = ";
            jdbc.sql(again + "null where id = ?").params("RUNNING", search).update();
            assertThat(page(get("/searches/" + search), ines).select("form[action$=/stop] button"))
                    .hasSize(1);

            location(send(form("/searches/" + search + "/stop"), ines));

            Document stopping = page(get("/searches/" + search), ines);
            assertThat(stopping.text()).contains("Stopping: the best plan so far is being written down");
            assertThat(stopping.select("form[action$=/stop] button")).isEmpty();
            jdbc.sql(again + "begun_at where id = ?").params("STOPPED", search).update();
            assertThat(page(get("/searches/" + search), ines).text()).doesNotContain("Stopping:");
        }

        @Test
        void ofTwoWhoAcceptTwoPlansAtOnceOneWins() {
            UUID window = window();
            bothAsk(window);
            UUID first = search(window);
            UUID second = search(window);
            Person tomasz = Objects.requireNonNull(lab).person("Tomasz Fennimore-Ash", Role.INSTRUCTOR);

            List<MockHttpServletResponse> answers = Stream.of(Map.entry(first, ines), Map.entry(second, tomasz))
                    .map(one -> CompletableFuture.supplyAsync(
                            () -> send(form("/searches/" + one.getKey() + "/accept"), one.getValue())))
                    .toList()
                    .stream()
                    .map(CompletableFuture::join)
                    .toList();

            assertThat(answers.stream().map(MockHttpServletResponse::getStatus)).containsExactlyInAnyOrder(302, 422);
            MockHttpServletResponse lost = answers.stream()
                    .filter(one -> one.getStatus() == 422)
                    .findFirst()
                    .orElseThrow();
            assertThat(document(lost).text()).contains("Another plan for this window was accepted by");
            assertThat(ahead(noor)).hasSize(4);
        }

        @Test
        void booksNothingWhenOneSlotOfThePlanIsGone() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            var taken = plans.places(search).get(3);
            Objects.requireNonNull(lab)
                    .booked(avocet, taken.start().toString(), lab.technician("Adaeze Lanternby"), null);

            MockHttpServletResponse answer = send(form("/searches/" + search + "/accept"), ines);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).text()).contains("Nothing was booked").contains("Search again");
            assertThat(ahead(noor)).isEmpty();
            assertThat(windows.find(window).orElseThrow().accepted()).isNull();
        }

        @Test
        void saysWhyATurnIsLeftOutAndNothingOfOthers() {
            UUID window = window();
            accommodations.set(mateo.id(), new Accommodation(0, false, true), ines.id());
            location(send(request(window, 2, FRIDAY_EIGHT).param("partner", noor.login()), mateo));
            location(send(request(window, 5, FRIDAY_EIGHT).param("partner", mateo.login()), noor));
            UUID search = search(window);
            location(send(form("/searches/" + search + "/accept"), ines));

            String noors = page(get("/windows/" + window), noor).text();
            String mateos = page(get("/windows/" + window), mateo).text();

            assertThat(noors).contains("left out").doesNotContain("helper").doesNotContain("accommodation");
            assertThat(mateos).contains("left out: The partner").doesNotContain("helper");
            assertThat(send(get("/searches/" + search), noor).getStatus()).isEqualTo(403);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
