package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.booking.feed.CalendarFeeds;
import org.standclear.booking.labs.LabRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
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
        LabRegister labs;

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

        /** 14:00 UTC on 12 March 2026 is 15:00 in Berlin and 11:00 in Halifax; both labs are open. */
        @Test
        void aLabsCalendarHasItsCellsAndAPersonsHasEveryLab() throws Exception {
            SecondLab berlin = new SecondLab(application, "Europe/Berlin");
            SecondLab halifax = new SecondLab(application, "America/Halifax");
            Person yuki = berlin.person(Role.STUDENT);
            halifax.in(() -> labs.appoint(halifax.id(), yuki.login(), Set.of(Role.STUDENT), PersonId.next()));
            booked(berlin, "2026-03-12T14:00:00Z", yuki);
            booked(halifax, "2026-03-12T17:00:00Z", yuki);

            assertThat(starts(berlin.in(() ->
                            feeds.makeForLab(berlin.person(Role.TECHNICIAN).id()))))
                    .containsExactly("20260312T140000Z");
            assertThat(starts(halifax.in(() ->
                            feeds.makeForLab(halifax.person(Role.TECHNICIAN).id()))))
                    .containsExactly("20260312T170000Z");
            assertThat(starts(berlin.in(() -> feeds.makeForPerson(yuki.id()))))
                    .containsExactly("20260312T140000Z", "20260312T170000Z");
        }

        private static void booked(SecondLab lab, String start, Person operator) {
            lab.in(() -> {
                lab.sample().authorise(operator.id());
                return lab.sample().booked(lab.cell(), start, operator, null);
            });
        }

        private List<String> starts(CalendarFeeds.Made of) throws Exception {
            String text = mvc.perform(get("/calendar/" + of.secret() + ".ics"))
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
            return text.lines()
                    .filter(line -> line.startsWith("DTSTART:"))
                    .map(line -> line.substring("DTSTART:".length()))
                    .toList();
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
