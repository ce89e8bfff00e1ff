package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who may operate, who may attend, and how much one person may hold. */
class BookingPeopleIT {

    abstract static class Cases extends BookingCases {

        @Test
        void wantsAnOperatorWhoIsAuthorisedToTheEndOfTheSlot() {
            Person wren = lab().person("Wren Saltmarsh", org.standclear.platform.security.Role.STUDENT);
            assertThat(rule(wren, THURSDAY_NOON)).isEqualTo("operator-authorisation");
            lab().authorise(wren.id(), Duty.OPERATOR, avocet, Instant.parse("2026-03-12T12:20:00Z"));
            assertThat(rule(wren, THURSDAY_NOON)).isEqualTo("operator-authorisation");
            lab().authorise(wren.id(), Duty.OPERATOR, avocet, Instant.parse("2026-03-12T12:37:00Z"));
            assertThat(lab().book(avocet, THURSDAY_NOON, wren)).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void wantsAnAttendantWhoIsSomebodyElseAuthorisedAndFree() {
            Person noor = lab().student("Noor Candlewick");
            Person osric = lab().person("Osric Plum", org.standclear.platform.security.Role.STUDENT);
            Person mateo = lab().student("Mateo Ironbark");
            assertThat(refused(lab().book(avocet, THURSDAY_NOON, noor, noor)).says())
                    .contains("never attends their own run");
            assertThat(refused(lab().book(avocet, THURSDAY_NOON, noor, osric)).says())
                    .contains("Osric Plum is not authorised as e-stop attendant");

            CellId bittern = lab().cell(15);
            lab().booked(bittern, "2026-03-12T12:15:00Z", lab().student("Kofi Marblewood"), mateo);
            Outcome.Refused busy = refused(lab().book(avocet, THURSDAY_NOON, noor, mateo));
            assertThat(busy.rule()).isEqualTo("attendant-busy");
            assertThat(busy.says()).contains("Mateo Ironbark is booked elsewhere");
            assertThat(refused(lab().book(avocet, THURSDAY_NOON, mateo)).says())
                    .contains("You have a booking or a turn");
        }

        @Test
        void letsOnlyStaffAttendOnARestrictedCell() {
            Person noor = lab().student("Noor Candlewick");
            Person adaeze = lab().technician("Adaeze Lanternby");
            states.restrict(avocet, adaeze.id(), "edges on the tool");
            assertThat(refused(lab().book(avocet, THURSDAY_NOON, noor, lab().student("Mateo Ironbark")))
                            .says())
                    .contains("only lab staff attend there");
            assertThat(lab().book(avocet, THURSDAY_NOON, noor, adaeze)).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void countsTwoBookingsAheadAndOpensLateSlotsToAll() {
            Person noor = lab().student("Noor Candlewick");
            Booking first = lab().booked(avocet, THURSDAY_NOON, noor, null);
            lab().booked(avocet, "2026-03-13T12:07:00Z", noor, null);

            Outcome.Refused refused = refused(lab().book(avocet, "2026-03-16T12:07:00Z", noor));
            assertThat(refused.rule()).isEqualTo("quota-ahead");
            assertThat(refused.says())
                    .contains(
                            "2 bookings are allowed ahead at a time. You have 2 (Thu 12 Mar 12:07-12:37, Fri 13 Mar 12:07-12:37)")
                    .contains("when Thu 12 Mar 12:07-12:37 is over");

            assertThat(lab().book(avocet, "2026-03-12T08:37:00Z", noor)).isInstanceOf(Outcome.Booked.class);
            assertThat(rule(noor, "2026-03-16T12:07:00Z")).isEqualTo("quota-ahead");
            desk.cancel(first.id(), noor.id());
            assertThat(lab().book(avocet, "2026-03-16T12:07:00Z", noor)).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void staffAreOutsideTheQuota() {
            Person adaeze = lab().technician("Adaeze Lanternby");
            for (int day = 12; day <= 13; day++) {
                for (int hour = 10; hour <= 12; hour++) {
                    lab().booked(avocet, "2026-03-" + day + "T" + hour + ":07:00Z", adaeze, null);
                }
            }
            Person noor = lab().student("Noor Candlewick");
            assertThat(desk.book(new MakeBooking(
                            avocet,
                            Instant.parse(THURSDAY_NOON).plusSeconds(7200),
                            noor.id(),
                            null,
                            null,
                            null,
                            adaeze.id())))
                    .isInstanceOf(Outcome.Booked.class);
            assertThat(refused(desk.book(new MakeBooking(
                                    avocet,
                                    Instant.parse("2026-03-13T15:07:00Z"),
                                    adaeze.id(),
                                    null,
                                    null,
                                    null,
                                    noor.id())))
                            .rule())
                    .isEqualTo("booked-for-oneself");
        }

        @Test
        void countsAWeekWithLateCancelsOnce() {
            Person noor = lab().student("Noor Candlewick");
            BookingSettings before = numbers.inForce();
            numbers.change(new BookingSettings(30, 14, 9, 3, 9, 0, 120, 10, 6), noor.id(), "for this test");
            try {
                Booking late = lab().booked(avocet, "2026-03-11T10:07:00Z", noor, null);
                Booking early = lab().booked(avocet, THURSDAY_NOON, noor, null);
                assertThat(desk.cancel(late.id(), noor.id()))
                        .isInstanceOfSatisfying(
                                Bookings.Transition.Moved.class,
                                moved -> assertThat(moved.booking().state()).isEqualTo(BookingState.LATE_CANCELLED));
                assertThat(desk.cancel(early.id(), noor.id()))
                        .isInstanceOfSatisfying(
                                Bookings.Transition.Moved.class,
                                moved -> assertThat(moved.booking().state()).isEqualTo(BookingState.CANCELLED));
                lab().booked(avocet, THURSDAY_NOON, noor, null);
                lab().booked(avocet, "2026-03-13T12:07:00Z", noor, null);

                Outcome.Refused refused = refused(lab().book(avocet, "2026-03-13T14:07:00Z", noor));
                assertThat(refused.rule()).isEqualTo("quota-week");
                assertThat(refused.says())
                        .contains("3 bookings are allowed a week. You have 3 in the week of Mon 9 Mar (1 of them")
                        .contains("starts anew on Mon 16 Mar");
                assertThat(lab().book(avocet, "2026-03-16T12:07:00Z", noor)).isInstanceOf(Outcome.Booked.class);
            } finally {
                numbers.change(before, noor.id(), "as before");
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
