package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A release ends with its slot: in the slot's last minute nobody signs for one any more, and the screen says until when. */
class SlotEndIT {

    abstract static class Cases extends BenchCases {

        private Instant end() {
            return scene().now().end();
        }

        /** The lists of the bench as late as the attendant's turn allows. */
        private void late(int seconds) {
            scene().ready();
            clock.moveTo(end().minusSeconds(seconds));
        }

        private Obstacle refused(Part part, Person who) {
            scene().answer(part, who, who);
            return refusedSignature(part, who);
        }

        private Obstacle refusedSignature(Part part, Person who) {
            return is(Signed.Refused.class, scene().sign(part, who)).obstacles().get(0);
        }

        @Test
        void releasesAMinuteBeforeTheEndUntilTheEnd() {
            late(60);
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            Release release = scene().releasedBy(scene().adaeze);
            assertThat(release.startBy()).isEqualTo(end());
            clock.moveTo(end().minusSeconds(1));
            is(
                    Releases.StartPermission.Given.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));
        }

        @Test
        void refusesTheReleasersSignatureInTheLastMinute() {
            late(120);
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
            clock.moveTo(end().minusSeconds(60).plusNanos(1000));

            Obstacle tooLate = refusedSignature(Part.RELEASER, scene().adaeze);
            assertThat(tooLate.code()).isEqualTo("slot-over");
            assertThat(tooLate.line())
                    .isEqualTo("The slot ends at 10:37: a release could be signed until 10:36."
                            + " Noor Candlewick can book another slot.");
            clock.moveTo(end());
            assertThat(refusedSignature(Part.RELEASER, scene().adaeze).says()).isEqualTo("The slot ended at 10:37.");
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(releases.of(scene().booking)).isEmpty();
            assertThat(record()).doesNotContain("signoff.released");
        }

        @Test
        void letsNobodySignForNothing() {
            late(59);
            assertThat(refused(Part.OPERATOR, scene().noor).code()).isEqualTo("slot-over");
            assertThat(scene().sheet().signatures()).isEmpty();
            assertThat(scene().desk.look(scene().booking).obstacles())
                    .extracting(Obstacle::code)
                    .containsExactly("slot-over");
        }

        @Test
        void opensNoSlotByTheSessionListInItsLastMinute() {
            scene().attached();
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            clock.moveTo(end().minusSeconds(59));
            assertThat(refused(Part.ATTENDANT, scene().mateo).code()).isEqualTo("slot-over");
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
