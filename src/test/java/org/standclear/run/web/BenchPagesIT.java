package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.Person;
import org.standclear.platform.access.AccessLog;
import org.standclear.run.RunEvent;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The screens at a cell as people see them, through HTTP. */
class BenchPagesIT {

    abstract static class Cases extends BenchPageCases {

        @Autowired
        AccessLog looks;

        @Test
        void leadsThroughTheWholeRunOnTheSharedScreen() throws Exception {
            Person screen = scene().screen;
            scene().attached();
            scene().choosePins(scene().noor, scene().mateo, scene().adaeze);
            Map<String, String> pin = Map.of("pin", BenchScene.PIN);
            assertThat(see(screen).select("h1").text()).isEqualTo("Who is with you?");
            answerAll(screen, Part.OPERATOR, scene().noor);
            accepted(submit(screen, see(screen), "/signatures", pin));
            answerAll(screen, Part.ATTENDANT, scene().mateo);
            accepted(submit(screen, see(screen), "/signatures", pin));
            assertThat(scene().state()).isEqualTo(BookingState.READY);

            Document first = see(screen);
            assertThat(first.select("h1").text()).isEqualTo("Which program is loaded?");
            assertThat(first.select(".kicker").text()).isEqualTo("Item 1 of 9, Noor Candlewick");
            assertThat(first.text())
                    .containsPattern("In full power this program would reach [1-9][0-9]* mm/s, at the"
                            + " declared override; faster if that is not set either\\.");
            answerAll(screen, Part.OPERATOR, scene().noor);
            accepted(submit(screen, see(screen), "/signatures", pin));
            answerAll(screen, Part.ATTENDANT, scene().mateo);
            accepted(submit(screen, see(screen), "/signatures", pin));
            answerAll(screen, Part.RELEASER, scene().adaeze);
            Document release = see(screen);
            assertThat(release.select("h1").text()).isEqualTo("Release this run?");
            accepted(submit(
                    screen,
                    release,
                    "/signatures",
                    Map.of("pin", BenchScene.PIN, "signer", scene().adaeze.id().toString())));

            Document released = see(screen);
            assertThat(released.select("h1").text()).isEqualTo("Released until 10:19");
            assertThat(released.select(".release .code").text()).hasSize(4);
            accepted(submit(screen, released, "/start", Map.of()));
            Document running = see(screen);
            assertThat(running.select("main > .stack .stoplog button").eachText())
                    .containsExactly(
                            "Log: the e-stop was pressed this screen stops nothing", "Log: the arm stopped itself");
            accepted(submit(screen, running, "/passes", Map.of()));
            accepted(submit(screen, see(screen), "/stop", Map.of("kind", "press")));
            assertThat(see(screen).select("h1").text()).isEqualTo("Stopped. Find the cause first.");
            accepted(submit(
                    screen,
                    see(screen),
                    "/reset",
                    Map.of(
                            "cause",
                            "precaution",
                            "pin",
                            BenchScene.PIN,
                            "signer",
                            scene().adaeze.id().toString())));
            assertThat(see(screen).select("h1").text()).isEqualTo("Which program is loaded?");
            assertThat(see(screen).text()).contains("E-stop pressed.");

            accepted(submit(
                    scene().adaeze, see(scene().adaeze), "/holds", Map.of("reason", "odd noise", "kind", "hold")));
            assertThat(application
                            .getBean(Cells.class)
                            .find(scene().cell)
                            .orElseThrow()
                            .state())
                    .isEqualTo(CellState.HELD);
        }

        @Test
        void finishesAStoppedRunOnlyWithItsCause() throws Exception {
            scene().released();
            accepted(submit(scene().noor, see(scene().noor), "/start", Map.of()));
            accepted(submit(scene().noor, see(scene().noor), "/stop", Map.of("kind", "arm")));
            Document stopped = see(scene().noor);
            assertThat(stopped.select("form[action$=/finish] input[name=why][required]")
                            .eachAttr("value"))
                    .isNotEmpty()
                    .doesNotContain("precaution");

            MockHttpServletResponse without = submit(scene().noor, stopped, "/finish", Map.of("passes", "1"));
            assertThat(without.getStatus()).isEqualTo(422);
            assertThat(page(without).select("details[open] #why .error")).hasSize(1);

            accepted(submit(scene().noor, see(scene().noor), "/finish", Map.of("passes", "1", "why", "contact-limit")));
            for (String tap : List.of("disabled", "out", "as-declared", "parked")) {
                accepted(submit(scene().noor, see(scene().noor), "/close-out", Map.of("choice", tap)));
            }
            assertThat(see(scene().noor)
                            .select("form[action$=/close-out] button[name=choice]")
                            .eachAttr("value"))
                    .containsExactly("protective-stop", "near-miss", "fault");
        }

