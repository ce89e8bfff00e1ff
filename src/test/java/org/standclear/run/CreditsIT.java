package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Turns;
import org.standclear.run.RunLog.Logged;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What a precautionary stop took of a slot is credited, no minute twice, and becomes a booking beyond the quotas. */
class CreditsIT {

    abstract static class Cases extends RunLogCases {

        @Autowired
        Credits credits;

        @Autowired
        Turns turns;

        private void stopped() {
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
        }

        private void resetAfter(Duration wait) {
            clock.moveBy(wait);
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
        }

        private int minutes() {
            return credits.of(scene().booking).stream()
                    .mapToInt(Credits.Credit::minutes)
                    .sum();
        }

        @Test
        void creditsTheMinutesThatAPrecautionTook() {
            started();
            clock.moveBy(Duration.ofSeconds(60));
            stopped();
            resetAfter(Duration.ofSeconds(241));
            assertThat(credits.of(scene().booking)).singleElement().satisfies(credit -> {
                assertThat(credit.minutes())
                        .as("a minute that was begun counts")
                        .isEqualTo(5);
                assertThat(credit.person()).isEqualTo(scene().noor.id());
                assertThat(credit.spentFor()).isNull();
            });
            assertThat(credits.open(scene().noor.id())).isEqualTo(5);
            assertThat(credits.of(scene().noor.id(), scene().now().start())).hasSize(1);
            assertThat(credits.latest(50)).extracting(Credits.Credit::booking).contains(scene().booking);
            assertThat(runs.events(scene().booking)).extracting(RunEvent::kind).contains(RunEvent.Kind.CREDIT);
        }

        @Test
        void creditsNothingWhenSomethingWasWrong() {
            started();
            stopped();
            clock.moveBy(Duration.ofSeconds(300));
            kept(log.reset(scene().booking, ResetCause.MOTION, "", adaeze()));
            assertThat(credits.of(scene().booking)).isEmpty();
        }

        @Test
        void creditsFromTheStopToTheEndOfTheRunNotTheRestOfTheSlot() {
            started();
            stopped();
            clock.moveBy(Duration.ofSeconds(120));
            kept(log.finishStopped(
                    scene().booking, 0, ResetCause.PRECAUTION, scene().noor.id()));
            assertThat(minutes()).isEqualTo(2);
        }

        @Test
        void forgesNoMinutesForARunThatWasNotStopped() {
            started();
            Logged.Refused refused = refused(log.finishStopped(
                    scene().booking, 0, ResetCause.PRECAUTION, scene().noor.id()));
            assertThat(refused.code()).isEqualTo("state");
            assertThat(credits.of(scene().booking)).isEmpty();
        }

        @Test
        void creditsNoMinuteTwice() {
            started();
            stopped();
            clock.moveBy(Duration.ofSeconds(180));
            kept(log.finishStopped(
                    scene().booking, 0, ResetCause.PRECAUTION, scene().noor.id()));
            assertThat(minutes()).isEqualTo(3);
            clock.moveBy(Duration.ofSeconds(60));
            // the stop itself still waits for its reset, in the same slot
            kept(log.resetAt(scene().cell, ResetCause.PRECAUTION, "", adaeze()));
            assertThat(minutes()).isLessThanOrEqualTo(4);
        }

        @Test
        void creditsNoMoreThanTheSlot() {
            started();
            stopped();
            Instant end = scene().now().end();
            long left = Duration.between(clock.instant(), end).toMinutes();
            clock.moveTo(end.plus(Duration.ofMinutes(20)));
            kept(log.reset(scene().booking, ResetCause.PRECAUTION, "", adaeze()));
            assertThat(minutes()).isBetween((int) left, (int) left + 1);
        }

        @Test
        void makesOneBookingBeyondTheQuotasOfHalfASlot() {
            long half =
                    Duration.between(scene().now().start(), scene().now().end()).toMinutes() / 2;
            started();
            stopped();
            resetAfter(Duration.ofMinutes(half - 1));
            assertThat(turns.makeUpsOf(scene().noor.id())).isEmpty();
            assertThat(credits.open(scene().noor.id())).isEqualTo((int) half - 1);

            stopped();
            resetAfter(Duration.ofSeconds(30));
            assertThat(turns.makeUpsOf(scene().noor.id()))
                    .singleElement()
                    .satisfies(one -> assertThat(one.stands()).isTrue());
            assertThat(credits.open(scene().noor.id())).as("spent").isZero();
            assertThat(credits.of(scene().booking))
                    .extracting(Credits.Credit::spentFor)
                    .containsOnly(scene().booking);
            assertThat(runs.events(scene().booking))
                    .extracting(RunEvent::words)
                    .anyMatch(words -> words.endsWith("that makes one booking beyond the quotas."));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
