package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.message.Messages;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Lost turns, make-ups, longer slots, reminders and confirmations. It is Wed 11 March, 09:00 UTC. */
class TurnsIT {

    abstract static class Cases extends BookingCases {

        /** Two bookings a week count, four days ahead open to nobody beyond the quotas. */
        private static final BookingSettings TWO_A_WEEK = new BookingSettings(30, 14, 9, 2, 9, 0, 120, 10, 6);

        @Autowired
        Turns turns;

        @Autowired
        Messages messages;

        @Autowired
        Accommodations accommodations;

        @Autowired
        SlotCalendar calendar;

        @Autowired
        Reminders reminders;

        @Autowired
        Confirmations confirmations;

        @AfterEach
        void numbersAsTheyWere() {
            numbers.change(BookingSettings.DEFAULTS, PersonId.next(), "as it was");
        }

        private void cancelLate(Person person, Booking booking) {
            clock.moveTo(booking.start().minus(Duration.ofMinutes(119)));
            desk.cancel(booking.id(), person.id());
            clock.moveToStart();
        }

        @Test
        void countsALateCancelOnceUntilStaffExcuseIt() {
            numbers.change(TWO_A_WEEK, PersonId.next(), "for this test");
            Person noor = lab().student("Noor Candlewick");
            Person adaeze = lab().technician("Adaeze Lanternby");
            Booking lost = lab().booked(avocet, THURSDAY_NOON, noor, null);
            cancelLate(noor, lost);
            assertThat(desk.quotaOf(noor.id()).thisWeek()).isEqualTo(1);
            lab().booked(avocet, "2026-03-13T10:07:00Z", noor, null);
            Outcome.Refused refused = refused(lab().book(avocet, "2026-03-13T11:07:00Z", noor));
            assertThat(refused.rule()).isEqualTo("quota-week");
            assertThat(refused.says()).contains("You have 2", "1 of them cancelled late or missed", "Mon 16 Mar");

            assertThat(turns.explain(lost.id(), noor.id(), "The bus did not come."))
                    .isEmpty();
            assertThat(turns.find(lost.id()).orElseThrow().words()).isEqualTo("The bus did not come.");
            assertThat(turns.excuse(lost.id(), false, adaeze.id())).isTrue();
            assertThat(turns.excuse(lost.id(), false, adaeze.id())).isFalse();
            assertThat(desk.quotaOf(noor.id()).thisWeek()).isEqualTo(1);
            assertThat(messages.of(noor.id(), 1).get(0).subject()).startsWith("Not counted");
            assertThat(trail.about(labs.theLab().id(), lost.id().toString()))
                    .noneMatch(entry -> entry.words().contains("bus"));

            assertThat(turns.countAgain(lost.id(), adaeze.id())).isTrue();
            assertThat(desk.quotaOf(noor.id()).thisWeek()).isEqualTo(2);
            clock.moveTo(lost.start().plus(Duration.ofHours(1)));
            turns.countAnew(noor.id(), adaeze.id());
            assertThat(desk.quotaOf(noor.id()).thisWeek()).isEqualTo(1);
        }

        @Test
        void onlyTheOperatorExplainsAndOnlyWhatWasLost() {
            Person noor = lab().student("Noor Candlewick");
            Booking standing = lab().booked(avocet, THURSDAY_NOON, noor, null);

            assertThat(turns.explain(standing.id(), noor.id(), "no reason")).isPresent();
            assertThat(turns.excuse(
                            standing.id(),
                            true,
                            lab().technician("Adaeze Lanternby").id()))
                    .isFalse();
            cancelLate(noor, standing);
            assertThat(turns.explain(
                            standing.id(), lab().student("Mateo Ironbark").id(), "I"))
                    .isPresent();
            assertThat(turns.explain(standing.id(), noor.id(), " ")).isPresent();
        }

