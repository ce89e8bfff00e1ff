package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Bookings;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.Role;
import org.standclear.signoff.BenchScene;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A slot that needs an e-stop attendant is taken from the board by one authorised person who stands nowhere else. */
class BoardIT {

    abstract static class Cases extends BenchPageCases {

        private BookingId open() {
            return scene().lab
                    .booked(
                            scene().lab.cell(7),
                            BenchScene.START.plusSeconds(7200).toString(),
                            scene().noor,
                            null)
                    .id();
        }

        private MockHttpServletResponse take(Person who, BookingId booking) throws Exception {
            return send(
                    who,
                    post("/attendants/" + booking + "/take")
                            .param("formToken", UUID.randomUUID().toString()));
        }

        private void refused(Person who, BookingId booking, String says) throws Exception {
            MockHttpServletResponse response = take(who, booking);
            assertThat(response.getStatus()).isEqualTo(422);
            assertThat(page(response).select(".errors").text()).contains(says);
        }

        private Bookings bookings() {
            return application.getBean(Bookings.class);
        }

        private boolean isTaken(BookingId booking) {
            return bookings().find(booking).orElseThrow().attendant() != null;
        }

        @Test
        void isTakenByWhoeverIsAuthorisedAndSaysSo() throws Exception {
            BookingId booking = open();
            Person tal = scene().lab.student("Tal Emberley");
            Document board = see(tal, "/attendants");
            assertThat(board.select("form[action$=" + booking + "/take] button").text())
                    .isEqualTo("Take this turn");
            accepted(take(tal, booking));
            assertThat(bookings().find(booking).orElseThrow().attendant()).isEqualTo(tal.id());
            assertThat(see(tal, "/attendants").select("section[aria-labelledby=own] li"))
                    .hasSize(1);
        }

        @Test
        void isTakenByOneOfTwoAtOnce() throws Exception {
            BookingId booking = open();
            Person tal = scene().lab.student("Tal Emberley");
            Person wren = scene().lab.student("Wren Saltmarsh");
            CyclicBarrier together = new CyclicBarrier(2);
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                List<Callable<Integer>> both = List.of(tal, wren).stream()
                        .map(person -> (Callable<Integer>) () -> {
                            together.await(20, TimeUnit.SECONDS);
                            return take(person, booking).getStatus();
                        })
                        .toList();
                List<Integer> statuses = new java.util.ArrayList<>();
                for (Future<Integer> one : two.invokeAll(both)) {
                    statuses.add(one.get());
                }
                assertThat(statuses).containsExactlyInAnyOrder(302, 422);
            } finally {
                two.shutdownNow();
            }
            assertThat(Objects.requireNonNull(
                            bookings().find(booking).orElseThrow().attendant()))
                    .isIn(tal.id(), wren.id());
        }

        @Test
        void isNotForSomebodyWhoIsNotAuthorised() throws Exception {
            BookingId booking = open();
            Person osric = scene().lab.person("Osric Plum", Role.STUDENT);
            assertThat(see(osric, "/attendants").text()).contains("you are not authorised at this e-stop");
            refused(osric, booking, "is not authorised as e-stop attendant");
            assertThat(isTaken(booking)).isFalse();
        }

        @Test
        void isNeverForTheOperator() throws Exception {
            BookingId booking = open();
            refused(scene().noor, booking, "The operator never attends their own run");
            assertThat(isTaken(booking)).isFalse();
        }

        @Test
        void isNotForSomebodyAtAnotherStopThen() throws Exception {
            Person tal = scene().lab.student("Tal Emberley");
            BookingId booking = open();
            scene().lab
                    .booked(
                            scene().lab.cell(7),
                            BenchScene.START.plusSeconds(7200).toString(),
                            scene().lab.student("Wren Saltmarsh"),
                            tal);
            assertThat(see(tal, "/attendants").text()).contains("elsewhere");
            MockHttpServletResponse response = take(tal, booking);
            assertThat(response.getStatus()).isEqualTo(422);
            assertThat(page(response).select(".errors").text()).contains("Tal Emberley");
            assertThat(isTaken(booking)).isFalse();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
