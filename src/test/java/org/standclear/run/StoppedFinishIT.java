package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingState;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A run that stands stopped: it ends with its cause, and a protective stop is not closed out as nothing odd. */
class StoppedFinishIT {

    abstract static class Cases extends RunLogCases {

        @Test
        void asksTheCauseBeforeAStoppedRunIsFinished() {
            started();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());

            assertThat(refused(log.finish(scene().booking, 3, scene().noor.id()))
                            .code())
                    .isEqualTo("why");
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);

            RunEvent finished = kept(log.finishStopped(
                    scene().booking, 3, ResetCause.PERSON, scene().noor.id()));
            assertThat(finished.words()).startsWith("Stopped because: a person or a hand came over the line.");
            assertThat(scene().state()).isEqualTo(BookingState.FINISHED);
        }

        @Test
        void takesNoProtectiveStopForAPrecaution() {
            started();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());

            assertThat(refused(log.finishStopped(
                                    scene().booking,
                                    3,
                                    ResetCause.PRECAUTION,
                                    scene().noor.id()))
                            .code())
                    .isEqualTo("why");
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
        }

        @Test
        void closesOutNoProtectiveStopAsNothingOdd() {
            started();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            kept(log.finishStopped(
                    scene().booking, 3, ResetCause.CONTACT_LIMIT, scene().noor.id()));
            for (CloseOutItem item : CloseOutItem.values()) {
                if (item != CloseOutItem.ODD) {
                    kept(log.closeOut(
                            scene().booking,
                            item,
                            item.choices().get(0).value(),
                            scene().noor.id()));
                }
            }

            assertThat(refused(log.closeOut(
                                    scene().booking,
                                    CloseOutItem.ODD,
                                    "nothing",
                                    scene().noor.id()))
                            .code())
                    .isEqualTo("odd");
            assertThat(CloseOutItem.ODD.choices(true))
                    .extracting(CloseOutItem.Choice::value)
                    .containsExactly("protective-stop", "near-miss", "fault");
            kept(log.closeOut(
                    scene().booking,
                    CloseOutItem.ODD,
                    "protective-stop",
                    scene().noor.id()));
            assertThat(scene().state()).isEqualTo(BookingState.CLOSED_OUT);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