        @Test
        void aMakeUpIsOneBookingBeyondTheQuotaAndComesBackWhenCancelledInTime() {
            numbers.change(TWO_A_WEEK, PersonId.next(), "for this test");
            Person noor = lab().student("Noor Candlewick");
            Person ines = lab().technician("Adaeze Lanternby");
            Booking lost = lab().booked(avocet, THURSDAY_NOON, noor, null);
            lab().booked(avocet, "2026-03-13T10:07:00Z", noor, null);
            cancelLate(noor, lost);
            assertThat(rule(noor, "2026-03-13T11:07:00Z")).isEqualTo("quota-week");
            turns.giveMakeUp(noor.id(), "the power was away", ines.id());

            Booking made = lab().booked(avocet, "2026-03-13T11:07:00Z", noor, null);
            assertThat(turns.makeUpsOf(noor.id())).singleElement().satisfies(one -> {
                assertThat(one.usedBy()).isEqualTo(made.id());
                assertThat(one.stands()).isFalse();
            });
            assertThat(rule(noor, "2026-03-13T12:07:00Z")).isEqualTo("quota-week");
            desk.cancel(made.id(), noor.id());
            assertThat(turns.makeUpsOf(noor.id()).get(0).stands()).isTrue();
            assertThat(lab().book(avocet, "2026-03-13T12:07:00Z", noor)).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void aMakeUpThatCameBackCanBeWithdrawn() {
            numbers.change(TWO_A_WEEK, PersonId.next(), "for this test");
            Person noor = lab().student("Noor Candlewick");
            Person ines = lab().technician("Adaeze Lanternby");
            lab().booked(avocet, "2026-03-13T10:07:00Z", noor, null);
            lab().booked(avocet, "2026-03-13T11:07:00Z", noor, null);
            turns.giveMakeUp(noor.id(), "the power was away", ines.id());
            Booking made = lab().booked(avocet, "2026-03-13T12:07:00Z", noor, null);
            java.util.UUID makeUp = turns.makeUpsOf(noor.id()).get(0).id();
            assertThat(turns.withdraw(makeUp, "too late", ines.id()))
                    .as("it is in use")
                    .isPresent();

            desk.cancel(made.id(), noor.id());
            assertThat(turns.withdraw(makeUp, "given by mistake", ines.id())).isEmpty();
            assertThat(turns.makeUpsOf(noor.id()).get(0).stands()).isFalse();
        }

        @Test
        void anExcuseMayBringAMakeUpAndTakesItBackUnused() {
            Person noor = lab().student("Noor Candlewick");
            Person ines = lab().technician("Adaeze Lanternby");
            Booking lost = lab().booked(avocet, THURSDAY_NOON, noor, null);
            cancelLate(noor, lost);

            turns.excuse(lost.id(), true, ines.id());
            assertThat(turns.makeUpsOf(noor.id())).hasSize(1);
            turns.countAgain(lost.id(), ines.id());
            assertThat(turns.makeUpsOf(noor.id())).isEmpty();
        }

        @Test
        void aLongerSlotIsLongerOnTheGridAndRefusedWhereItDoesNotFit() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            accommodations.set(
                    noor.id(),
                    new Accommodation(45, true, false),
                    lab().technician("A. L.").id());

            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            assertThat(Duration.between(booking.start(), booking.end())).isEqualTo(Duration.ofMinutes(45));
            assertThat(rule(yuki, "2026-03-12T12:37:00Z")).isEqualTo("taken");
            assertThat(lab().book(avocet, "2026-03-12T13:07:00Z", yuki)).isInstanceOf(Outcome.Booked.class);
            // the last half hour of the day takes an ordinary slot, not a longer one
            avocet = lab().cell(22);
            assertThat(lab().book(avocet, "2026-03-12T17:22:00Z", yuki)).isInstanceOf(Outcome.Booked.class);
            Outcome.Refused late = refused(lab().book(avocet, "2026-03-13T17:22:00Z", noor));
            assertThat(late.rule()).isEqualTo("no-such-slot");
            assertThat(late.says()).contains("45 min");
            assertThat(calendar.nextFree(noor.id(), Instant.parse("2026-03-13T08:00:00Z"), 3))
                    .allSatisfy(slot -> assertThat(Duration.between(slot.start(), slot.end()))
                            .isEqualTo(Duration.ofMinutes(45)));
            assertThat(trail.about(labs.theLab().id(), noor.id().toString()))
                    .noneMatch(entry -> entry.words().contains("45")
                            || entry.words().contains("bench")
                            || entry.facts().toString().matches("(?s).*\\b45\\b.*"));
        }

