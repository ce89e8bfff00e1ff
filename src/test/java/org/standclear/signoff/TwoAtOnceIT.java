package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellStates;
import org.standclear.people.Person;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.signoff.SignoffDesk.Step;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Two people at the same instant: one act, and a clear answer for the other. */
class TwoAtOnceIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        RunLog log;

        @Autowired
        Runs runs;

        @Autowired
        CellStates states;

        private static <T> List<T> together(Callable<? extends T> one, Callable<? extends T> other) throws Exception {
            CyclicBarrier start = new CyclicBarrier(2);
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                Future<T> first = two.submit(() -> {
                    start.await();
                    return one.call();
                });
                Future<T> second = two.submit(() -> {
                    start.await();
                    return other.call();
                });
                return List.of(first.get(), second.get());
            } finally {
                two.shutdown();
            }
        }

        private SignPart prepared(Person releaser) {
            scene().answer(Part.RELEASER, releaser, releaser);
            Sheet sheet = scene().sheet();
            Step.Sign sign = is(Step.Sign.class, scene().desk.step(sheet, Part.RELEASER, releaser.id()));
            return new SignPart(
                    sheet.id(),
                    Part.RELEASER,
                    releaser.id(),
                    releaser.id(),
                    null,
                    sign.statement().sha256());
        }

        @RepeatedTest(3)
        void twoTechniciansReleaseOnce() throws Exception {
            scene().awaitsReleaser();
            SignPart adaeze = prepared(scene().adaeze);
            SignPart hemi = prepared(scene().hemi);

            List<Signed> outcomes =
                    together(() -> scene().desk.sign(adaeze), () -> scene().desk.sign(hemi));

            assertThat(outcomes).filteredOn(Signed.Released.class::isInstance).hasSize(1);
            assertThat(outcomes).filteredOn(Signed.MovedOn.class::isInstance).hasSize(1);
            assertThat(releases.of(scene().booking)).hasSize(1);
            assertThat(record()).filteredOn("signoff.released"::equals).hasSize(1);
        }

        @RepeatedTest(3)
        void aTagAndAReleaseNeverBothStand() throws Exception {
            scene().awaitsReleaser();
            SignPart adaeze = prepared(scene().adaeze);

            together(() -> scene().desk.sign(adaeze), () -> {
                states.tagOut(scene().cell, scene().hemi.id(), "cable chafe");
                return "tagged";
            });

            scene().desk.look(scene().booking);
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(releases.of(scene().booking))
                    .allSatisfy(release -> assertThat(release.lapsed()).isNotNull());
        }

        @RepeatedTest(3)
        void aStartAndAPressEndStopped() throws Exception {
            Release release = scene().released();

            together(
                    () -> log.start(
                            scene().booking, release.code(), scene().noor.id()),
                    () -> log.stop(
                            scene().cell,
                            RunEvent.Kind.E_STOP_PRESS,
                            scene().mateo.id()));

            assertThat(scene().state()).isIn(BookingState.STOPPED, BookingState.READY);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
            assertThat(runs.events(scene().booking)).extracting(RunEvent::kind).contains(RunEvent.Kind.E_STOP_PRESS);
        }

        @Test
        void twoStartsStartOnce() throws Exception {
            Release release = scene().released();
            List<RunLog.Logged> outcomes = together(
                    () -> log.start(
                            scene().booking, release.code(), scene().noor.id()),
                    () -> log.start(
                            scene().booking, release.code(), scene().screen.id()));
            assertThat(outcomes)
                    .filteredOn(RunLog.Logged.Kept.class::isInstance)
                    .hasSize(1);
            assertThat(runs.events(scene().booking)).extracting(RunEvent::kind).containsExactly(RunEvent.Kind.STARTED);
        }

        @Test
        void twoStopsAreBothKept() throws Exception {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            together(
                    () -> log.stop(
                            scene().cell,
                            RunEvent.Kind.E_STOP_PRESS,
                            scene().mateo.id()),
                    () -> log.stop(
                            scene().cell,
                            RunEvent.Kind.E_STOP_PRESS,
                            scene().adaeze.id()));
            assertThat(runs.of(scene().booking).orElseThrow().stops()).isEqualTo(2);
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
