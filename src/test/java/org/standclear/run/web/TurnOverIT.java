package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.standclear.people.Person;
import org.standclear.run.RunLog;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A turn at the e-stop that passes its end while the run goes on is told everywhere, and hides nothing. */
class TurnOverIT {

    private static final String KIND = "signoff.turn-over";
    private static final String SWAP = "The turn of Mateo Ironbark is over: swap the attendant now.";

    abstract static class Cases extends BenchPageCases {

        @Autowired
        RunLog log;

        @Autowired
        DefaultListableBeanFactory beans;

        private void running() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
        }

        /** What the running application does every two seconds. */
        private void lookAfterTurns() throws Exception {
            Class<?> type = Class.forName("org.standclear.signoff.records.LapseTurns");
            Object turns = beans.createBean(type);
            var run = type.getDeclaredMethod("run");
            run.setAccessible(true);
            run.invoke(turns);
        }

        private String bench() throws Exception {
            return see(scene().screen).select("main > .stack").get(0).text();
        }

        private String desk() throws Exception {
            String cell = "/bench/" + scene().cell;
            return see(scene().adaeze, "/desk")
                    .select("section[aria-labelledby=open] li:has(a[href=" + cell + "])")
                    .stream()
                    .map(line -> line.text())
                    .findFirst()
                    .orElseThrow();
        }

        @Test
        void offersWhoIsOnDutyFirst() throws Exception {
            running();
            Person tal = scene().lab.student("Tal Emberley");
            scene().lab.authorise(tal.id());
            var next = see(scene().screen).select("select[name=attendant]");
            assertThat(next.select("optgroup:first-of-type").attr("label")).isEqualTo("On duty now");
            assertThat(next.select("optgroup[label=On duty now] option").eachAttr("value"))
                    .contains(scene().hemi.id().toString())
                    .doesNotContain(
                            scene().adaeze.id().toString(),
                            tal.id().toString(),
                            scene().noor.id().toString());
            assertThat(next.select("optgroup[label^=Everybody else] option").eachAttr("value"))
                    .contains(tal.id().toString())
                    .doesNotContain(scene().hemi.id().toString());
        }

        @Test
        void isWrittenOnceAndStandsAtTheBenchAndOnTheDesk() throws Exception {
            running();
            clock.moveBy(Duration.ofMinutes(14));
            lookAfterTurns();
            assertThat(record()).doesNotContain(KIND);
            assertThat(desk()).doesNotContain("turn is over");

            clock.moveBy(Duration.ofMinutes(1));
            lookAfterTurns();
            lookAfterTurns();
            assertThat(record()).containsOnlyOnce(KIND);
            assertThat(bench()).contains(SWAP);
            assertThat(desk()).contains("turn is over since");
            assertThat(see(scene().adaeze, "/desk").select("h1").text()).startsWith("Swap the e-stop attendant");
        }

        @Test
        void doesNotHideThatTheRunHasToEnd() throws Exception {
            running();
            clock.moveTo(scene().now().end());
            lookAfterTurns();
            String told = bench();
            assertThat(told).contains("Finish now.", SWAP);
            assertThat(told.indexOf("Finish now.")).isLessThan(told.indexOf(SWAP));
            var screen = see(scene().screen).select("main > .stack").get(0);
            String headline = screen.select("h1").text();
            assertThat(headline).endsWith("Finish now.");
            assertThat(headline.split(" ")).hasSizeLessThanOrEqualTo(12);
            assertThat(screen.select("> p").eachText()).contains(SWAP);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
