package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.people.Person;
import org.standclear.people.ScreenPlaces;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** A bench screen that stands at a cell shows that bench and acts on no other; one that does not shows all. */
class ScreenAtCellIT {

    @SuppressWarnings("NullAway.Init") // before each test
    abstract static class Cases extends BenchPageCases {

        @Autowired
        ScreenPlaces screens;

        @Autowired
        TrailReader trail;

        @Autowired
        Labs labs;

        private Person marit;
        private CellId other;

        @BeforeEach
        void anotherCell() {
            marit = scene().lab.person("Marit Alderwick", Role.ADMINISTRATOR);
            other = scene().lab.cell(14);
        }

        private String account() {
            return "/people/" + scene().screen.id();
        }

        private MockHttpServletResponse place(String cell) throws Exception {
            return submit(marit, see(marit, account()), "/cell", Map.of("cell", cell));
        }

        private int status(String path) throws Exception {
            return send(scene().screen, get(path)).getStatus();
        }

        @Test
        void showsItsOwnBenchAndNoOther() throws Exception {
            assertThat(see(scene().screen, "/bench/" + other).text()).contains("Nobody is booked here now");

            accepted(place(scene().cell.toString()));

            assertThat(send(scene().screen, get("/bench")).getRedirectedUrl()).isEqualTo("/bench/" + scene().cell);
            assertThat(see(scene().screen).select("main")).hasSize(1);
            assertThat(status("/bench/" + other)).isEqualTo(404);
            assertThat(status("/bench/" + other + "/pulse?stamp=x")).isEqualTo(404);
            for (String act : new String[] {"answers", "signatures", "start", "reset", "close-out", "handover"}) {
                assertThat(send(scene().screen, post("/bench/" + other + "/" + act))
                                .getStatus())
                        .as(act)
                        .isEqualTo(404);
            }
            assertThat(see(scene().noor, "/bench/" + other).text())
                    .as("people look at any bench on their own devices")
                    .contains("Nobody is booked here now");
            assertThat(see(marit, account()).select("dl").text()).contains("Stands at Avocet ");
        }

        @Test
        void showsEveryBenchAgainWhenItStandsAtNone() throws Exception {
            accepted(place(scene().cell.toString()));
            accepted(place(""));

            assertThat(status("/bench")).isEqualTo(200);
            assertThat(status("/bench/" + other)).isEqualTo(200);
            assertThat(see(marit, account()).select("dl").text()).contains("Stands at any cell");
            assertThat(trail.about(labs.theLab().id(), scene().screen.id().toString()))
                    .extracting(RecordedEntry::kind)
                    .filteredOn("people.screen_placed"::equals)
                    .hasSize(2);
        }

        @Test
        void logsAStopOfAnotherCellAllTheSame() throws Exception {
            accepted(place(scene().cell.toString()));

            send(
                    scene().screen,
                    post("/bench/" + other + "/stop")
                            .param("kind", "press")
                            .param("formToken", UUID.randomUUID().toString()));

            assertThat(jdbc.sql("select count(*) from cell_stops where cell_id = :cell")
                            .param("cell", other.value())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(1);
        }

        /** The form names a list, and its address a cell; a list of another cell does not come in by the own address. */
        @Test
        void takesNoAnswerOnAListOfAnotherCell() throws Exception {
            scene().attached();
            accepted(place(other.toString()));
            Map<String, String> mateo = java.util.Objects.requireNonNull(
                    scene().good(Part.OPERATOR, scene().noor.id()).get(1));

            assertThat(scene().enter(Part.OPERATOR, scene().screen, 1, mateo)).isInstanceOf(Entered.MovedOn.class);

            accepted(place(scene().cell.toString()));
            assertThat(scene().enter(Part.OPERATOR, scene().screen, 1, mateo)).isInstanceOf(Entered.Kept.class);
        }

        @Test
        void refusesWhatIsNoCellAndWhoIsNoScreen() throws Exception {
            MockHttpServletResponse nonsense = place("nonsense");
            assertThat(nonsense.getStatus()).isEqualTo(422);
            assertThat(page(nonsense).select("#cell-error").text()).startsWith("Choose one of the lab's cells");
            assertThat(place(UUID.randomUUID().toString()).getStatus()).isEqualTo(422);
            assertThat(screens.cellOf(scene().screen.id())).isEmpty();

            assertThat(see(marit, "/people/" + scene().noor.id()).select("form[action$=/cell]"))
                    .isEmpty();
            MockHttpServletResponse person = send(
                    marit,
                    post("/people/" + scene().noor.id() + "/cell")
                            .param("cell", other.toString())
                            .param("formToken", UUID.randomUUID().toString()));
            assertThat(person.getStatus()).isEqualTo(422);
            assertThat(page(person).text()).contains("Only a bench screen stands at a cell");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
