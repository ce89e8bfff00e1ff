package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.Bookings;
import org.standclear.booking.SampleLab;
import org.standclear.cell.CellStates;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** The Book page and its form. The clock stands at Wed 11 March 2026, 09:00, the zone is UTC. */
class BookPagesIT {

    private static final String NOON = "2026-03-12T12:07:00Z";

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Bookings bookings;

        @Autowired
        CellStates states;

        private @Nullable SampleLab lab;
        private CellId avocet = CellId.next();

        @BeforeEach
        void aLab() {
            lab = new SampleLab(application);
            avocet = lab().cell(7);
        }

        private SampleLab lab() {
            return Objects.requireNonNull(lab);
        }

        private MockHttpServletRequestBuilder form(String start) {
            return post("/book")
                    .param("formToken", UUID.randomUUID().toString())
                    .param("cell", avocet.toString())
                    .param("start", start);
        }

        private BookingId booked(MockHttpServletResponse answer) {
            String location = location(answer);
            assertThat(location).startsWith("/bookings/");
            return BookingId.of(location.substring("/bookings/".length()));
        }

        @Test
        void showsFreeSlotsOfADayAndLeadsToTheForm() {
            Person noor = lab().student("Noor Candlewick");
            Document day = page(get("/book?day=2026-03-12"), noor);

            assertThat(day.title()).startsWith("Book, Thu 12 Mar");
            assertThat(day.select("h1").text()).contains("free slots on Thu 12 Mar");
            assertThat(day.text()).contains("You have 0 of 2 bookings ahead");
            String href =
                    day.select("a.slot[href*=" + avocet + "]:contains(12:07)").attr("href");
            Document slot = page(get(href.replace("&amp;", "&")), noor);
            assertThat(slot.select("h1").text()).endsWith("Thu 12 Mar, 12:07-12:37");
            assertThat(slot.select("form[action=/book] input[name=start]").val())
                    .isEqualTo(NOON);
            assertThat(day.select("a[rel=prev]").attr("href")).isEqualTo("/book?day=2026-03-11");
            assertThat(day.select("a[rel=next]").attr("href")).isEqualTo("/book?day=2026-03-13");
        }

        @Test
        void saysWhatIsWrongWithADayThatCannotBeShown() {
            Person noor = lab().student("Noor Candlewick");
            for (String day : new String[] {"2026-02-30", "tomorrow", "2026-13-01"}) {
                MockHttpServletResponse answer = send(get("/book").param("day", day), noor);
                assertThat(answer.getStatus()).isEqualTo(400);
                assertThat(document(answer).text()).contains("There is no such day: \"" + day + "\"");
            }
            MockHttpServletResponse late = send(get("/book?day=2026-03-26"), noor);
            assertThat(late.getStatus()).isEqualTo(400);
            assertThat(document(late).text()).contains("from Wed 11 Mar until Wed 25 Mar");
        }

        @Test
        void saysWhyACellCannotBeBooked() {
            Person noor = lab().student("Noor Candlewick");
            states.tagOut(avocet, noor.id(), "cable chafed <b>badly</b>");
            Document day = page(get("/book?day=2026-03-12"), noor);
            assertThat(day.text()).contains("Not bookable while it is out of service: cable chafed <b>badly</b>");
            assertThat(day.select("a.slot[href*=" + avocet + "]")).isEmpty();
            Document slot =
                    page(get("/book/slot").param("cell", avocet.toString()).param("start", NOON), noor);
            assertThat(slot.select("h1").text()).startsWith("Not booked:");
            assertThat(slot.select("form[action=/book]")).isEmpty();
            Person wren = lab().person("Wren Saltmarsh", org.standclear.platform.security.Role.STUDENT);
            assertThat(page(get("/book?day=2026-03-12"), wren).text())
                    .contains("You are not authorised as operator here");
        }

        @Test
        void booksOnceHoweverOftenTheFormIsSent() {
            Person noor = lab().student("Noor Candlewick");
            Person mateo = lab().student("Mateo Ironbark");
            String token = UUID.randomUUID().toString();
            BookingId first = null;
            for (int i = 0; i < 3; i++) {
                MockHttpServletResponse answer = send(
                        post("/book")
                                .param("formToken", token)
                                .param("cell", avocet.toString())
                                .param("start", NOON)
                                .param("attendant", mateo.id().toString())
                                .param("purpose", ""),
                        noor);
                first = first == null ? booked(answer) : first;
                assertThat(booked(answer)).isEqualTo(first);
            }
            assertThat(bookings.of(noor.id(), Instant.parse(NOON))).hasSize(1);
        }

        @Test
        void namesTheFieldAndKeepsTheFormWhenTheAttendantCannot() {
            Person noor = lab().student("Noor Candlewick");
            MockHttpServletResponse answer =
                    send(form(NOON).param("attendant", noor.id().toString()), noor);
            assertThat(answer.getStatus()).isEqualTo(422);
            Document page = document(answer);
            assertThat(page.select(".errors a[href=#attendant]").text()).contains("never attends their own run");
            assertThat(page.select("form[action=/book] input[name=start]").val())
                    .isEqualTo(NOON);
            MockHttpServletResponse nobody = send(form(NOON).param("attendant", "x<script>"), noor);
            assertThat(nobody.getStatus()).isEqualTo(422);
            assertThat(document(nobody).text()).contains("There is no such person");
        }

        @Test
        void answersBadInputWithWordsAndStoresNothing() {
            Person noor = lab().student("Noor Candlewick");
            for (String start : new String[] {
                "2026-02-30T12:07:00Z", "yesterday", "", "+999999999-12-31T23:59:59Z", "-999999999-01-01T00:00:00Z"
            }) {
                MockHttpServletResponse answer = send(form(start), noor);
                assertThat(answer.getStatus()).isEqualTo(422);
                assertThat(document(answer).text()).contains("is not a date and time");
            }
            assertThat(send(form("9998-12-31T23:59:59Z"), noor).getStatus()).isEqualTo(422);
            assertThat(send(form("2026-03-11T08:37:00Z"), noor).getStatus()).isEqualTo(422);
            assertThat(send(form(NOON).param("purpose", "x"), noor).getStatus()).isEqualTo(422);
            assertThat(send(post("/book").param("cell", "nowhere").param("start", NOON), noor)
                            .getStatus())
                    .isEqualTo(404);
            assertThat(send(post("/book").param("cell", avocet.toString()).param("start", NOON), noor)
                            .getStatus())
                    .isEqualTo(400);
        }

        @Test
        void showsTheNextFreeSlotsToWhoComesSecond() {
            booked(send(form(NOON), lab().student("Noor Candlewick")));
            MockHttpServletResponse second = send(form(NOON), lab().student("Yuki Halfmoon"));
            assertThat(second.getStatus()).isEqualTo(409);
            Document page = document(second);
            assertThat(page.select("h1").text()).startsWith("Not booked:");
            assertThat(page.select("#next-free ~ ul a.slot")).isNotEmpty();
            assertThat(page.text()).doesNotContain("Noor");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