        @Test
        void closesOutByOneTapEach() throws Exception {
            Release release = scene().released();
            accepted(submit(scene().noor, see(scene().noor), "/start", Map.of()));
            MockHttpServletResponse unread =
                    submit(scene().noor, see(scene().noor), "/finish", Map.of("passes", "many"));
            assertThat(unread.getStatus()).isEqualTo(422);
            assertThat(page(unread).select("#passes-error").text()).startsWith("How many passes");
            accepted(submit(scene().noor, see(scene().noor), "/finish", Map.of("passes", "5")));
            for (String tap : List.of("disabled", "out", "as-declared", "parked", "nothing")) {
                Document page = see(scene().mateo);
                assertThat(page.select("form[action$=/close-out] button[value=" + tap + "]"))
                        .hasSize(1);
                accepted(submit(scene().mateo, page, "/close-out", Map.of("choice", tap)));
            }
            assertThat(scene().state()).isEqualTo(BookingState.CLOSED_OUT);
            assertThat(release.code()).isNotEmpty();

            String run = runs.of(scene().booking).orElseThrow().id().toString();
            Document page = see(scene().adaeze, "/runs/" + run);
            assertThat(page.select("h1").text())
                    .startsWith("Noor Candlewick on Avocet")
                    .contains("5 passes, no stop");
            assertThat(page.text())
                    .contains(scene().revision().sha256())
                    .contains("50 %, read twice")
                    .contains("Adaeze Lanternby, releaser")
                    .contains("In the lab's record");
            assertThat(see(scene().mateo, "/runs").select("table a")).hasSize(1);
            assertThat(send(scene().lab.student("Yuki Halfmoon"), get("/runs/" + run))
                            .getStatus())
                    .isEqualTo(404);
            accepted(submit(
                    scene().noor,
                    see(scene().noor, "/runs/" + run),
                    "/corrections",
                    Map.of(
                            "event",
                            runs.events(scene().booking).get(0).id().toString(),
                            "words",
                            "Four passes with parts.")));
            assertThat(see(scene().noor, "/runs/" + run).text()).contains("Four passes with parts.");
        }

        @Test
        void keepsWhoOfThoseWithoutAPartLooksAtARun() throws Exception {
            scene().released();
            accepted(submit(scene().noor, see(scene().noor), "/start", Map.of()));
            String run = runs.of(scene().booking).orElseThrow().id().toString();
            Person tal = scene().lab.technician("Tal Emberfield");
            see(scene().mateo, "/runs/" + run);
            see(tal, "/runs/" + run);
            assertThat(looks.latest(null, scene().noor.id(), null, 20))
                    .filteredOn(look -> look.subject().equals(run))
                    .extracting(AccessLog.Look::viewer)
                    .containsExactly(tal.id());
        }

        @Test
        void neverShowsTheReleaserWhatTheOperatorRead() throws Exception {
            scene().ready();
            scene().good(Part.OPERATOR, scene().noor.id())
                    .forEach((item, values) -> scene().enter(Part.OPERATOR, scene().noor, item, values));
            assertNothingGivenAway(see(scene().adaeze));
            scene().sign(Part.OPERATOR, scene().noor);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            Document asked = see(scene().adaeze);
            assertThat(asked.select("h1").text()).isEqualTo("Power mode and override on the display?");
            assertNothingGivenAway(asked);
            assertNothingGivenAway(see(scene().screen));
            Document desk = see(scene().adaeze, "/desk");
            // other tests' cells stand on the desk as well: only what it says of this one counts
            desk.select("li, tr").removeIf(row -> !row.text().contains(cellName()));
            assertNothingGivenAway(desk);
        }

        private String cellName() {
            return application
                    .getBean(Cells.class)
                    .find(scene().cell)
                    .orElseThrow()
                    .name();
        }

        private void assertNothingGivenAway(Document page) {
            // what checks of other bookings found stands on the desk too, in words like a display's
            page.select("section[aria-labelledby=rechecks]").remove();
            String html = page.outerHtml();
            assertThat(page.text().replace(cellName(), "")).doesNotContain("50 %", "50%", "%)");
            assertThat(page.select("input[name=override]").eachAttr("value")).allMatch(String::isEmpty);
            assertThat(page.select("input[checked]")).isEmpty();
            assertThat(html).doesNotContain("reduced, ").doesNotContain("level 3");
        }

        @Test
        void logsAStopWithoutTokenWithAForeignTokenAndOnceForARepeatedOne() throws Exception {
            String path = "/bench/" + scene().cell + "/stop";
            assertThat(send(scene().noor, post(path)).getStatus()).isEqualTo(302);
            assertThat(send(
                                    scene().noor,
                                    post(path).param("formToken", "nonsense").param("kind", "?"))
                            .getStatus())
                    .isEqualTo(302);
            String token = UUID.randomUUID().toString();
            send(scene().noor, post(path).param("formToken", token));
            send(scene().noor, post(path).param("formToken", token));
            assertThat(runs.recentStops(scene().cell, 10))
                    .hasSize(3)
                    .allSatisfy(event -> assertThat(event.kind()).isEqualTo(RunEvent.Kind.E_STOP_PRESS));
        }

        @Test
        void saysWhichAnswerDisagreesAndAsksAgain() throws Exception {
            scene().ready();
            submit(
                    scene().noor,
                    see(scene().noor),
                    "/answers",
                    Map.of("fingerprint", scene().revision().fingerprintEnd()));
            MockHttpServletResponse bad =
                    submit(scene().noor, see(scene().noor), "/answers", Map.of("power", "reduced", "override", "NaN"));
            assertThat(bad.getStatus()).isEqualTo(422);
            assertThat(page(bad).select("#override-error").text()).startsWith("A number");
            assertThat(page(bad).select("input[name=override]").attr("value")).isEqualTo("NaN");
            assertThat(page(bad).select("input[value=reduced]").hasAttr("checked"))
                    .isTrue();

            MockHttpServletResponse disagrees =
                    submit(scene().noor, see(scene().noor), "/answers", Map.of("power", "full", "override", "50"));
            assertThat(disagrees.getStatus()).isEqualTo(302);
            assertThat(see(scene().noor).select("h1").text()).isEqualTo("Power mode and override on the display?");
            assertThat(signed.disagreements(scene().booking)).hasSize(1);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
