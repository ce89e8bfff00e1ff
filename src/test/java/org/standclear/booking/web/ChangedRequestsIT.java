package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.allocation.PlanDesk;
import org.standclear.booking.allocation.TurnRequests;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Nobody is booked by a plan for what they do not ask for any more, nor to attend what they do not offer any more. */
class ChangedRequestsIT {

    abstract static class Cases extends WindowCases {

        @Autowired
        PlanDesk planDesk;

        @Autowired
        TurnRequests requests;

        @Autowired
        PlatformTransactionManager transactions;

        private void withdrawn(UUID window, Person who) {
            location(send(form("/windows/" + window + "/withdraw"), who));
        }

        private String refusedToAccept(UUID search) {
            MockHttpServletResponse answer = send(form("/searches/" + search + "/accept"), ines);
            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(ahead(noor)).isEmpty();
            assertThat(ahead(mateo)).isEmpty();
            return document(answer).text();
        }

        @Test
        void refusesAPlanWithAWithdrawnRequestUntilOneSearchesAgain() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            withdrawn(window, mateo);

            assertThat(refusedToAccept(search))
                    .contains("1 request changed since this plan was made (Mateo Ironbark)", "Search again");

            UUID again = search(window);
            location(send(form("/searches/" + again + "/accept"), ines));
            assertThat(plans.places(again))
                    .isNotEmpty()
                    .allMatch(place -> place.operator().equals(noor.id()));
        }

        @Test
        void refusesAPlanWithARequestThatWasChanged() {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            location(send(request(window, 1, FRIDAY_TEN).param("partner", mateo.login()), noor));

            assertThat(refusedToAccept(search)).contains("1 request changed", "Noor Candlewick");
        }

        @Test
        void refusesAPlanWhoseAttendantNoLongerOffers() {
            UUID window = window();
            location(send(request(window, 1, FRIDAY_EIGHT), noor));
            location(send(request(window, 0, FRIDAY_EIGHT).param("attends", "true"), mateo));
            UUID search = search(window);
            assertThat(plans.places(search))
                    .hasSize(1)
                    .allMatch(place -> place.attendant().equals(mateo.id()));
            withdrawn(window, mateo);

            assertThat(refusedToAccept(search)).contains("1 request changed", "Mateo Ironbark");
        }

        @Test
        void whoWithdrawsWhileAPlanIsAcceptedComesTooLate() throws Exception {
            UUID window = window();
            bothAsk(window);
            UUID search = search(window);
            CountDownLatch accepted = new CountDownLatch(1);
            CountDownLatch goOn = new CountDownLatch(1);
            CompletableFuture<Void> accepting = CompletableFuture.runAsync(() -> new TransactionTemplate(transactions)
                    .executeWithoutResult(status -> {
                        assertThat(planDesk.accept(search, ines.id())).isEmpty();
                        accepted.countDown();
                        await(goOn);
                    }));
            await(accepted);

            CompletableFuture<Void> withdrawing =
                    CompletableFuture.runAsync(() -> requests.withdraw(window, mateo.id()));

            try {
                assertThat(isOver(withdrawing)).as("waits for the window").isFalse();
            } finally {
                goOn.countDown();
            }
            accepting.get(30, TimeUnit.SECONDS);
            withdrawing.get(30, TimeUnit.SECONDS);
            assertThat(requests.of(window, mateo.id()))
                    .as("what was booked stays asked for")
                    .isPresent();
        }

        private static boolean isOver(CompletableFuture<Void> act) throws InterruptedException, ExecutionException {
            try {
                act.get(Duration.ofMillis(500).toMillis(), TimeUnit.MILLISECONDS);
                return true;
            } catch (TimeoutException waits) {
                return false;
            }
        }

        private static void await(CountDownLatch latch) {
            try {
                assertThat(latch.await(60, TimeUnit.SECONDS)).isTrue();
            } catch (InterruptedException stopped) {
                throw new AssertionError(stopped);
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
