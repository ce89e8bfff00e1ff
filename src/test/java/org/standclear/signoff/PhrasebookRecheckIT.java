package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.VersionEffects;
import org.standclear.cell.VersionEffects.Effect;
import org.standclear.program.Phrasebooks;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Another phrasebook may read a program otherwise: upcoming bookings whose programs it reads are checked anew. */
class PhrasebookRecheckIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Rechecks rechecks;

        @Autowired
        VersionEffects effects;

        @Autowired
        Phrasebooks phrasebooks;

        private int version;

        @BeforeEach
        void theCellHasABook() throws IOException {
            version = 0;
            keep(book());
        }

        private static String book() throws IOException {
            return Files.readString(Path.of("seed-data/phrasebooks/plain-words.yaml"));
        }

        private void keep(String book) {
            clock.moveBy(Duration.ofSeconds(1));
            is(
                    Phrasebooks.Kept.class,
                    phrasebooks.keep(new Phrasebooks.NewVersion(
                            scene().cell,
                            book,
                            "the hand's words",
                            scene().adaeze.id(),
                            version++)));
            clock.moveBy(Duration.ofSeconds(1));
        }

        /** The check then no longer understands a line of the program. */
        private static String withoutRest(String book) {
            return book.replace("'rest {time} seconds?'", "'pause {time} seconds?'");
        }

        private void attachSpoken() throws IOException {
            attach("peg.txt", Files.readString(Path.of("seed-data/programs/plain-words/peg-and-plate.txt")));
        }

        private void runAll() {
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
        }

        private List<Effect> effects() {
            return effects.of(scene().cell);
        }

        private int checks() {
            return jdbc.sql("select count(*) from signoff_preparations where booking_id = :booking")
                    .param("booking", scene().booking.value())
                    .query(Integer.class)
                    .single();
        }

        @Test
        void checksAnewWithoutAnybodyLookingAndSaysWhatChanged() throws IOException {
            attachSpoken();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(effects()).isEmpty();

            keep(withoutRest(book()));
            assertThat(rechecks.pending()).isPositive();
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(signed.lapses(scene().booking))
                    .anySatisfy(lapse -> assertThat(lapse.because()).contains("phrasebook"));
            assertThat(effects()).singleElement().satisfies(effect -> {
                assertThat(effect.before()).isEqualTo("within limits by the phrasebook before");
                assertThat(effect.after()).isEqualTo("outside limits on version 1");
                assertThat(effect.changed()).isTrue();
            });
            runAll();
            assertThat(checks()).as("checked once, not again and again").isEqualTo(2);

            keep(book());
            runAll();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
        }

        /** By its time, a book that was kept after the clock had been set back is older than the answer. */
        @Test
        void checksAnewThoughTheClockWasSetBackBeforeTheBook() throws IOException {
            attachSpoken();
            clock.moveBy(Duration.ofMinutes(-20));
            keep(withoutRest(book()));
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(effects())
                    .singleElement()
                    .satisfies(
                            effect -> assertThat(effect.before()).isEqualTo("within limits by the phrasebook before"));
        }

        @Test
        void lapsesAReleaseOfAProgramThatItReads() throws IOException {
            attachSpoken();
            scene().released();
            keep(book() + "# one more remark\n");
            runAll();

            assertThat(scene().state()).isNotEqualTo(BookingState.RELEASED);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
        }

        @Test
        void leavesMotionSheetsAlone() throws IOException {
            scene().released();
            keep(withoutRest(book()));
            runAll();

            assertThat(scene().desk.look(scene().booking).prepared().booking().state())
                    .isEqualTo(BookingState.RELEASED);
            assertThat(checks()).isEqualTo(1);
            assertThat(effects()).isEmpty();
        }

        @Test
        void isSeenAtOnceByWhoeverLooks() throws IOException {
            attachSpoken();
            assertThat(checks()).isEqualTo(1);
            keep(withoutRest(book()));
            scene().desk.look(scene().booking);
            assertThat(checks()).isEqualTo(2);
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
