package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.BookingState;
import org.standclear.people.Person;
import org.standclear.signoff.Part;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What the screens at a cell answer, show and hold back, through HTTP. */
class BenchPageAnswersIT {

    abstract static class Cases extends BenchPageCases {

        @Test
        void refusesTheReleaseWithTheReasonAndWhoCanMendIt() throws Exception {
            scene().awaitsReleaser();
            scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
            Document page = see(scene().adaeze);
            application
                    .getBean(org.standclear.cell.CellStates.class)
                    .tagOut(scene().cell, scene().mateo.id(), "cable chafe");
            MockHttpServletResponse refused = submit(scene().adaeze, page, "/signatures", Map.of());
            assertThat(refused.getStatus()).as("the list is void").isEqualTo(302);
            assertThat(see(scene().adaeze).text())
                    .contains("out of service: cable chafe")
                    .contains("Adaeze Lanternby");
            assertThat(scene().state()).isEqualTo(BookingState.READY);
        }

        @Test
        void showsALapseWithItsReason() throws Exception {
            scene().released();
            Document before = see(scene().noor);
            clock.moveBy(Duration.ofMinutes(10));
            MockHttpServletResponse late = submit(scene().noor, before, "/start", Map.of());
            assertThat(late.getStatus()).isEqualTo(422);
            assertThat(page(late).select(".errors").text()).contains("Not started within 10 min.");
            assertThat(see(scene().noor).text()).contains("The release lapsed at 10:19: Not started within 10 min.");
        }

        @Test
        void answersThePulseOnlyWhenSomethingChanged() throws Exception {
            scene().attached();
            String pulse = see(scene().noor).select("main").attr("hx-get");
            assertThat(send(scene().noor, get(pulse)).getStatus()).isEqualTo(204);
            scene().answerAndSign(Part.ATTENDANT, scene().mateo);
            assertThat(send(scene().noor, get(pulse)).getStatus()).isEqualTo(200);
        }

        @Test
        void showsOthersNoNamesButLetsThemStop() throws Exception {
            scene().ready();
            Person yuki = scene().lab.student("Yuki Halfmoon");
            Document page = see(yuki);
            assertThat(page.text())
                    .doesNotContain("Noor")
                    .doesNotContain("Mateo")
                    .contains("Call");
            assertThat(page.select("form[action$=/stop]")).hasSize(1);
            assertThat(page.select("form[action$=/answers]")).isEmpty();
        }

        @Test
        void attachesOnlyOwnProgramsToOwnBookings() throws Exception {
            String path = "/bookings/" + scene().booking + "/program";
            assertThat(send(scene().mateo, get(path)).getStatus()).isEqualTo(404);
            Document empty = see(scene().noor, path);
            assertThat(empty.select("h1").text()).isEqualTo("No program is attached to the booking yet.");
            var program = scene().upload("peg and plate");
            accepted(submit(
                    scene().noor,
                    see(scene().noor, path),
                    "/program",
                    Map.of("revision", program.id().toString())));
            assertThat(see(scene().noor, path).select("h1").text()).startsWith("Within Avocet");
            var tooFast = scene().uploadTooFast();
            accepted(submit(
                    scene().noor,
                    see(scene().noor, path),
                    "/program",
                    Map.of("revision", tooFast.id().toString())));
            Document outside = see(scene().noor, path);
            assertThat(outside.select("h1").text()).startsWith("Outside Avocet");
            assertThat(outside.select("header.answer").text())
                    .contains("The declared override is 60 %; 50 % is the limit");
            assertThat(outside.select("a[href^=/checks/]")).hasSize(1);
            assertThat(see(scene().noor).select("h1").text()).isEqualTo("Not released: the check is not passed.");
            var foreign = scene().uploadBy(scene().mateo, "not hers");
            assertThat(send(
                                    scene().noor,
                                    post(path)
                                            .param(
                                                    "formToken",
                                                    UUID.randomUUID().toString())
                                            .param("revision", foreign.id().toString()))
                            .getStatus())
                    .isEqualTo(404);
        }

        @Test
        void listsOnTheDeskWhatStartsNextAndWhatItWaitsFor() throws Exception {
            scene().ready();
            Document desk = see(scene().adaeze, "/desk");
            assertThat(desk.select("#start-list").text())
                    .contains("Noor Candlewick, e-stop Mateo Ironbark")
                    .contains("The operator signs the bench list.");
            assertThat(desk.select(".kicker").text()).contains("Adaeze Lanternby");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
