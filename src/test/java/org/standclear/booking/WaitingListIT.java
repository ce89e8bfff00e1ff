package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Joined;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.message.Messages;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Slots that become free are offered to those who wait, one after the other. It is Wed 11 March, 09:00 UTC. */
class WaitingListIT {

    abstract static class Cases extends BookingCases {

        private static final String FRIDAY_NOON = "2026-03-13T12:07:00Z";

        @Autowired
        WaitingList waitingList;

        @Autowired
        Turns turns;

        @Autowired
        Messages messages;

        private Joined join(Person person, String from, String until) {
            return waitingList.join(new JoinWait(
                    person.id(), avocet, Instant.parse(from), Instant.parse(until), null, null, person.id()));
        }

        private void waitForNoon(Person person) {
            assertThat(join(person, "2026-03-12T12:00:00Z", "2026-03-12T13:00:00Z"))
                    .isInstanceOf(Joined.On.class);
            clock.moveBy(Duration.ofSeconds(1));
        }

        private List<Offer> offersOf(Person person) {
            return waitingList.of(person.id()).stream()
                    .map(WaitingList.Waiting::offer)
                    .filter(offer -> offer != null)
                    .toList();
        }

        private Offer offerOf(Person person) {
            assertThat(offersOf(person)).hasSize(1);
            return offersOf(person).get(0);
        }

        @Test
        void holdsACancelledSlotForWhoWaitsAndForNobodyElse() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            waitForNoon(yuki);
            waitingList.round();
            assertThat(offersOf(yuki)).isEmpty();

            desk.cancel(booking.id(), noor.id());
            waitingList.round();

            Offer offer = offerOf(yuki);
            assertThat(offer.slot().start()).isEqualTo(Instant.parse(THURSDAY_NOON));
            assertThat(Duration.between(clock.instant(), offer.until())).isEqualTo(Duration.ofMinutes(10));
            assertThat(messages.of(yuki.id(), 5))
                    .extracting(Messages.Kept::href)
                    .containsExactly("/book/offers/" + offer.id());
            Outcome.Refused refused = refused(lab().book(avocet, THURSDAY_NOON, lab().student("Kofi Marblewood")));
            assertThat(refused.rule()).isEqualTo("taken");
            assertThat(refused.says()).contains("offered to somebody on the waiting list");

            assertThat(waitingList.accept(offer.id(), yuki.id())).isInstanceOf(Outcome.Booked.class);
            assertThat(waitingList.of(yuki.id())).isEmpty();
            assertThat(bookings.of(yuki.id(), clock.instant())).hasSize(1);
            assertThat(refused(waitingList.accept(offer.id(), yuki.id())).rule())
                    .isEqualTo("offer-over");
        }

        @Test
        void keepsTheOfferOfWhoHasTooManyBookingsToTakeIt() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            Booking noon = lab().booked(avocet, FRIDAY_NOON, noor, null);
            join(yuki, FRIDAY_NOON, "2026-03-13T13:00:00Z");
            desk.cancel(noon.id(), noor.id());
            waitingList.round();
            Offer offer = offerOf(yuki);
            Booking one = lab().booked(avocet, "2026-03-13T09:07:00Z", yuki, null);
            lab().booked(avocet, "2026-03-13T10:07:00Z", yuki, null);

            assertThat(refused(waitingList.accept(offer.id(), yuki.id())).rule())
                    .isEqualTo("quota-ahead");
            assertThat(offerOf(yuki)).as("it stands until its time is over").isEqualTo(offer);
            assertThat(refused(lab().book(avocet, FRIDAY_NOON, noor)).rule()).isEqualTo("taken");

            desk.cancel(one.id(), yuki.id());
            assertThat(waitingList.accept(offer.id(), yuki.id())).isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void takesNoOfferOfAWaitThatHasEnded() {
            Person yuki = lab().student("Yuki Halfmoon");
            waitForNoon(yuki);
            waitingList.round();
            Offer offer = offerOf(yuki);
            jdbc.sql("update booking_waits set ended_at = joined_at, ended_how = 'LEFT' where id = ?")
                    .param(offer.waitId())
                    .update();

            assertThat(refused(waitingList.accept(offer.id(), yuki.id())).says())
                    .contains("The wait that this offer was for has ended");
            assertThat(bookings.of(yuki.id(), clock.instant())).isEmpty();
        }

        @Test
        void asksTheNextWhenAnOfferRunsOutOrIsDeclined() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            Person kofi = lab().student("Kofi Marblewood");
            Person leilani = lab().student("Leilani Driftmark");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            waitForNoon(yuki);
            waitForNoon(kofi);
            waitForNoon(leilani);
            desk.cancel(booking.id(), noor.id());
            waitingList.round();
            Offer first = offerOf(yuki);
            assertThat(offersOf(kofi)).isEmpty();

            clock.moveTo(first.until());
            // whoever looks now knows that it is over, though no round has written it down
            assertThat(waitingList.offer(first.id()).orElseThrow().state()).isEqualTo(OfferState.EXPIRED);
            waitingList.round();

