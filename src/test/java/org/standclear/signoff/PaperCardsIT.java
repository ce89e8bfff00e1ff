package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.platform.ids.Id;
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
            return new PaperCard(
                    Id.newValue(),
                    scene().cell,
                    written,
                    scene().noor.id(),
                    attendant.id(),
                    releaser.id(),
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
