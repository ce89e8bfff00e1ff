package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.people.Person;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * One person, one e-stop, also while the turn there pauses: whoever is named for a slot that goes on stays bound to it while
 * the run stands stopped, while the release waits for another attendant, and between a reset and the next release. They are
 * free once they have left, once somebody else is named, or once the slot is over and its run with it.
 */
class OneStopIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Bookings bookings;

        @Autowired
        Handovers handovers;

        @Autowired
        RunLog log;

        private BenchScene there() {
            // each scene begins at the same time; made before anything happens here
            return new BenchScene(application);
        }

        private String refused(BenchScene there) {
            return is(
                            Handovers.Asked.Refused.class,
                            handovers.ask(there.booking, scene().mateo.id(), there.noor.id()))
                    .says();
        }

        private void opened(BenchScene there) {
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(there.booking, scene().mateo.id(), there.noor.id()));
        }

        private void started() {
            log.start(scene().booking, scene().released().code(), scene().noor.id());
        }

        private void stopped() {
            started();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
        }

        @Test
        void bindsWhileTheRunStandsStopped() {
            BenchScene there = there();
            stopped();
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
            assertThat(refused(there)).contains("Mateo Ironbark is in a run on");
        }

        @Test
        void bindsBetweenTheResetAndTheNextRelease() {
            BenchScene there = there();
            stopped();
            log.reset(
                    scene().booking,
                    ResetCause.PRECAUTION,
                    "",
                    new RunLog.Witness(scene().adaeze.id(), scene().adaeze.id(), null));
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(refused(there)).contains("nobody is in two places");
        }

        @Test
        void bindsWhileTheReleaseWaitsForAnotherAttendant() {
            BenchNumbers numbers = application.getBean(BenchNumbers.class);
            BenchScene there = there();
            // a turn of 4 min and a rest of 5: rested before the release runs out
            numbers.change(new BenchSettings(10, 10, 4, 5, 5, 2), scene().hemi.id(), "a hot day");
            try {
                scene().released();
                clock.moveBy(Duration.ofMinutes(4));
                assertThat(scene().desk.look(scene().booking).release())
                        .hasValueSatisfying(
                                release -> assertThat(release.holds()).isFalse());
                clock.moveBy(Duration.ofMinutes(5).plusSeconds(30));
                assertThat(refused(there)).contains("Mateo Ironbark is in a run on");
            } finally {
                numbers.change(BenchSettings.DEFAULTS, scene().hemi.id(), "as before");
            }
        }

        @Test
        void freesWhoHasLeftAndTakesThemBackNowhereElseMeanwhile() {
            BenchScene there = there();
            scene().released();
            is(
                    Handovers.Asked.Opened.class,
                    handovers.left(scene().booking, scene().mateo.id()));
            opened(there);
            assertThat(is(
                                    Bookings.Transition.Refused.class,
                                    bookings.nameAttendant(
                                            scene().booking,
                                            scene().mateo.id(),
                                            scene().noor.id()))
                            .says())
                    .contains("nobody is in two places");
        }

        @Test
        void freesThemWhenSomebodyElseIsNamed() {
            BenchScene there = there();
            stopped();
            bookings.nameAttendant(
                    scene().booking,
                    scene().lab.student("Tal Emberley").id(),
                    scene().noor.id());
            opened(there);
        }

        @Test
        void bindsOnWhenTheSlotIsOverAndItsRunIsNot() {
            BenchNumbers numbers = application.getBean(BenchNumbers.class);
            Person wren = scene().lab.student("Wren Saltmarsh");
            Booking next =
                    scene().lab.booked(scene().lab.cell(7), scene().now().end().toString(), wren, null);
            BenchScene there = scene().at(next.id(), wren, scene().mateo);
            numbers.change(new BenchSettings(10, 10, 40, 15, 5, 2), scene().hemi.id(), "nobody else is here");
            try {
                started();
                clock.moveTo(scene().now().end().plusSeconds(60));
                assertThat(refused(there)).contains("Mateo Ironbark is in a run on");
                log.finish(scene().booking, 1, scene().noor.id());
                opened(there);
            } finally {
                numbers.change(BenchSettings.DEFAULTS, scene().hemi.id(), "as before");
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
