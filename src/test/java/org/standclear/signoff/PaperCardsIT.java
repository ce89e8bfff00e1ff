package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.PaperCards.PaperCard;
import org.standclear.signoff.PaperCards.Typed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A card from paper is a late entry with who typed it, and releases nothing. */
class PaperCardsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        PaperCards cards;

        private PaperCard card(Instant written, Person attendant, Person releaser) {
            return card(null, written, scene().noor.id(), attendant.id(), releaser.id());
        }

        private PaperCard card(
                @Nullable BookingId booking,
                Instant written,
                PersonId operator,
                PersonId attendant,
                PersonId releaser) {
            return new PaperCard(
                    Id.newValue(),
                    scene().cell,
                    booking,
                    written,
                    operator,
                    attendant,
                    releaser,
                    "Peg and plate, revision 1",
                    "a41e",
                    "reduced",
                    50,
                    "level 3",
                    "G-02",
                    "5",
                    "five passes, closed out",
                    scene().hemi.id(),
                    clock.instant());
        }

        @Test
        void isKeptLateAndReleasesNothing() {
            scene().ready();
            Instant written = clock.instant().minusSeconds(60);
            is(Typed.Kept.class, cards.type(card(written, scene().mateo, scene().adaeze)));
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(releases.of(scene().booking)).isEmpty();
            assertThat(cards.latest(100)).anySatisfy(kept -> {
                assertThat(kept.cell()).isEqualTo(scene().cell);
                assertThat(kept.typedBy()).isEqualTo(scene().hemi.id());
                assertThat(kept.typedAt()).isAfter(kept.writtenAt());
            });
        }

        @Test
        void refusesTheFutureTwoPartsOfOnePersonAndAReleaserWhoIsNoStaff() {
            assertThat(is(
                                    Typed.Refused.class,
                                    cards.type(card(clock.instant().plusSeconds(1), scene().mateo, scene().adaeze)))
                            .field())
                    .isEqualTo("time");
            assertThat(is(Typed.Refused.class, cards.type(card(clock.instant(), scene().noor, scene().adaeze)))
                            .says())
                    .contains("three people");
            Person tal = scene().lab.student("Tal Emberley");
            assertThat(is(Typed.Refused.class, cards.type(card(clock.instant(), scene().mateo, tal)))
                            .says())
                    .contains("Only a technician or an instructor");
        }

        private PaperCard booked(@Nullable BookingId booking, Instant written) {
            return card(
                    booking,
                    written,
                    scene().noor.id(),
                    scene().mateo.id(),
                    scene().adaeze.id());
        }

        private Typed.Refused refused(PaperCard card) {
            return is(Typed.Refused.class, cards.type(card));
        }

        @Test
        void standsOnItsBookingAndOnTheRecordOfItsPeople() {
            PaperCard card = booked(scene().booking, clock.instant());
            is(Typed.Kept.class, cards.type(card));
            assertThat(cards.of(scene().booking)).containsExactly(card);
            for (Person person : List.of(scene().noor, scene().mateo, scene().adaeze)) {
                assertThat(cards.of(person.id())).containsExactly(card);
            }
            assertThat(cards.of(scene().hemi.id()))
                    .as("who typed it has no part in it")
                    .isEmpty();
            assertThat(cards.bookings(scene().cell, BenchScene.START))
                    .extracting(Booking::id)
                    .containsExactly(scene().booking);
            assertThat(cards.words(card))
                    .contains("Noor Candlewick with Mateo Ironbark at the e-stop", "Typed in late by Hemi Coppergate");
        }

        @Test
        void refusesPeopleNobodyKnows() {
            PersonId nobody = PersonId.next();
            PersonId noor = scene().noor.id();
            PersonId mateo = scene().mateo.id();
            PersonId adaeze = scene().adaeze.id();
            Instant now = clock.instant();
            assertThat(refused(card(null, now, nobody, mateo, adaeze)).field()).isEqualTo("operator");
            assertThat(refused(card(null, now, noor, nobody, adaeze)).field()).isEqualTo("attendant");
            assertThat(refused(card(null, now, noor, mateo, nobody)).field()).isEqualTo("releaser");
        }

        @Test
        void refusesABookingOfAnotherCellOrOfSomebodyElseOrOfNobody() {
            assertThat(refused(booked(BookingId.next(), clock.instant())).field())
                    .isEqualTo("booking");
            BenchScene other = new BenchScene(application);
            assertThat(refused(booked(other.booking, clock.instant())).field()).isEqualTo("booking");
            PaperCard swapped = card(
                    scene().booking,
                    clock.instant(),
                    scene().mateo.id(),
                    scene().noor.id(),
                    scene().adaeze.id());
            assertThat(refused(swapped).field()).isEqualTo("operator");
        }

        @Test
        void refusesATimeBeforeTheBookingBeforeTheCellAndAfterNow() {
            assertThat(refused(booked(scene().booking, BenchScene.START.minusSeconds(1)))
                            .says())
                    .contains("before the booking");
            is(Typed.Kept.class, cards.type(booked(scene().booking, BenchScene.START)));
            assertThat(refused(booked(null, Instant.parse("0026-03-11T10:09:00Z")))
                            .says())
                    .contains("Look at the year");
            assertThat(refused(booked(null, Instant.parse("+12026-03-11T10:09:00Z")))
                            .says())
                    .contains("still to come");
        }

        @Test
        void isNeverChanged() {
            PaperCard card = card(clock.instant(), scene().mateo, scene().adaeze);
            is(Typed.Kept.class, cards.type(card));
            assertThatThrownBy(() -> jdbc.sql("update signoff_paper_cards set passes = '6' where id = :id")
                            .param("id", card.id())
                            .update())
                    .isInstanceOf(DataAccessException.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
