package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.Bookings;
import org.standclear.booking.SecondLab;
import org.standclear.booking.labs.LabRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Who left an e-stop in one lab takes one in another: the first lab's record says that its release waits. */
class LeftInAnotherLabIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Bookings bookings;

        @Autowired
        Labs labs;

        @Autowired
        LabRegister register;

        @Autowired
        PlatformTransactionManager transactions;

        private @Nullable SecondLab second;
        private @Nullable BenchScene there;

        /** Mateo has left the first lab's e-stop, where nobody has looked since, and awaits the release in the second. */
        @BeforeEach
        void mateoGoesToTheOtherLab() {
            SecondLab lab = new SecondLab(application, "Europe/Berlin");
            Person mateo = scene().mateo;
            BenchScene other = lab.in(() -> {
                assertThat(register.appoint(lab.id(), mateo.login(), Set.of(Role.STUDENT), PersonId.next()))
                        .isInstanceOf(LabRegister.Outcome.Done.class);
                lab.sample().authorise(mateo.id());
                return new BenchScene(application);
            });
            scene().released();
            Person tal = scene().lab.student("Tal Emberley");
            bookings.nameAttendant(scene().booking, tal.id(), scene().noor.id());
            second = lab;
            there = lab.in(() -> {
                bookings.nameAttendant(other.booking, mateo.id(), other.noor.id());
                BenchScene waits = other.at(other.booking, other.noor, mateo).awaitsReleaser();
                waits.answer(Part.RELEASER, waits.adaeze, waits.adaeze);
                return waits;
            });
        }

        private Signed releasedThere() {
            BenchScene other = Objects.requireNonNull(there);
            return Objects.requireNonNull(second).in(() -> other.sign(Part.RELEASER, other.adaeze));
        }

        private @Nullable String suspendedHere() {
            return releases.latest(scene().booking).orElseThrow().suspended();
        }

        @Test
        void theRecordOfTheLabThatWasLeftSaysThatTheReleaseWaits() {
            assertThat(releasedThere()).isInstanceOf(Signed.Released.class);

            assertThat(suspendedHere()).contains("Tal Emberley has not signed yet");
            assertThat(jdbc.sql("select lab from trail_entries where kind = :kind and subject = :id")
                            .param("kind", "signoff.release-suspended")
                            .param("id", scene().booking.toString())
                            .query(UUID.class)
                            .list())
                    .containsExactly(labs.theLab().id().value());
        }

        @Test
        void aBookingThatSomebodyElseLooksAtIsLeftToTheirLook() throws Exception {
            ExecutorService other = Executors.newSingleThreadExecutor();
            try {
                Signed meanwhile = new TransactionTemplate(transactions).execute(status -> {
                    bookings.lock(scene().booking);
                    try {
                        return other.submit(this::releasedThere).get(20, TimeUnit.SECONDS);
                    } catch (Exception waited) {
                        throw new AssertionError("waited for a booking of another lab", waited);
                    }
                });
                assertThat(meanwhile).isInstanceOf(Signed.Refused.class);
                assertThat(suspendedHere()).isNull();
            } finally {
                other.shutdown();
            }

            scene().desk.look(scene().booking);
            assertThat(suspendedHere()).contains("Tal Emberley has not signed yet");
            assertThat(releasedThere()).isInstanceOf(Signed.Released.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
