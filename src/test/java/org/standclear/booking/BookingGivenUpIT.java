package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;

/** Slots that are given up, missed, handed on or kept by staff. */
class BookingGivenUpIT {

    abstract static class Cases extends BookingCases {

        @Test
        void cancellingFreesCellAndPeopleAndKeepsTheHistory() {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, lab().student("Mateo Ironbark"));

            desk.cancel(booking.id(), noor.id());

            assertThat(claims(booking)).isZero();
            assertThat(bookings.of(noor.id(), clock.instant())).isEmpty();
            assertThat(bookings.recordOf(noor.id(), 5))
                    .extracting(Booking::state)
                    .containsExactly(BookingState.CANCELLED);
            assertThat(lab().book(avocet, THURSDAY_NOON, lab().student("Yuki Halfmoon")))
                    .isInstanceOf(Outcome.Booked.class);
            assertThat(desk.cancel(booking.id(), noor.id()))
                    .isInstanceOfSatisfying(
                            Bookings.Transition.Refused.class,
                            again -> assertThat(again.says()).contains("The booking is cancelled"));
            Booking moved = lab().booked(avocet, "2026-03-12T14:07:00Z", noor, null);
            assertThat(desk.moveByStaff(
                            moved.id(), lab().technician("Adaeze Lanternby").id(), "the cell is needed"))
                    .isInstanceOf(Bookings.Transition.Moved.class);
            assertThat(claims(moved)).isZero();
        }

        @Test
        void isMissedAfterTheGraceWhetherOrNotTheSweepRan() {
            Person noor = lab().student("Noor Candlewick");
            Person mateo = lab().student("Mateo Ironbark");
            CellId bittern = lab().cell(15);
            Booking missed = lab().booked(avocet, THURSDAY_NOON, noor, mateo);
            clock.moveTo(missed.start().plus(Duration.ofMinutes(6)).minusMillis(1));
            assertThat(bookings.find(missed.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
            clock.moveTo(missed.start().plus(Duration.ofMinutes(6)));
            assertThat(bookings.find(missed.id()).orElseThrow().state()).isEqualTo(BookingState.MISSED);
            assertThat(bookings.of(noor.id(), missed.start())).isEmpty();
            assertThat(bookings.checkIn(missed.id(), noor.id()))
                    .isInstanceOfSatisfying(
                            Bookings.Transition.Refused.class,
                            late -> assertThat(late.says()).contains("The booking is missed"));

            assertThat(lab().book(bittern, "2026-03-12T12:15:00Z", mateo)).isInstanceOf(Outcome.Booked.class);
            assertThat(claims(missed)).isZero();
        }

        @Test
        void writesMissedBookingsDownOnce() {
            Person noor = lab().student("Noor Candlewick");
            Booking missed = lab().booked(avocet, THURSDAY_NOON, noor, null);
            Booking there = lab().booked(avocet, "2026-03-12T11:37:00Z", noor, null);
            clock.moveTo(there.start());
            assertThat(bookings.checkIn(there.id(), noor.id())).isInstanceOf(Bookings.Transition.Moved.class);
            clock.moveTo(missed.start().plus(Duration.ofMinutes(7)));

            assertThat(desk.releaseMissed()).isPositive();
            desk.releaseMissed();

            assertThat(jdbc.sql("select state from bookings where id = ?")
                            .param(missed.id().value())
                            .query(String.class)
                            .single())
                    .isEqualTo("MISSED");
            assertThat(claims(missed)).isZero();
            assertThat(claims(there)).isEqualTo(2);
            assertThat(trail.about(labs.theLab().id(), missed.id().toString()))
                    .extracting(RecordedEntry::kind)
                    .containsExactly("booking.made", "booking.missed");
        }

        @Test
        void swapsTheAttendantAndFreesTheOneBefore() {
            Person noor = lab().student("Noor Candlewick");
            Person mateo = lab().student("Mateo Ironbark");
            Person tal = lab().student("Tal Emberley");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, mateo);
            CellId bittern = lab().cell(15);

            assertThat(bookings.nameAttendant(booking.id(), tal.id(), noor.id()))
                    .isInstanceOfSatisfying(
                            Bookings.Transition.Moved.class,
                            moved -> assertThat(moved.booking().attendant()).isEqualTo(tal.id()));
            lab().booked(bittern, "2026-03-12T12:15:00Z", lab().student("Kofi Marblewood"), mateo);
            assertThat(bookings.nameAttendant(booking.id(), mateo.id(), noor.id()))
                    .isInstanceOfSatisfying(
                            Bookings.Transition.Refused.class,
                            busy -> assertThat(busy.says()).contains("Mateo Ironbark is booked elsewhere"));
            assertThat(bookings.nameAttendant(booking.id(), noor.id(), noor.id()))
                    .isInstanceOf(Bookings.Transition.Refused.class);
            assertThat(bookings.askForAttendant(booking.id(), noor.id())).isInstanceOf(Bookings.Transition.Moved.class);
            assertThat(claims(booking)).isEqualTo(2);
        }

        @Test
        void staffKeepACellUnlessBookingsStandThere() {
            Person noor = lab().student("Noor Candlewick");
            Person ines = lab().technician("Adaeze Lanternby");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            CloseCell order = new CloseCell(
                    avocet,
                    Instant.parse("2026-03-12T12:30:00Z"),
                    Instant.parse("2026-03-12T14:00:00Z"),
                    CellClosure.Kind.CLASS,
                    " RBT 110-02 ",
                    ines.id());

            assertThat(desk.close(order)).isInstanceOfSatisfying(BookingDesk.Closing.Refused.class, refused -> {
                assertThat(refused.standing()).extracting(Booking::id).containsExactly(booking.id());
                assertThat(refused.says()).contains("1 booking stands");
            });
            desk.cancel(booking.id(), noor.id());
            CellClosure closure = ((BookingDesk.Closing.Closed) desk.close(order)).closure();
            assertThat(closure.words()).isEqualTo("RBT 110-02");
            Outcome.Refused refused = refused(lab().book(avocet, "2026-03-12T13:07:00Z", noor));
            assertThat(refused.rule()).isEqualTo("taken");
            assertThat(refused.says()).contains("staff keep it for a class (RBT 110-02)");
            assertThat(desk.close(order)).isInstanceOf(BookingDesk.Closing.Refused.class);
            assertThat(desk.reopen(closure.id(), ines.id())).isTrue();
            assertThat(desk.reopen(closure.id(), ines.id())).isFalse();
            assertThat(lab().book(avocet, "2026-03-12T13:07:00Z", noor)).isInstanceOf(Outcome.Booked.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
