package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.people.Person;
import org.standclear.run.RunLog;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Whom a release binds, the gates say in words before the database's unique indexes refuse it, and after they have. */
class BoundElsewhereIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Bookings bookings;

        @Autowired
        Handovers handovers;

        @Autowired
        RunLog log;

        @Autowired
        BenchNumbers numbers;

        @Autowired
        PlatformTransactionManager transactions;

        @BeforeEach
        void longTurns() {
            numbers.change(new BenchSettings(10, 10, 40, 15, 5, 2), scene().hemi.id(), "nobody else is here");
        }

        @AfterEach
        void usualTurns() {
            numbers.change(BenchSettings.DEFAULTS, scene().hemi.id(), "as before");
        }

        /** The slot after the scene's own, on a cell of its own, with people of its own but for the attendant. */
        private BenchScene next(Person attendant) {
            BenchScene there = new BenchScene(application);
            Booking next = there.lab.booked(there.cell, there.now().end().toString(), there.noor, attendant);
            return there.at(next.id(), there.noor, attendant);
        }

        private void started() {
            String code = scene().released().code();
            is(
                    RunLog.Logged.Kept.class,
                    log.start(scene().booking, code, scene().noor.id()));
        }

        private Obstacle refused(Signed signed) {
            return is(Signed.Refused.class, signed).obstacles().get(0);
        }

        @Test
        void aRunThatNobodyFinishedBindsItsPeopleForDays() {
            started();
            clock.moveBy(Duration.ofDays(9));
            Person wren = scene().lab.student("Wren Saltmarsh");
            BenchScene later = daysLater(wren, scene().mateo);
            assertThat(later.desk.look(later.booking).obstacles())
                    .extracting(Obstacle::says)
                    .contains("Mateo Ironbark is at the e-stop of " + name(scene())
                            + " (the run of Wed 11 Mar 2026 10:07-10:37, which nobody has finished) now.");
            BenchScene own = daysLater(scene().noor, scene().lab.student("Tal Emberley"));
            assertThat(own.desk.look(own.booking).obstacles())
                    .extracting(Obstacle::code)
                    .contains("operator-elsewhere");

            log.finish(scene().booking, 1, scene().noor.id());
            assertThat(later.desk.look(later.booking).obstacles())
                    .extracting(Obstacle::code)
                    .doesNotContain("attendant-elsewhere");
        }

        /** Its slot is over, so it claims nobody; neither its operator nor its attendant goes to another e-stop from it. */
        @Test
        void nobodyGoesFromARunThatIsOverItsSlotToAnotherEStop() {
            Person tal = scene().lab.student("Tal Emberley");
            BenchScene there = next(tal);
            BenchScene afterwards = daysLater(there.noor, tal);
            aSceneThatRuns();
            clock.moveTo(there.now().start().plusSeconds(60));
            for (Person one : List.of(scene().noor, scene().mateo)) {
                assertThat(is(
                                        Bookings.Transition.Refused.class,
                                        bookings.nameAttendant(there.booking, one.id(), there.noor.id()))
                                .says())
                        .contains("nobody is in two places");
                is(
                        Bookings.Transition.Moved.class,
                        bookings.nameAttendant(afterwards.booking, one.id(), there.noor.id()));
            }
            log.finish(scene().booking, 1, scene().noor.id());
            is(
                    Bookings.Transition.Moved.class,
                    bookings.nameAttendant(there.booking, scene().mateo.id(), there.noor.id()));
        }

        private BenchScene daysLater(Person operator, Person attendant) {
            Booking booking = scene().lab
                    .booked(
                            scene().lab.cell(7),
                            scene().now().end().plus(Duration.ofDays(9)).toString(),
                            operator,
                            attendant);
            return scene().at(booking.id(), operator, attendant);
        }

        private String name(BenchScene of) {
            return application
                    .getBean(org.standclear.cell.Cells.class)
                    .find(of.cell)
                    .orElseThrow()
                    .name();
        }

        @Test
        void whoLeftAnEStopIsFreeThoughNobodyHasLookedThere() {
            BenchScene there = new BenchScene(application);
            Release left = scene().released();
            Person tal = scene().lab.student("Tal Emberley");
            bookings.nameAttendant(scene().booking, tal.id(), scene().noor.id());
            bookings.nameAttendant(there.booking, scene().mateo.id(), there.noor.id());

            BenchScene now = there.at(there.booking, there.noor, scene().mateo);
            assertThat(now.released().attendant()).isEqualTo(scene().mateo.id());
            assertThat(releases.latest(scene().booking).orElseThrow().suspended())
                    .contains("Tal Emberley has not signed yet");
            assertThat(is(
                                    Releases.StartPermission.Refused.class,
                                    releases.useForStart(
                                            scene().booking,
                                            left.code(),
                                            scene().noor.id()))
                            .says())
                    .contains("suspended");
            assertThat(record()).containsOnlyOnce("signoff.release-suspended");
        }

        /** The index refuses the second of two that bind the same attendant; they are told why, and nothing is kept. */
        @Test
        void twoThatBindTheSameAttendantAtOnceEndAsOneAndARefusal() throws Exception {
            Person tal = scene().lab.student("Tal Emberley");
            BenchScene made = next(tal);
            takesTheEStopWhileReleased(tal, made.at(made.booking, made.noor, tal), "attendant-elsewhere");
        }

        /** No index sees one person in two parts: the second waits for the first, and its gates see the first. */
        @Test
        void operatingAtOneAndAttendingAtAnotherAtOnceEndAsOneAndARefusal() throws Exception {
            Person tal = scene().lab.student("Tal Emberley");
            BenchScene made = new BenchScene(application);
            Booking next = made.lab.booked(made.cell, made.now().end().toString(), tal, made.mateo);
            takesTheEStopWhileReleased(tal, made.at(next.id(), tal, made.mateo), "operator-elsewhere");
        }

        private void takesTheEStopWhileReleased(Person tal, BenchScene there, String code) throws Exception {
            aSceneThatRuns();
            clock.moveTo(scene().now().end().minusSeconds(60));
            there.ready();
            clock.moveTo(there.now().start().plusSeconds(60));
            is(
                    Handovers.Asked.Opened.class,
                    handovers.ask(scene().booking, tal.id(), scene().noor.id()));
            BenchScene takes = scene().at(scene().booking, scene().noor, tal);
            handoverAnswered(takes, tal);
            there.answerAndSign(Part.OPERATOR, there.noor);
            there.answerAndSign(Part.ATTENDANT, there.mateo);
            there.answer(Part.RELEASER, there.adaeze, there.adaeze);

            ExecutorService two = Executors.newFixedThreadPool(2);
            CountDownLatch signed = new CountDownLatch(1);
            CountDownLatch commit = new CountDownLatch(1);
            try {
                Future<Signed> handover = two.submit(() -> new TransactionTemplate(transactions).execute(status -> {
                    Signed kept = takes.sign(Part.ATTENDANT, tal);
                    signed.countDown();
                    waitFor(commit);
                    return kept;
                }));
                waitFor(signed, handover);
                Future<Signed> release = two.submit(() -> there.sign(Part.RELEASER, there.adaeze));
                assertThat(waits(release)).as("it waits for the other to end").isTrue();
                commit.countDown();

                assertThat(handover.get(20, TimeUnit.SECONDS)).isInstanceOf(Signed.Kept.class);
                Obstacle refused = refused(release.get(20, TimeUnit.SECONDS));
                assertThat(refused.code()).isEqualTo(code);
                assertThat(refused.says()).contains("Tal Emberley is ", name(scene()));
            } finally {
                commit.countDown();
                two.shutdown();
            }
            assertThat(there.state()).isEqualTo(BookingState.READY);
            assertThat(there.sheet().signatures()).hasSize(2);
            assertThat(releases.of(there.booking)).isEmpty();
            assertThat(scene().now().attendant()).isEqualTo(tal.id());
        }

        private static void handoverAnswered(BenchScene takes, Person tal) {
            Map.of(
                            1, Map.of("other", takes.noor.printedName()),
                            2, Map.of("clothing", "in-order"),
                            7, Map.of("hand", "on-it"))
                    .forEach((item, values) ->
                            is(SignoffDesk.Entered.Kept.class, takes.enter(Part.ATTENDANT, tal, item, values)));
        }

        private void aSceneThatRuns() {
            clock.moveTo(BenchScene.START.plusSeconds(120));
            started();
        }

        private static void waitFor(CountDownLatch latch) {
            try {
                assertThat(latch.await(20, TimeUnit.SECONDS)).isTrue();
            } catch (InterruptedException stopped) {
                throw new AssertionError(stopped);
            }
        }

        private static void waitFor(CountDownLatch signed, Future<Signed> by) throws Exception {
            if (!signed.await(5, TimeUnit.SECONDS)) {
                throw new AssertionError("not signed: " + by.get(20, TimeUnit.SECONDS));
            }
        }

        private static boolean waits(Future<?> act) throws Exception {
            try {
                act.get(1, TimeUnit.SECONDS);
                return false;
            } catch (TimeoutException stillThere) {
                return true;
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
