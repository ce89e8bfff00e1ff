package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.BookingState;
import org.standclear.booking.SecondLab;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.Person;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.run.RunLog;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * Anyone may stop (the house rules, 1): somebody of another lab who stands at a cell logs a stop there, in the record of the
 * cell's lab, and sees nothing else of that lab.
 */
class StrangerStopIT {

    abstract static class Cases extends BenchPageCases {

        @Autowired
        RunLog log;

        @Autowired
        Cells cells;

        @Autowired
        Labs labs;

        private Person stranger() {
            return new SecondLab(application, "America/Halifax").person(Role.STUDENT);
        }

        private void start() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
        }

        @Test
        void logsAStopOfARunAtACellOfAnotherLab() throws Exception {
            start();
            Person stranger = stranger();

            Document bench = see(stranger);
            MockHttpServletResponse stopped = submit(stranger, bench, "/stop", Map.of("kind", "press"));

            assertThat(stopped.getRedirectedUrl()).isEqualTo("/bench/" + scene().cell);
            assertThat(scene().state()).isEqualTo(BookingState.STOPPED);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
            assertThat(jdbc.sql("""
                            select count(*) from trail_entries
                            where kind = 'run.e-stop-press' and actor = :actor and lab = :lab""")
                            .param("actor", stranger.id().value())
                            .param("lab", labs.theLab().id().value())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(1);
            assertThat(see(stranger).text()).contains("Whoever stands at the cell may log a stop");
        }

        @Test
        void seesTheStopAndNothingElseOfThatLab() throws Exception {
            start();
            Person stranger = stranger();

            Document bench = see(stranger);
            assertThat(bench.text())
                    .contains("belongs to another lab than yours")
                    .doesNotContain("Noor", "Mateo");
            assertThat(bench.select("form").eachAttr("action"))
                    .allMatch(action -> action.matches("/bench/[^/]+/(stop|holds)|/sign-out"));
            for (String path : new String[] {"/cells/" + scene().cell, "/bookings/" + scene().booking}) {
                assertThat(send(stranger, get(path)).getStatus()).as(path).isEqualTo(404);
            }
            for (String act : new String[] {"start", "reset", "answers", "signatures", "close-out", "withdraw"}) {
                MockHttpServletResponse refused = send(
                        stranger,
                        post("/bench/" + scene().cell + "/" + act)
                                .param("booking", scene().booking.toString())
                                .param("formToken", UUID.randomUUID().toString()));
                assertThat(refused.getStatus()).as(act).isBetween(400, 499);
            }
            assertThat(scene().state()).isEqualTo(BookingState.RUNNING);
        }

        @Test
        void tagsACellOfAnotherLabOutAtTheCellsOwnAddressToo() throws Exception {
            Person stranger = stranger();
            String address = "/cells/" + scene().cell + "/stop";

            Document form = see(stranger, address);
            assertThat(form.text()).contains("You have no part in this cell’s lab");
            assertThat(form.select("main a").eachAttr("href")).containsExactly("/bench/" + scene().cell);
            assertThat(form.select("input[name=kind]").eachAttr("value")).containsExactly("out-of-service", "hold");

            MockHttpServletResponse test =
                    submit(stranger, form, "/stop", Map.of("kind", "test", "reason", "I try it"));
            assertThat(test.getStatus()).isEqualTo(422);
            MockHttpServletResponse without = submit(stranger, form, "/stop", Map.of("kind", "hold"));
            assertThat(without.getStatus()).isEqualTo(422);
            assertThat(page(without).select("#reason-error")).hasSize(1);

            MockHttpServletResponse tagged =
                    submit(stranger, form, "/stop", Map.of("kind", "out-of-service", "reason", "the cable is worn"));
            assertThat(tagged.getRedirectedUrl()).isEqualTo("/bench/" + scene().cell);
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.OUT_OF_SERVICE);
            assertThat(jdbc.sql("""
                            select count(*) from trail_entries
                            where kind = 'cell.tagged-out' and actor = :actor and lab = :lab""")
                            .param("actor", stranger.id().value())
                            .param("lab", labs.theLab().id().value())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(1);
            assertThat(see(stranger).text()).contains("Whoever stands at the cell may log a stop");
        }

        @Test
        void holdsACellOfAnotherLabAndHasToSayWhy() throws Exception {
            Person stranger = stranger();

            MockHttpServletResponse without = submit(stranger, see(stranger), "/holds", Map.of("kind", "hold"));
            assertThat(without.getStatus()).isEqualTo(422);
            assertThat(page(without).select("#reason-error")).hasSize(1);

            accepted(submit(stranger, see(stranger), "/holds", Map.of("kind", "hold", "reason", "odd noise")));
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