        @Test
        void remindsADayAndAnHourBeforeOnceEach() {
            Person noor = lab().student("Noor Candlewick");
            Person mateo = lab().student("Mateo Ironbark");
            Booking booking = lab().booked(avocet, "2026-03-13T12:07:00Z", noor, mateo);
            clock.moveTo(booking.start().minus(Duration.ofHours(24)).minusSeconds(1));
            reminders.remind();
            assertThat(messages.of(noor.id(), 5)).isEmpty();
            clock.moveTo(booking.start().minus(Duration.ofHours(24)));
            reminders.remind();
            reminders.remind();
            assertThat(messages.of(noor.id(), 5)).hasSize(1);
            assertThat(messages.of(mateo.id(), 5))
                    .extracting(Messages.Kept::subject)
                    .singleElement()
                    .asString()
                    .startsWith("Your turn at the e-stop");
            clock.moveTo(booking.start().minus(Duration.ofHours(1)));
            reminders.remind();
            assertThat(messages.of(noor.id(), 5)).hasSize(2);

            Booking soon = lab().booked(lab().cell(15), "2026-03-13T14:45:00Z", lab().student("Yuki"), null);
            reminders.remind();
            assertThat(messages.of(soon.operator(), 5))
                    .as("booked later than that")
                    .isEmpty();
        }

        @Test
        void givesUpWhatNobodyConfirmedInTimeAndCountsNothing() {
            numbers.change(
                    new BookingSettings(30, 14, 2, 4, 6, 24, 120, 10, 6, 10, 60), PersonId.next(), "for this test");
            Person noor = lab().student("Noor Candlewick");
            Booking unconfirmed = lab().booked(avocet, THURSDAY_NOON, noor, null);
            Booking confirmed = lab().booked(lab().cell(15), "2026-03-12T13:15:00Z", noor, null);
            assertThat(confirmations.askedUntil(unconfirmed.id())).contains(Instant.parse("2026-03-12T11:07:00Z"));
            clock.moveTo(unconfirmed.start().minus(Duration.ofMinutes(119)));
            reminders.remind();
            reminders.remind();
            assertThat(messages.of(noor.id(), 9).stream()
                            .filter(one -> one.subject().startsWith("Are you coming?")))
                    .singleElement()
                    .satisfies(one -> assertThat(one.href()).isEqualTo("/bookings/" + unconfirmed.id() + "/coming"));
            assertThat(confirmations.confirm(confirmed.id(), noor.id())).isTrue();
            assertThat(confirmations.confirm(confirmed.id(), noor.id())).isFalse();
            assertThat(confirmations.askedUntil(confirmed.id())).isEmpty();
            assertThat(confirmations.confirmedAt(confirmed.id())).contains(clock.instant());
            clock.moveTo(unconfirmed.start().minus(Duration.ofMinutes(60)));
            reminders.giveUpUnconfirmed();

            assertThat(bookings.find(unconfirmed.id()).orElseThrow().state()).isEqualTo(BookingState.CANCELLED);
            assertThat(claims(unconfirmed)).isZero();
            assertThat(messages.of(noor.id(), 1).get(0).subject()).startsWith("Given up");
            clock.moveTo(confirmed.start().minus(Duration.ofMinutes(59)));
            reminders.giveUpUnconfirmed();
            assertThat(bookings.find(confirmed.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
