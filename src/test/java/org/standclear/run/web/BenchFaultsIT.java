package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.run.RunLog;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.signoff.SignoffDesk.Step;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** What goes wrong around a release: the booking stays in a legal state, and nothing signed is lost. */
class BenchFaultsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        RunLog log;

        @LocalServerPort
        int port;

        @Test
        void startsNothingBeforeTheReleaseWhenTheClockIsMovedBack() {
            Release release = scene().released();
            clock.moveBy(Duration.ofMinutes(-40));

            RunLog.Logged early =
                    log.start(scene().booking, release.code(), scene().noor.id());

            assertThat(is(RunLog.Logged.Refused.class, early).code()).isEqualTo("clock-moved-back");
            assertThat(scene().state()).isEqualTo(BookingState.RELEASED);
            assertThat(releases.latest(scene().booking).orElseThrow().usedAt()).isNull();
            clock.moveBy(Duration.ofMinutes(40));
            // how long the attendant had been there could not be told then, so somebody else signs first
            RunLog.Logged again =
                    log.start(scene().booking, release.code(), scene().noor.id());
            assertThat(is(RunLog.Logged.Refused.class, again).code()).isEqualTo("release-suspended");
            assertThat(is(RunLog.Logged.Refused.class, again).says()).contains("the clock was set back");
        }

        @Test
        void neverReleasesLongerBecauseTheClockWasMovedBack() {
            Release release = scene().released();
            clock.moveBy(Duration.ofMinutes(-40));
            scene().desk.look(scene().booking);
            clock.moveBy(Duration.ofMinutes(51));

            RunLog.Logged late =
                    log.start(scene().booking, release.code(), scene().noor.id());

            assertThat(is(RunLog.Logged.Refused.class, late).code()).isEqualTo("not-released");
            assertThat(releases.latest(scene().booking).orElseThrow().startBy()).isEqualTo(release.startBy());
        }

        @Test
        void issuesAReleaseAnewAfterTheClockWasMovedBack() {
            Release first = scene().released();
            clock.moveBy(Duration.ofMinutes(-1));
            RunLog.Logged early =
                    log.start(scene().booking, first.code(), scene().noor.id());
            assertThat(is(RunLog.Logged.Refused.class, early).code()).isEqualTo("clock-moved-back");

            Release second = issuedAnew();
            assertThat(second.issuedAt()).isBefore(first.issuedAt());
            assertThat(releases.latest(scene().booking)).contains(second);
            clock.moveBy(Duration.ofSeconds(-30));
            Release third = issuedAnew();

            assertThat(releases.of(scene().booking))
                    .extracting(Release::id)
                    .as("the one issued last comes first")
                    .containsExactly(third.id(), second.id(), first.id());
            is(
                    RunLog.Logged.Kept.class,
                    log.start(scene().booking, third.code(), scene().noor.id()));
        }

        private Release issuedAnew() {
            assertThat(releases.withdraw(
                            scene().booking,
                            LapseRule.WITHDRAWN,
                            "The clock was wrong.",
                            scene().adaeze.id()))
                    .isTrue();
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            return scene().releasedBy(scene().adaeze);
        }

        @Test
        void checksAProgramOnceThatWasAttachedAfterTheClockWasMovedBack() {
            scene().attached();
            clock.moveBy(Duration.ofMinutes(-2));
            scene().preparation
                    .attach(
                            scene().booking,
                            scene().upload("Peg and hole").id(),
                            scene().noor.id());
            assertThat(scene().preparation.look(scene().booking).booking().state())
                    .isEqualTo(BookingState.CHECKED);
            List<String> before = record();

            for (int look = 0; look < 3; look++) {
                scene().preparation.look(scene().booking);
                assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            }

            assertThat(record()).isEqualTo(before);
        }

        @Test
        void twentyWrongPinsReleaseNothing() {
            scene().choosePins(scene().adaeze);
            scene().awaitsReleaser();
            scene().answer(Part.RELEASER, scene().screen, scene().adaeze);
            for (int i = 0; i < 20; i++) {
                assertThat(signedAtTheScreen("%06d".formatted(111_111 + 7 * i))).isInstanceOf(Signed.Refused.class);
            }
            assertThat(signedAtTheScreen(BenchScene.PIN)).isInstanceOf(Signed.Refused.class);
            assertThat(scene().state()).isEqualTo(BookingState.READY);
            assertThat(scene().sheet().signatures()).hasSize(2);

            // what is tried during a pause is not compared, so this was the first pause, of a minute
            Sheet sheet = scene().sheet();
            clock.moveBy(Duration.ofMinutes(2));
            assertThat(signedAtTheScreen(BenchScene.PIN)).isInstanceOf(Signed.Released.class);
            assertThat(releases.of(scene().booking)).hasSize(1);
            assertThat(releases.of(scene().booking).get(0).sheet()).isEqualTo(sheet.id());
        }

        private Signed signedAtTheScreen(String pin) {
            Sheet sheet = scene().sheet();
            Step.Sign step = is(
                    Step.Sign.class,
                    scene().desk.step(sheet, Part.RELEASER, scene().screen.id()));
            return scene().desk
                    .sign(new SignPart(
                            sheet.id(),
                            Part.RELEASER,
                            scene().screen.id(),
                            scene().adaeze.id(),
                            pin,
                            step.statement().sha256()));
        }

        @Test
        void keepsWhatWasSignedWhenTheSessionEndsBetweenTwoSignatures() {
            scene().ready();
            WebUser noor = signedIn(scene().noor);
            answer(noor, Part.OPERATOR, scene().noor);
            noor.submit(bench(noor).form(path() + "/signatures"));
            WebUser mateo = signedIn(scene().mateo);
            answer(mateo, Part.ATTENDANT, scene().mateo);
            WebPage.WebForm signature = bench(mateo).form(path() + "/signatures");
            assertThat(scene().sheet().signatures()).hasSize(1);

            assertThat(jdbc.sql("delete from spring_session where principal_name = :login")
                            .param("login", scene().mateo.login())
                            .update())
                    .isPositive();
            WebPage answer = mateo.submit(signature);

            assertThat(answer.status()).isIn(302, 303, 403);
            assertThat(scene().sheet().signatures()).hasSize(1);
            assertThat(scene().state()).isEqualTo(BookingState.READY);

            mateo.signIn(scene().mateo.login(), BenchScene.PASSWORD);
            mateo.submit(bench(mateo).form(path() + "/signatures"));
            assertThat(scene().sheet().signatures()).hasSize(2);
            scene().releasedBy(scene().adaeze);
        }

        private WebUser signedIn(Person person) {
            return WebUser.atPort(port).signIn(person.login(), BenchScene.PASSWORD);
        }

        private String path() {
            return "/bench/" + scene().cell;
        }

        private WebPage bench(WebUser user) {
            return user.get(path());
        }

        private void answer(WebUser user, Part part, Person person) {
            for (Map<String, String> values : scene().good(part, person.id()).values()) {
                WebPage.WebForm form = bench(user).form(path() + "/answers");
                for (Map.Entry<String, String> value : values.entrySet()) {
                    form = form.with(value.getKey(), value.getValue());
                }
                user.submit(form);
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
