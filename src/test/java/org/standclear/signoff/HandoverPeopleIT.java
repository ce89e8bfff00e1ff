package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.Bookings;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.run.RunLog;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who takes an e-stop over is asked about as they stand now; who leaves it is not asked about any more. */
class HandoverPeopleIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Bookings bookings;

        @Autowired
        Handovers handovers;

        @Autowired
        RunLog log;

        @Autowired
        AuthorisationRegister register;

        @Test
        void asksAboutWhoComesNotAboutWhoLeaves() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            revokeAttending(scene().mateo);
            Person tal = scene().lab.student("Tal Emberley");
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, tal.id(), scene().noor.id()));
            scene().takesOver(tal);
            assertThat(scene().now().attendant()).isEqualTo(tal.id());
        }

        @Test
        void refusesWhoseAuthorisationEndedBetweenAskingAndSigning() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            Person tal = scene().lab.student("Tal Emberley");
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, tal.id(), scene().noor.id()));
            scene().answersHandover(tal);
            revokeAttending(tal);
            assertThat(is(Signed.Refused.class, scene().sign(Part.ATTENDANT, tal))
                            .obstacles())
                    .extracting(Obstacle::code)
                    .contains("attendant-not-authorised");
            assertThat(scene().now().attendant()).isEqualTo(scene().mateo.id());
        }

        @Test
        void namesWhoIsAuthorisedNowThoughNotYetAtTheSlotsStart() {
            scene().released();
            Person wren = scene().lab.person("Wren Saltmarsh", Role.STUDENT);
            register.grant(new Grant(
                    wren.id(),
                    Duty.ATTENDANT,
                    null,
                    BenchScene.START.plusSeconds(60),
                    BenchScene.START.plus(Duration.ofDays(9)),
                    "induction passed just now",
                    scene().hemi.id()));
            is(
                    Bookings.Transition.Moved.class,
                    bookings.nameAttendant(
                            scene().booking, wren.id(), scene().noor.id()));
        }

        @Test
        void namesNobodyWhoseAuthorisationEndedSinceTheSlotBegan() {
            scene().released();
            Person wren = scene().lab.person("Wren Saltmarsh", Role.STUDENT);
            scene().lab.authorise(wren.id(), Duty.ATTENDANT, null, BenchScene.START.plusSeconds(60));
            assertThat(is(
                                    Bookings.Transition.Refused.class,
                                    bookings.nameAttendant(
                                            scene().booking,
                                            wren.id(),
                                            scene().noor.id()))
                            .says())
                    .contains("not authorised as e-stop attendant");
        }

        private void revokeAttending(Person person) {
            jdbc.sql("select id from authorisations where person_id = :person and duty = 'ATTENDANT'")
                    .param("person", person.id().value())
                    .query(UUID.class)
                    .list()
                    .forEach(id ->
                            register.revoke(id, "left the course", scene().hemi.id()));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
