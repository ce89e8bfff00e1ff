package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Instant;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.message.Messages;
import org.standclear.people.Person;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A window that ends without a plan, what people are told of it and of a plan, and opening it again. */
class WindowClosingIT {

    abstract static class Cases extends WindowCases {

        @Autowired
        Messages messages;

        private String close(UUID window, String reason) {
            return location(send(form("/windows/" + window + "/close").param("reason", reason), ines));
        }

        private String headline(UUID window, Person reader) {
            return page(get("/windows/" + window), reader).select("h1").text();
        }

        private String subject(Person person) {
            return messages.of(person.id(), 1).get(0).subject();
        }

        private String wrong(MockHttpServletResponse answer) {
            assertThat(answer.getStatus()).isEqualTo(422);
            return document(answer).select(".errors, .error").text();
        }

        private long toldOfTheEnd(Person person) {
            return messages.of(person.id(), 5).stream()
                    .filter(one -> one.subject().equals("\"Rush Friday\" was closed without a plan"))
                    .count();
        }

        @Test
        void isClosedWithAReasonThatEverybodyWhoAskedReads() {
            UUID window = window();
            bothAsk(window);
            Document asked = page(get("/windows/" + window + "/close"), ines);
            assertThat(asked.text()).contains("2 people have asked for turns and will be told");
            assertThat(wrong(send(form("/windows/" + window + "/close").param("reason", " "), ines)))
                    .contains("Write something here");
            assertThat(toldOfTheEnd(noor)).isZero();

            assertThat(close(window, "the hall is painted")).isEqualTo("/windows/" + window);

            assertThat(headline(window, noor)).isEqualTo("Closed without a plan");
            assertThat(page(get("/windows/" + window), noor).text()).contains("the hall is painted");
            assertThat(toldOfTheEnd(noor)).isEqualTo(1);
            assertThat(subject(mateo)).isEqualTo("\"Rush Friday\" was closed without a plan");
            assertThat(messages.of(mateo.id(), 1).get(0).lines()).contains("Why: the hall is painted");
            assertThat(page(get("/windows"), noor).text()).contains("closed without a plan");
            assertThat(refused(request(window, 1, FRIDAY_EIGHT))).contains("have ended");
            assertThat(wrong(send(form("/windows/" + window + "/close").param("reason", "again"), ines)))
                    .contains(ines.printedName() + " closed it");
            assertThat(wrong(send(form("/windows/" + window + "/searches"), ines)))
                    .contains("The window is closed");
        }

        @Test
        void isOpenedAgainWithWhatPeopleAskedFor() {
            UUID window = window();
            bothAsk(window);
            close(window, "the hall is painted");

            location(send(form("/windows/" + window + "/reopen"), ines));

            assertThat(headline(window, noor)).startsWith("Say by");
            assertThat(subject(noor)).isEqualTo("\"Rush Friday\" is open again");
            assertThat(page(get("/windows/" + window), ines).text()).contains("2 requests");
            UUID search = search(window);
            location(send(form("/searches/" + search + "/accept"), ines));
            assertThat(ahead(noor)).isNotEmpty();
        }

        @Test
        void isNotOpenedAgainOnceItHasBegunAndSaysThatNoPlanWasMade() {
            UUID window = window();
            UUID left = window();
            close(window, "the hall is painted");
            clock.moveTo(Instant.parse("2026-03-13T00:00:00Z"));

            assertThat(headline(left, noor)).isEqualTo("No plan was made; book single slots");
            assertThat(page(get("/windows/" + left), ines).select("form[action$=/searches]"))
                    .as("no plan could be accepted any more")
                    .isEmpty();
            assertThat(wrong(send(form("/windows/" + window + "/reopen"), ines)))
                    .contains("The window has begun");
            close(left, "nobody made a plan");
        }

        @Test
        void takesASearchWithItAndNoPlanOfItIsAccepted() {
            UUID window = window();
            bothAsk(window);
            UUID found = search(window);
            UUID running = UUID.randomUUID();
            jdbc.sql("""
                    insert into booking_searches (id, window_id, state, seed, standing, stop_asked, says, begun_by,
                        begun_at, alive_at)
                    values (:id, :window, 'RUNNING', 1, '', false, '', :by, :at, :at)""")
                    .param("id", running)
                    .param("window", window)
                    .param("by", ines.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();

            close(window, "the hall is painted");

            assertThat(jdbc.sql("select stop_asked from booking_searches where id = ?")
                            .param(running)
                            .query(Boolean.class)
                            .single())
                    .isTrue();
            assertThat(wrong(send(form("/searches/" + found + "/accept"), ines)))
                    .contains("The window is closed");
            assertThat(ahead(noor)).isEmpty();
            assertThat(page(get("/searches/" + found), ines).select("form[action$=/accept]"))
                    .isEmpty();
        }

        @Test
        void anAcceptedPlanIsToldToWhoHasAPartInItAndIsUndoneBeforeTheWindowCloses() {
            UUID window = window();
            location(send(request(window, 2, FRIDAY_EIGHT).param("partner", noor.login()), mateo));
            location(send(request(window, 5, FRIDAY_EIGHT).param("partner", mateo.login()), noor));
            UUID search = search(window);
            location(send(form("/searches/" + search + "/accept"), ines));

            var told = messages.of(noor.id(), 1).get(0);
            assertThat(told.subject()).isEqualTo("\"Rush Friday\" is shared out");
            assertThat(told.href()).isEqualTo("/windows/" + window);
            assertThat(told.lines())
                    .anyMatch(line -> line.endsWith("you run"))
                    .anyMatch(line -> line.endsWith("you stand at the e-stop"))
                    .anyMatch(line -> line.contains("has no place"));
            assertThat(wrong(send(form("/windows/" + window + "/close").param("reason", "no"), ines)))
                    .contains("undo that first");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