            assertThat(refused(waitingList.accept(first.id(), yuki.id())).rule())
                    .isEqualTo("offer-over");
            Offer second = offerOf(kofi);
            assertThat(waitingList.decline(second.id(), kofi.id())).isTrue();
            waitingList.round();
            assertThat(offerOf(leilani).slot()).isEqualTo(first.slot());
        }

        @Test
        void isFreeForAllAfterAnOfferRanOutThoughNoRoundHasRun() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            waitForNoon(yuki);
            desk.cancel(booking.id(), noor.id());
            waitingList.round();
            clock.moveTo(offerOf(yuki).until());

            assertThat(lab().book(avocet, THURSDAY_NOON, lab().student("Kofi Marblewood")))
                    .isInstanceOf(Outcome.Booked.class);
        }

        @Test
        void asksFirstWhoHasAMakeUpThenWhoHadFewestTurns() {
            Person noor = lab().student("Noor Candlewick");
            Person often = lab().student("Yuki Halfmoon");
            Person seldom = lab().student("Kofi Marblewood");
            Person wronged = lab().student("Leilani Driftmark");
            lab().booked(lab().cell(15), "2026-03-12T15:15:00Z", often, null);
            turns.giveMakeUp(
                    wronged.id(),
                    "the power was away",
                    lab().technician("Adaeze Lanternby").id());
            lab().booked(avocet, THURSDAY_NOON, noor, null);
            waitForNoon(often);
            waitForNoon(seldom);
            waitForNoon(wronged);

            List<org.standclear.platform.ids.PersonId> order = waitingList.all().stream()
                    .map(WaitingList.Waiting::person)
                    .filter(person ->
                            List.of(often.id(), seldom.id(), wronged.id()).contains(person))
                    .toList();

            assertThat(order).containsExactly(wronged.id(), seldom.id(), often.id());
        }

        @Test
        void offersNothingAtNight() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            waitForNoon(yuki);
            clock.moveTo(Instant.parse("2026-03-11T21:00:00Z"));
            desk.cancel(booking.id(), noor.id());
            waitingList.round();
            assertThat(offersOf(yuki)).isEmpty();

            clock.moveTo(Instant.parse("2026-03-12T07:00:00Z"));
            waitingList.round();
            assertThat(offersOf(yuki)).hasSize(1);
        }

        @Test
        void offersTheRestOfAMissedSlot() {
            Person noor = lab().student("Noor Candlewick");
            Person yuki = lab().student("Yuki Halfmoon");
            lab().booked(avocet, THURSDAY_NOON, noor, null);
            waitForNoon(yuki);
            clock.moveTo(Instant.parse("2026-03-12T12:13:20Z"));
            waitingList.round();

            Offer offer = offerOf(yuki);
            assertThat(offer.slot().start()).isEqualTo(Instant.parse("2026-03-12T12:17:00Z"));
            assertThat(offer.slot().end()).isEqualTo(Instant.parse("2026-03-12T12:37:00Z"));
            assertThat(offer.until()).isEqualTo(offer.slot().start());
            assertThat(waitingList.accept(offer.id(), yuki.id())).isInstanceOf(Outcome.Booked.class);
            clock.moveTo(offer.slot().start());
            Booking rest = bookings.of(yuki.id(), clock.instant()).get(0);
            assertThat(bookings.checkIn(rest.id(), yuki.id())).isInstanceOf(Bookings.Transition.Moved.class);
        }

        @Test
        void holdsASlotOnceThoughManyInstancesLook() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(avocet, THURSDAY_NOON, noor, null);
            List<Person> waiting = List.of(
                    lab().student("Yuki Halfmoon"),
                    lab().student("Kofi Marblewood"),
                    lab().student("Leilani Driftmark"));
            waiting.forEach(this::waitForNoon);
            desk.cancel(booking.id(), noor.id());
            List<Callable<Integer>> rounds =
                    List.of(waitingList::round, waitingList::round, waitingList::round, waitingList::round);
            ExecutorService instances = Executors.newFixedThreadPool(4);
            try {
                for (Future<Integer> round : instances.invokeAll(rounds)) {
                    round.get();
                }
            } finally {
                instances.shutdownNow();
            }

            assertThat(waiting.stream()
                            .mapToInt(person -> offersOf(person).size())
                            .sum())
                    .isEqualTo(1);
        }

        @Test
        void saysWhyNotToWhoCannotWait() {
            Person noor = lab().student("Noor Candlewick");
            assertThat(join(noor, "2026-03-12T13:00:00Z", "2026-03-12T13:00:00Z"))
                    .isInstanceOf(Joined.Refused.class);
            assertThat(join(noor, "2026-04-12T12:00:00Z", "2026-04-12T13:00:00Z"))
                    .isInstanceOfSatisfying(
                            Joined.Refused.class, far -> assertThat(far.says()).contains("14 days ahead"));
            waitForNoon(noor);
            assertThat(join(noor, "2026-03-12T12:30:00Z", "2026-03-12T14:00:00Z"))
                    .isInstanceOfSatisfying(
                            Joined.Refused.class,
                            twice -> assertThat(twice.says()).contains("that time already"));
            assertThat(waitingList.leave(waitingList.of(noor.id()).get(0).id(), noor.id()))
                    .isTrue();
            assertThat(waitingList.of(noor.id())).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
