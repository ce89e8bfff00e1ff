package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Joined;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * The waiting list against somebody who tries harder: several joins at once, leaving and joining anew, one offer many times,
 * a clock that is set back. It is Wed 11 March, 09:00 UTC.
 */
class WaitedHarderIT {

    private static final int AT_ONCE = 6;
    private static final String THURSDAY_ONE = "2026-03-12T13:07:00Z";

    abstract static class Cases extends BookingCases {

        @Autowired
        WaitingList waitingList;

        private Joined join(Person person, CellId cell, String from, String until) {
            return waitingList.join(new JoinWait(
                    person.id(), cell, Instant.parse(from), Instant.parse(until), null, null, person.id()));
        }

        private Waiting waitsForNoon(Person person) {
            return ((Joined.On) join(person, avocet, THURSDAY_NOON, "2026-03-12T12:37:00Z")).waiting();
        }

        private List<Offer> offersOf(Person person) {
            return waitingList.of(person.id()).stream()
                    .map(Waiting::offer)
                    .filter(Objects::nonNull)
                    .toList();
        }

        private static long booked(List<Outcome> outcomes) {
            return outcomes.stream().filter(Outcome.Booked.class::isInstance).count();
        }

        @Test
        void nobodyJoinsTheListTwiceForATimeThoughTheyAskAtOnce() throws Exception {
            Person yuki = lab().student("Yuki Halfmoon");

            AtOnce.times(() -> join(yuki, avocet, THURSDAY_NOON, THURSDAY_ONE));

            assertThat(waitingList.of(yuki.id())).hasSize(1);
        }

        @Test
        void nobodyWaitsForMoreThanThreeThoughTheyAskAtOnce() throws Exception {
            Person yuki = lab().student("Yuki Halfmoon");
            List<Callable<Joined>> acts = new ArrayList<>();
            for (int hour = 9; hour < 9 + AT_ONCE; hour++) {
                String from = "2026-03-13T%02d:00:00Z".formatted(hour);
                String until = "2026-03-13T%02d:45:00Z".formatted(hour);
                acts.add(() -> join(yuki, avocet, from, until));
            }

            AtOnce.all(acts);

            assertThat(waitingList.of(yuki.id())).hasSizeLessThanOrEqualTo(3);
        }

        @Test
        void whoLetAnOfferGoGetsNoFreshPlaceByJoiningAnew() {
            Person yuki = lab().student("Yuki Halfmoon");
            Person kofi = lab().student("Kofi Marblewood");
            // had a turn already, so whoever comes anew and has had none would be asked before him
            lab().booked(avocet, "2026-03-13T12:07:00Z", kofi, null);
            Waiting first = waitsForNoon(yuki);
            waitsForNoon(kofi);
            waitingList.round();
            waitingList.decline(offersOf(yuki).get(0).id(), yuki.id());
            assertThat(waitingList.leave(first.id(), yuki.id())).isTrue();
            clock.moveBy(Duration.ofSeconds(1));

            waitsForNoon(yuki);
            waitingList.round();

            assertThat(offersOf(yuki)).isEmpty();
            assertThat(offersOf(kofi)).hasSize(1);
        }

        @Test
        void whoLetThreeOffersGoIsNotAskedAnewByJoiningAnew() {
            Person yuki = lab().student("Yuki Halfmoon");
            waitsForNoon(yuki);
            for (int times = 0; times < WaitRows.PASSES; times++) {
                waitingList.round();
                waitingList.decline(offersOf(yuki).get(0).id(), yuki.id());
            }
            assertThat(waitingList.of(yuki.id())).isEmpty();

            Joined again = join(yuki, avocet, THURSDAY_NOON, "2026-03-12T12:37:00Z");

            assertThat(again)
                    .isInstanceOfSatisfying(
                            Joined.Refused.class,
                            refused -> assertThat(refused.says()).contains("let 3 offers of that time go"));
            assertThat(join(yuki, avocet, "2026-03-13T12:07:00Z", "2026-03-13T12:37:00Z"))
                    .as("another day")
                    .isInstanceOf(Joined.On.class);
        }

        @Test
        void anOfferIsTakenOnceHoweverManyTimesAtOnce() throws Exception {
            Person yuki = lab().student("Yuki Halfmoon");
            waitsForNoon(yuki);
            waitingList.round();
            Offer offer = offersOf(yuki).get(0);

            assertThat(booked(AtOnce.times(() -> waitingList.accept(offer.id(), yuki.id()))))
                    .isEqualTo(1);

            assertThat(bookings.of(yuki.id(), clock.instant())).hasSize(1);
        }

        @Test
        void aClockThatIsSetBackRevivesNoMissedBookingAndNoOfferThatRanOut() {
            Person noor = lab().student("Noor Candlewick");
            Booking lost = lab().booked(avocet, THURSDAY_NOON, noor, null);
            Person yuki = lab().student("Yuki Halfmoon");
            assertThat(join(yuki, avocet, THURSDAY_ONE, "2026-03-12T13:37:00Z")).isInstanceOf(Joined.On.class);
            waitingList.round();
            Offer offer = offersOf(yuki).get(0);
            clock.moveTo(lost.end());
            desk.releaseMissed();
            waitingList.round();

            clock.moveTo(lost.start());

            assertThat(bookings.checkIn(lost.id(), noor.id())).isInstanceOf(Bookings.Transition.Refused.class);
            assertThat(refused(waitingList.accept(offer.id(), yuki.id())).rule())
                    .isEqualTo("offer-over");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
