package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Objects;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.StatementCount;
import org.standclear.testing.web.PageCases;

/** A day of the Book page at its edges. It is Wed 11 March 2026, 09:00 UTC; slots can be booked 14 days ahead. */
class BookDayIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        private @Nullable SampleLab lab;

        @BeforeEach
        void aLab() {
            lab = new SampleLab(application);
            lab().cell(0);
        }

        private SampleLab lab() {
            return Objects.requireNonNull(lab);
        }

        /** How many statements the page asks. */
        private int statements(Person reader, String day) throws Exception {
            return StatementCount.ofLooks(() -> page(get("/book").param("day", day), reader));
        }

        @Test
        void asksAsManyStatementsForManyCellsAsForFew() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            page(get("/book?day=2026-03-13"), noor);
            int few = statements(noor, "2026-03-13");
            for (int offset = 1; offset <= 6; offset++) {
                lab().booked(lab().cell(offset), "2026-03-13T10:0" + offset + ":00Z", lab().student("S"), null);
            }
            page(get("/book?day=2026-03-13"), noor);
            int many = statements(noor, "2026-03-13");
            assertThat(few).isPositive();
            // one more for the names of those who booked; settings and hours are sometimes remembered
            assertThat(many).isBetween(few - 4, few + 4).isLessThan(20);
        }

        @Test
        void saysThatTheLabIsClosed() {
            Document saturday = page(get("/book?day=2026-03-14"), lab().student("Noor Candlewick"));
            assertThat(saturday.select("h1").text()).isEqualTo("The lab is closed on Sat 14 Mar");
            assertThat(saturday.select("a.slot[href*=/book/slot]")).isEmpty();
            assertThat(saturday.text()).doesNotContain("You are not authorised");
        }

        @Test
        void endsAtTheHorizon() {
            Document last = page(get("/book?day=2026-03-25"), lab().student("Noor Candlewick"));
            assertThat(last.select("a[rel=next]")).isEmpty();
            assertThat(last.select("a[rel=prev]").attr("href")).isEqualTo("/book?day=2026-03-24");
        }

        @Test
        void offersNothingToWhoHasNoAuthorisation() {
            Document day = page(get("/book?day=2026-03-13"), lab().person("Wren Saltmarsh", Role.STUDENT));
            assertThat(day.text()).contains("Lab staff enter the authorisation after the induction");
            assertThat(day.select("a.slot[href*=/book/slot]")).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
