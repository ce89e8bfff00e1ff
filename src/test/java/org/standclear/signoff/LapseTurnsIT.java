package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.standclear.booking.SampleLab;
import org.standclear.platform.lab.Labs;
import org.standclear.run.RunLog;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** A release that waits lapses at its time though nobody looks. */
class LapseTurnsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        DefaultListableBeanFactory beans;

        @Autowired
        RunLog log;

        @Autowired
        TrailReader record;

        @Autowired
        Labs labs;

        @Test
        void lapsesByItselfWhenItsTimeIsOver() throws Exception {
            Release release = scene().released();
            Class<?> type = Class.forName("org.standclear.signoff.records.LapseTurns");
            Object turns = beans.createBean(type);
            var run = type.getDeclaredMethod("run");
            run.setAccessible(true);
            run.invoke(turns);
            assertThat(releases.latest(scene().booking).orElseThrow().holds()).isTrue();
            clock.moveBy(Duration.ofMinutes(10));
            run.invoke(turns);
            assertThat(jdbc.sql("select lapse_rule from signoff_releases where id = :id")
                            .params(Map.of("id", release.id().value()))
                            .query(String.class)
                            .single())
                    .as("read from the table: nobody has looked")
                    .isEqualTo(LapseRule.NOT_STARTED_IN_TIME.code());
        }

        /** A booking that says it runs though nobody released anything, on each side of a good one. */
        @Test
        void looksAfterTheOthersWhenOneIsOdd() throws Exception {
            SampleLab lab = scene().lab;
            List<UUID> odd = List.of(odd(lab), odd(lab), odd(lab), odd(lab));
            try {
                Release release = scene().released();
                log.start(scene().booking, release.code(), scene().noor.id());
                clock.moveBy(Duration.ofMinutes(15));
                Class<?> type = Class.forName("org.standclear.signoff.records.LapseTurns");
                var run = type.getDeclaredMethod("run");
                run.setAccessible(true);
                run.invoke(beans.createBean(type));
                assertThat(record.about(labs.theLab().id(), scene().booking.toString()))
                        .extracting(RecordedEntry::kind)
                        .contains("signoff.turn-over");
            } finally {
                odd.forEach(id -> state(id, "CANCELLED"));
            }
        }

        private UUID odd(SampleLab lab) {
            UUID id = lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", lab.student("Kofi Marblewood"), null)
                    .id()
                    .value();
            state(id, "RUNNING");
            return id;
        }

        private void state(UUID booking, String state) {
            jdbc.sql("update bookings set state = :state where id = :id")
                    .param("state", state)
                    .param("id", booking)
                    .update();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
