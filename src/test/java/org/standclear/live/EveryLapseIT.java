package org.standclear.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Objects;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.core.env.Environment;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/**
 * Every lapse is seen on a second screen without a reload: the stream names the cell within a second of it, and the part of
 * the page that listens has something new. A rule without a case fails.
 */
class EveryLapseIT {

    abstract static class Cases extends BenchCases {

        private static final Duration SOON = Duration.ofSeconds(1);

        @Autowired
        Environment environment;

        @Autowired
        DefaultListableBeanFactory beans;

        @ParameterizedTest
        @EnumSource(LapseRule.class)
        void isSeenOnASecondScreen(LapseRule rule) throws Exception {
            LapseActs.Act act = new LapseActs(application, scene(), clock, jdbc).of(rule);
            try {
                Release release = act.before().call();
                seen(rule, act.happens());
                assertThat(signed.lapses(scene().booking))
                        .filteredOn(lapse -> release.id().equals(lapse.release()))
                        .extracting(lapse -> lapse.code())
                        .contains(rule.code());
            } finally {
                act.after().run();
            }
        }

        private void seen(LapseRule rule, Runnable happens) throws Exception {
            int port = Integer.parseInt(Objects.requireNonNull(environment.getProperty("local.server.port")));
            WebUser second = WebUser.atPort(port).signIn(scene().screen.login(), BenchScene.PASSWORD);
            Element main = Objects.requireNonNull(
                    second.get("/bench/" + scene().cell).document().selectFirst("main[data-live-cell]"));
            assertThat(main.attr("data-live-cell")).isEqualTo(scene().cell.toString());
            assertThat(second.get(main.attr("hx-get")).status())
                    .as("nothing new yet")
                    .isEqualTo(204);
            try (StreamListener stream = new StreamListener(port, second)) {
                happens.run();
                lookAfterReleases();
                assertThat(stream.hears(scene().cell, SOON))
                        .as("told of " + rule.code())
                        .isTrue();
            }
            WebPage looked = second.get(main.attr("hx-get"));
            assertThat(looked.status()).as("something new to show").isEqualTo(200);
            assertThat(looked.html()).contains("data-live-cell");
            saysWhy(rule, looked, port);
        }

        /** On the bench screen, and on the desk: what is lost, and because of what. */
        private void saysWhy(LapseRule rule, WebPage bench, int port) throws Exception {
            String because = signed.lapses(scene().booking).stream()
                    .filter(lapse -> lapse.code().equals(rule.code()))
                    .map(Lapse::because)
                    .reduce((before, last) -> last)
                    .orElseThrow();
            if (rule == LapseRule.WINDOW_OVER) {
                // the booking leaves both with its slot
                assertThat(bench.document().text()).contains("Nobody is booked here now.");
                return;
            }
            assertThat(bench.document().text()).as("the bench").contains(because);
            WebPage desk = WebUser.atPort(port)
                    .signIn(scene().adaeze.login(), BenchScene.PASSWORD)
                    .get("/desk");
            String line = desk.document()
                    .select("li:has(a[href=/bench/" + scene().cell + "])")
                    .text();
            assertThat(line).as("the desk").contains(because);
        }

        /** What the running application does every two seconds. */
        private void lookAfterReleases() throws Exception {
            Class<?> type = Class.forName("org.standclear.signoff.records.LapseTurns");
            Object turns = beans.createBean(type);
            var run = type.getDeclaredMethod("run");
            run.setAccessible(true);
            run.invoke(turns);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
