package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who may say that a first run was watched: staff on duty and authorised there, in no other run, while it goes on. */
class WatchedIT {

    abstract static class Cases extends RunLogCases {

        @Autowired
        Handovers handovers;

        private Logged watched(Person person) {
            return log.watched(scene().booking, new Witness(person.id(), person.id(), null));
        }

        @Test
        void takesStaffOnDutyWhileTheRunGoesOn() {
            started();
            kept(watched(scene().hemi));
        }

        @Test
        void takesThePinOnTheBenchScreen() {
            started();
            scene().choosePins(scene().hemi);
            Witness wrong = new Witness(scene().screen.id(), scene().hemi.id(), "000111");
            assertThat(refused(log.watched(scene().booking, wrong)).code()).isEqualTo("pin");
            kept(log.watched(
                    scene().booking,
                    new Witness(scene().screen.id(), scene().hemi.id(), BenchScene.PIN)));
        }

        @Test
        void refusesStaffOffDuty() {
            started();
            Person wren = scene().lab.technician("Wren Saltmarsh");
            assertThat(refused(watched(wren)).says()).startsWith("Wren Saltmarsh is not on duty now");
        }

        @Test
        void refusesStaffWhoAreNotAuthorisedOnTheCell() {
            started();
            Person wren = scene().onDuty(scene().lab.person("Wren Saltmarsh", Role.TECHNICIAN));
            assertThat(refused(watched(wren)).says()).contains("is not authorised on this cell");
        }

        @Test
        void refusesBeforeTheStartAndAfterTheEnd() {
            scene().released();
            assertThat(refused(watched(scene().hemi)).code()).isEqualTo("state");
            Release release = releases.latest(scene().booking).orElseThrow();
            kept(log.start(scene().booking, release.code(), scene().noor.id()));
            kept(log.finish(scene().booking, 1, scene().noor.id()));
            assertThat(refused(watched(scene().hemi)).code()).isEqualTo("state");
        }

        @Test
        void refusesWhoIsInARunOnAnotherCell() {
            Person wren = scene().onDuty(scene().lab.technician("Wren Saltmarsh"));
            BenchScene there = new BenchScene(application);
            Release other = there.released();
            log.start(there.booking, other.code(), there.noor.id());
            is(Handovers.Asked.Opened.class, handovers.ask(there.booking, wren.id(), there.noor.id()));
            there.takesOver(wren);
            started();
            assertThat(refused(watched(wren)).says()).contains("in a run on another cell");
        }

        @Test
        void refusesWhoStoodAtItsStopBefore() {
            started();
            Person wren = scene().onDuty(scene().lab.technician("Wren Saltmarsh"));
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, wren.id(), scene().noor.id()));
            scene().takesOver(wren);
            assertThat(refused(watched(wren)).code()).as("attends").isEqualTo("signer");
            clock.moveBy(Duration.ofMinutes(1));
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(
                            scene().booking,
                            scene().lab.student("Tal Emberley").id(),
                            scene().noor.id()));
            Person tal = application
                    .getBean(org.standclear.people.People.class)
                    .find(scene().sheet().attendant())
                    .orElseThrow();
            scene().takesOver(tal);
            assertThat(refused(watched(wren)).says()).startsWith("Who operates or attends");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
