package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.SlotCalendar;
import org.standclear.booking.WaitingList;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.allocation.WindowClosing;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Until its plan is accepted, a window's slots are not given to whoever comes first, by no way. */
class SharedOutIT {

    abstract static class Cases extends WindowCases {

        @Autowired
        SlotCalendar calendar;

        @Autowired
        WaitingList waitingList;

        @Autowired
        WindowClosing closing;

        private Outcome book(Person person, String start) {
            return Objects.requireNonNull(lab).book(avocet, start, person);
        }

        private Document day(Person reader) {
            return page(get("/book?day=2026-03-13"), reader);
        }

        private String freeOnAvocet(Person reader) {
            return day(reader).select("a[href*=" + avocet + "].slot").text();
        }

        @Test
        void refusesWhoComesFirstAndSaysWhereToAsk() {
            UUID window = window();

            Outcome outcome = book(noor, FRIDAY_EIGHT);

            assertThat(outcome).isInstanceOf(Outcome.Refused.class);
            Outcome.Refused refused = (Outcome.Refused) outcome;
            assertThat(refused.rule()).isEqualTo("shared-out");
            assertThat(refused.says())
                    .contains("Fri 13 Mar", "Rush Friday", "Say by Thu 12 Mar 2026 12:00 when you can come");
            assertThat(refused.nextFree())
                    .isNotEmpty()
                    .noneMatch(slot -> slot.start().toString().startsWith("2026-03-13"));
            Document shown = day(noor);
            assertThat(shown.select("h1").text()).isEqualTo("Fri 13 Mar is shared out by a plan");
            assertThat(shown.select("a.button[href=/windows/" + window + "]").text())
                    .isEqualTo("Say when you can come");
            assertThat(freeOnAvocet(noor)).isEmpty();
            assertThat(book(noor, "2026-03-12T10:00:00Z")).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void offersNoneOfThemFromTheWaitingList() {
            window();
            Instant eight = Instant.parse(FRIDAY_EIGHT);
            assertThat(waitingList.join(
                            new JoinWait(noor.id(), avocet, eight, eight.plusSeconds(7200), null, null, noor.id())))
                    .isInstanceOf(WaitingList.Joined.On.class);

            waitingList.round();
            assertThat(waitingList.of(noor.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.offer()).isNull());
            endsItsWindows();
            waitingList.round();

            assertThat(waitingList.of(noor.id()))
                    .singleElement()
                    .satisfies(one ->
                            assertThat(one.offer()).as("closed: free for all").isNotNull());
        }

        @Test
        void staffBookSingleSlotsAllTheSame() {
            window();
            Person adaeze = Objects.requireNonNull(lab).technician("Adaeze Lanternby");

            assertThat(day(adaeze).text()).contains("You can book single slots all the same");
            assertThat(book(adaeze, FRIDAY_EIGHT)).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void givesWhatThePlanLeftToAll() {
            UUID window = window();
            bothAsk(window);
            location(send(form("/searches/" + search(window) + "/accept"), ines));
            Person yuki = student("Yuki Halfmoon");

            assertThat(freeOnAvocet(yuki)).isNotEmpty();
            assertThat(book(yuki, "2026-03-13T13:00:00Z")).isInstanceOf(Outcome.Booked.class);
            assertThat(calendar.nextFree(yuki.id(), Instant.parse(FRIDAY_EIGHT), 3))
                    .allMatch(slot -> slot.start().toString().startsWith("2026-03-13"));
        }

        @Test
        void isOpenToAllOnceItsFirstDayIsHereWithoutAPlan() {
            window();
            clock.moveTo(Instant.parse("2026-03-12T22:30:00Z"));
            assertThat(book(noor, FRIDAY_TEN)).isInstanceOf(Outcome.Refused.class);
            assertThat(day(noor).select("a.button[href^=/windows/]").text()).isEqualTo("See the window");

            clock.moveTo(Instant.parse("2026-03-13T00:00:00Z"));

            assertThat(book(noor, FRIDAY_TEN)).isInstanceOf(Outcome.Booked.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
