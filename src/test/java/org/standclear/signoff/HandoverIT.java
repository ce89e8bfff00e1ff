package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.people.Person;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.Releases.StartPermission;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The e-stop changes hands: a release is suspended until the next one signs, and a run goes on with them. */
class HandoverIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Bookings bookings;

        @Autowired
        Handovers handovers;

        @Autowired
        RunLog log;

        @Autowired
        Runs runs;

        private Release latest() {
            return releases.latest(scene().booking).orElseThrow();
        }

        private String startRefused(Release release) {
            return is(
                            StartPermission.Refused.class,
                            releases.useForStart(
                                    scene().booking,
                                    release.code(),
                                    scene().noor.id()))
                    .says();
        }

        private void takeOver(Person next) {
            Sheet sheet = open();
            assertThat(sheet.list()).isEqualTo(SignoffList.HANDOVER);
            assertThat(sheet.attendant()).isEqualTo(next.id());
            scene().takesOver(next);
        }

        private Sheet open() {
            return scene().desk.look(scene().booking).sheet().orElseThrow();
        }

        private List<String> lapses() {
            return signed.lapses(scene().booking).stream().map(Lapse::code).toList();
        }

        @Test
        void suspendsAReleaseUntilTheOtherAttendantSigns() {
            Release release = scene().released();
            Person tal = scene().lab.student("Tal Emberley");
            bookings.nameAttendant(scene().booking, tal.id(), scene().noor.id());
            assertThat(startRefused(release)).contains("Tal Emberley has not signed yet");
            assertThat(latest().suspended()).contains("Another e-stop attendant");
            assertThat(lapses()).containsOnlyOnce(LapseRule.ATTENDANT_SWAPPED.code());
            assertThat(record()).contains("signoff.release-suspended");

            takeOver(tal);
            assertThat(latest().holds()).isTrue();
            assertThat(latest().attendant()).isEqualTo(tal.id());
            assertThat(latest().startBy()).as("never stretched").isEqualTo(release.startBy());
            is(
                    StartPermission.Given.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));
            assertThat(record()).contains("signoff.handed-over");
        }

        @Test
        void suspendsWhenTheAttendantWalksOffWithNobodyNamed() {
            Release release = scene().released();
            is(
                    Handovers.Asked.Opened.class,
                    handovers.left(scene().booking, scene().mateo.id()));
            assertThat(scene().now().attendant()).isNull();
            assertThat(startRefused(release)).contains("Nobody is named for the e-stop.");
            assertThat(lapses()).contains(LapseRule.ATTENDANT_LEFT.code());
            assertThat(scene().desk.look(scene().booking).sheet()).isEmpty();

            Person tal = scene().lab.student("Tal Emberley");
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, tal.id(), scene().noor.id()));
            takeOver(tal);
            is(
                    StartPermission.Given.class,
                    releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()));
        }

        @Test
        void handsOverWhileTheRunGoesOn() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            clock.moveBy(Duration.ofMinutes(12));
            assertThat(handovers.turn(scene().booking).orElseThrow().over()).isFalse();
            clock.moveBy(Duration.ofMinutes(3));
            assertThat(handovers.turn(scene().booking).orElseThrow().over()).isTrue();

            Person tal = scene().lab.student("Tal Emberley");
            assertThat(handovers.mayTakeOver(scene().booking))
                    .contains(tal.id())
                    .doesNotContain(scene().mateo.id());
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, tal.id(), scene().noor.id()));
            assertThat(scene().now().attendant())
                    .as("until Tal signs")
                    .isEqualTo(scene().mateo.id());
            assertThat(handovers.awaits(scene().booking, tal.id())).isTrue();
            takeOver(tal);

            assertThat(scene().state()).isEqualTo(BookingState.RUNNING);
            assertThat(scene().now().attendant()).isEqualTo(tal.id());
            assertThat(handovers.turn(scene().booking).orElseThrow().over()).isFalse();
            assertThat(runs.of(scene().booking).orElseThrow().inPart(Part.ATTENDANT))
                    .contains(scene().mateo.id(), tal.id());
            assertThat(runs.events(scene().booking)).extracting(RunEvent::kind).contains(RunEvent.Kind.HANDOVER);
        }

        @Test
        void refusesWhoReleasedTheRunAndWhoOperatesIt() {
            scene().released();
            assertThat(is(
                                    Handovers.Asked.Refused.class,
                                    handovers.ask(
                                            scene().booking,
                                            scene().adaeze.id(),
                                            scene().noor.id()))
                            .says())
                    .startsWith("Who released the run");
            assertThat(is(
                                    Handovers.Asked.Refused.class,
                                    handovers.ask(
                                            scene().booking,
                                            scene().noor.id(),
                                            scene().noor.id()))
                            .says())
                    .startsWith("The operator never attends");
            assertThat(latest().holds()).isTrue();
        }

        @Test
        void refusesWhoStandsAtAnotherStopThoughNobodyBookedThemThere() {
            BenchScene there = new BenchScene(application);
            Release other = there.released();
            log.start(there.booking, other.code(), there.noor.id());
            Person tal = scene().lab.student("Tal Emberley");
            // a walk-in swap on the other cell, while its run goes on
            is(Handovers.Asked.Opened.class, handovers.ask(there.booking, tal.id(), there.noor.id()));
            there.takesOver(tal);

            scene().released();
            assertThat(is(
                                    Handovers.Asked.Refused.class,
                                    handovers.ask(
                                            scene().booking,
                                            tal.id(),
                                            scene().noor.id()))
                            .says())
                    .contains("Tal Emberley is in a run on");
            assertThat(is(
                                    Bookings.Transition.Refused.class,
                                    bookings.nameAttendant(
                                            scene().booking,
                                            tal.id(),
                                            scene().noor.id()))
                            .says())
                    .contains("nobody is in two places");
        }

        @Test
        void suspendsWhenTheTurnIsOverAndAsksForSomebodyElse() {
            application
                    .getBean(BenchNumbers.class)
                    .change(new BenchSettings(10, 10, 4, 15, 5, 2), scene().hemi.id(), "a hot day");
            try {
                Release release = scene().released();
                clock.moveBy(Duration.ofMinutes(4));
                assertThat(startRefused(release)).contains("The turn of Mateo Ironbark at the e-stop is over (4 min)");
                assertThat(lapses()).contains(LapseRule.TURN_OVER.code());
                assertThat(Objects.requireNonNull(latest().suspended())).contains("Somebody else takes the next one");
            } finally {
                application
                        .getBean(BenchNumbers.class)
                        .change(BenchSettings.DEFAULTS, scene().hemi.id(), "as before");
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
