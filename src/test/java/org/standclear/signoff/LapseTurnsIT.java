package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A release that waits lapses at its time though nobody looks. */
class LapseTurnsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        DefaultListableBeanFactory beans;

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
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
