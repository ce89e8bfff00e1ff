package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.web.NotFoundException;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who gets a slot, who does not, and what they are told. */
class BookingDeskIT {

    abstract static class Cases extends BookingCases {

        @Test
        void booksASlotForOperatorAndAttendant() {
            Person noor = lab().student("Noor Candlewick");
            Person mateo = lab().student("Mateo Ironbark");

            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, mateo);

            assertThat(bookings.find(booking.id())).contains(booking);
            assertThat(booking.end()).isEqualTo("2026-03-12T12:37:00Z");
            assertThat(bookings.of(mateo.id(), clock.instant())).containsExactly(booking);
            assertThat(bookings.onDay(avocet, LocalDate.parse("2026-03-12"))).containsExactly(booking);
            assertThat(bookings.onDay(avocet, LocalDate.parse("2026-03-13"))).isEmpty();
            assertThat(bookings.currentOrNext(avocet, booking.start().minusSeconds(60)))
                    .contains(booking);
            assertThat(claims(booking)).isEqualTo(3);
            assertThat(trail.about(labs.theLab().id(), booking.id().toString()))
                    .singleElement()
                    .satisfies(entry -> {
                        assertThat(entry.kind()).isEqualTo("booking.made");
                        assertThat(entry.actor()).isEqualTo(noor.id());
                        assertThat(entry.facts())
                                .containsEntry("attendant", mateo.id().toString());
                    });
        }

        @Test
        void refusesASlotThatIsTakenAndNamesTheNextFreeOnes() {
            lab().booked(avocet, THURSDAY_NOON, lab().student("Noor Candlewick"), null);

            Outcome.Refused refused = refused(lab().book(avocet, THURSDAY_NOON, lab().student("Yuki Halfmoon")));

            assertThat(refused.rule()).isEqualTo("taken");
            assertThat(refused.says()).contains("Thu 12 Mar 12:07-12:37").contains("somebody else has just booked");
            assertThat(refused.nextFree()).isNotEmpty().allSatisfy(slot -> {
                assertThat(slot.start()).isAfterOrEqualTo(THURSDAY_NOON);
                assertThat(slot.cell().equals(avocet) && slot.start().equals(Instant.parse(THURSDAY_NOON)))
                        .isFalse();
            });
        }

        @Test
        void refusesSlotsThatDoNotExistOrAreNotOpenYet() {
            Person noor = lab().student("Noor Candlewick");
            clock.moveBy(Duration.ofSeconds(1));
            assertThat(rule(noor, "2026-03-11T08:37:00Z")).isEqualTo("past");
            assertThat(rule(noor, "1000-01-01T00:00:00Z")).isEqualTo("past");
            assertThat(rule(noor, "2026-03-26T09:07:00Z")).isEqualTo("horizon");
            assertThat(rule(noor, "+99999-01-01T00:00:00Z")).isEqualTo("horizon");
            assertThat(rule(noor, "2026-03-14T09:07:00Z")).isEqualTo("closed");
            assertThat(rule(noor, "2026-03-12T12:00:00Z")).isEqualTo("no-such-slot");
            assertThat(rule(noor, "2026-03-12T12:07:30Z")).isEqualTo("no-such-slot");
            assertThat(rule(noor, "2026-03-12T17:37:00Z")).isEqualTo("no-such-slot");
            assertThat(refused(lab().book(avocet, "2026-03-26T09:07:00Z", noor)).says())
                    .contains("14 days ahead, now until Wed 25 Mar")
                    .contains("from Thu 12 Mar on");
            assertThatThrownBy(() -> lab().book(CellId.next(), THURSDAY_NOON, noor))
                    .isInstanceOf(NotFoundException.class);
        }

        @Test
        void keepsHolidaysAndShortDays() {
            Person noor = lab().student("Noor Candlewick");
            LocalDate holiday = LocalDate.parse("2026-03-24");
            LocalDate shortDay = LocalDate.parse("2026-03-23");
            hours.except(new OpeningHours.DayHours(holiday, List.of(), "founders' day"), noor.id());
            hours.except(
                    new OpeningHours.DayHours(
                            shortDay,
                            List.of(new OpenPeriod(java.time.LocalTime.of(9, 0), java.time.LocalTime.of(10, 0))),
                            "staff meeting"),
                    noor.id());

            assertThat(refused(lab().book(avocet, "2026-03-24T12:07:00Z", noor)).says())
                    .contains("closed on Tue 24 Mar (founders' day)");
            assertThat(rule(noor, "2026-03-23T12:07:00Z")).isEqualTo("no-such-slot");
            assertThat(lab().book(avocet, "2026-03-23T09:07:00Z", noor)).isInstanceOf(Outcome.Booked.class);
            assertThat(hours.from(shortDay.minusDays(1), holiday))
                    .extracting(OpeningHours.DayHours::note)
                    .containsExactly("", "staff meeting", "founders' day");
            // other tests ask the same lab about these days
            hours.asEveryWeek(holiday, noor.id());
            hours.asEveryWeek(shortDay, noor.id());
        }

        @Test
        void refusesACellThatIsOutOfServiceAndSaysWhy() {
            Person noor = lab().student("Noor Candlewick");
            states.tagOut(avocet, noor.id(), "cable chafed");
            Outcome.Refused refused = refused(lab().book(avocet, THURSDAY_NOON, noor));
            assertThat(refused.rule()).isEqualTo("cell-not-in-service");
            assertThat(refused.says()).contains("cable chafed");
            assertThat(refused.nextFree()).noneMatch(slot -> slot.cell().equals(avocet));
        }

        @Test
        void showsADayWithWhatIsBookedKeptAndFree() {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            SlotCalendar calendar = application.getBean(SlotCalendar.class);
            var day = calendar.day(LocalDate.parse("2026-03-12")).cells().stream()
                    .filter(one -> one.cell().id().equals(avocet))
                    .findFirst()
                    .orElseThrow();
            assertThat(day.bookings()).containsExactly(booking);
            // 08:07 to 17:07 is 19 slots, one of them taken
            assertThat(day.free()).hasSize(18).noneMatch(slot -> slot.start().equals(booking.start()));
            assertThat(calendar.slotAt(avocet, booking.start())).isPresent();
            assertThat(calendar.slotAt(avocet, booking.start().plusSeconds(1))).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
