package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.SampleLab;
import org.standclear.booking.feed.CalendarFeeds;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** What calendar programs get that come again every few minutes for weeks. It is Wed 11 March 2026, 09:00 UTC. */
class FeedPollingIT {

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        BookingDesk desk;

        @Autowired
        CalendarFeeds feeds;

        @Autowired
        MovableClock clock;

        private SampleLab lab;
        private CellId avocet;
        private Person noor;
        private Booking booking;
        private CalendarFeeds.Made made;

        @BeforeEach
        void aBookingAndAnAddress() {
            lab = new SampleLab(application);
            avocet = lab.cell(7);
            noor = lab.student("Noor Candlewick");
            booking = lab.booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            made = feeds.makeForPerson(noor.id());
        }

        private MockHttpServletResponse fetch(String knownTag) throws Exception {
            return mvc.perform(get("/calendar/" + made.secret() + ".ics").header("If-None-Match", knownTag))
                    .andReturn()
                    .getResponse();
        }

        private static String tag(MockHttpServletResponse answer) {
            return Objects.requireNonNull(answer.getHeader("ETag"));
        }

        @Test
        void whoHasTheLatestGetsNoCalendarAndWhoseAddressWasRevokedNothing() throws Exception {
            MockHttpServletResponse first = fetch("\"other\"");
            assertThat(first.getStatus()).isEqualTo(200);

            clock.moveBy(Duration.ofMinutes(5));
            MockHttpServletResponse same = fetch(tag(first));
            assertThat(same.getStatus()).isEqualTo(304);
            assertThat(same.getContentAsByteArray()).isEmpty();

            desk.cancel(booking.id(), noor.id());
            MockHttpServletResponse changed = fetch(tag(first));
            assertThat(changed.getStatus()).isEqualTo(200);
            assertThat(changed.getContentAsString()).contains("STATUS:CANCELLED");
            assertThat(changed.getHeader("Cache-Control")).contains("private").contains("no-cache");

            assertThat(feeds.revoke(made.feed().id(), noor.id())).isTrue();
            MockHttpServletResponse gone = fetch(tag(changed));
            assertThat(gone.getStatus()).isEqualTo(404);
            assertThat(gone.getContentAsString()).doesNotContain("Noor").doesNotContain("VEVENT");
        }

        @Test
        void whatIsCancelledStaysForSixtyDaysAfterItsEnd() throws Exception {
            desk.cancel(booking.id(), noor.id());
            clock.moveTo(booking.end().plus(Duration.ofDays(60)).minusSeconds(1));
            assertThat(fetch("").getContentAsString()).contains("STATUS:CANCELLED");

            clock.moveTo(booking.end().plus(Duration.ofDays(60)));

            assertThat(fetch("").getContentAsString()).contains("VCALENDAR").doesNotContain("VEVENT");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
