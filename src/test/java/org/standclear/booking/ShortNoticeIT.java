package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Joined;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * What is offered shortly before it begins, at the limit and a second beside it: who waits needs four minutes to answer and
 * come, and the rest of a missed slot is worth it from a quarter of an hour on (common practice). The slot is 12:07-12:37.
 */
class ShortNoticeIT {

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases extends BookingCases {

        @Autowired
        WaitingList waitingList;

        private Booking booking;
        private Person noor;
        private Person yuki;

        @BeforeEach
        void somebodyWaitsForATakenSlot() {
            noor = lab().student("Noor Candlewick");
            yuki = lab().student("Yuki Halfmoon");
            booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            assertThat(waitingList.join(new JoinWait(
                            yuki.id(),
                            avocet,
                            Instant.parse("2026-03-12T12:00:00Z"),
                            Instant.parse("2026-03-12T13:00:00Z"),
                            null,
                            null,
                            yuki.id())))
                    .isInstanceOf(Joined.On.class);
        }

        private List<Instant> offeredAt(String time) {
            clock.moveTo(Instant.parse(time));
            waitingList.round();
            return waitingList.of(yuki.id()).stream()
                    .flatMap(one -> Stream.ofNullable(one.offer()))
                    .map(Offer::slot)
                    .map(Slot::start)
                    .toList();
        }

        private void givenUp() {
            clock.moveTo(Instant.parse("2026-03-12T12:02:00Z"));
            desk.cancel(booking.id(), noor.id());
        }

        @Test
        void aSlotIsOfferedWhileMoreThanFourMinutesAreLeft() {
            givenUp();
            assertThat(offeredAt("2026-03-12T12:02:59Z")).containsExactly(booking.start());
        }

        @Test
        void aSlotIsNotOfferedFourMinutesBefore() {
            givenUp();
            assertThat(offeredAt("2026-03-12T12:03:00Z")).isEmpty();
        }

        @Test
        void theRestOfAMissedSlotIsOfferedWithAQuarterOfAnHourLeft() {
            assertThat(offeredAt("2026-03-12T12:18:59Z")).containsExactly(Instant.parse("2026-03-12T12:22:00Z"));
        }

        @Test
        void theRestOfAMissedSlotIsNotOfferedWithLess() {
            assertThat(offeredAt("2026-03-12T12:19:00Z")).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
