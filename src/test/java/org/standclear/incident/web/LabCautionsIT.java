package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.booking.labs.LabRegister;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** Whom to call is said for the lab of the thing that is shown, also to people who chose another one of theirs. */
class LabCautionsIT {

    private static final String PASSWORD = "heron walks on ice 27";

    /** As {@link SecondLab} has it. */
    private static final String FAR_NUMBER = "555 0909";

    abstract static class Cases {

        @LocalServerPort
        int port;

        @Autowired
        ApplicationContext application;

        @Autowired
        LabRegister register;

        @Autowired
        IncidentReports reports;

        @Autowired
        Labs labs;

        private SampleLab first;
        private SecondLab second;
        private WebUser wren;
        private String here;
        private String there;

        @BeforeEach
        void somebodyOfTwoLabsWhoChoseTheFirst() {
            first = new SampleLab(application);
            second = new SecondLab(application, "America/Halifax");
            Person person = first.person("Wren Saltmarsh", new Password.Chosen(PASSWORD), Role.TECHNICIAN);
            register.appoint(second.id(), person.login(), Set.of(Role.TECHNICIAN), PersonId.next());
            wren = WebUser.atPort(port).signIn(person.login(), PASSWORD);
            here = labs.theLab().name();
            there = labs.find(second.id()).orElseThrow().name();
        }

        private Document page(String path) {
            WebPage page = wren.get(path);
            assertThat(page.status()).as(path).isEqualTo(200);
            return page.document();
        }

        @Test
        void theBenchOfACellShowsTheNumberOfItsLab() {
            assertThat(page("/bench/" + second.cell()).select("footer .number").text())
                    .isEqualTo(FAR_NUMBER);
            assertThat(page("/bench/" + first.cell(0)).select("footer .number").text())
                    .isEqualTo(labs.theLab().emergencyNumber());
        }

        @Test
        void fromABenchOfTheOtherLabTheReportIsForThatLab() {
            Document bench = page("/bench/" + second.cell());

            Document form =
                    page(bench.select("header a[href^=/incidents/near-miss]").attr("href"));

            assertThat(form.select(".hurt .number").text()).isEqualTo(FAR_NUMBER);
            assertThat(form.select(".hurt").text()).contains(there);
            assertThat(form.select("input[name=cell]").eachAttr("value"))
                    .containsExactly(second.cell().toString());
        }

        @Test
        void theFormNamesItsLabAndLeadsToTheSameFormOfTheOther() {
            for (String path : new String[] {"/incidents/near-miss", "/incidents/report"}) {
                Document form = page(path);
                assertThat(form.select(".hurt").text()).contains(here);
                String other = form.select("main p.muted a[href*=lab=" + second.id() + "]")
                        .attr("href");
                assertThat(other).startsWith(path);

                assertThat(page(other).select(".hurt .number").text()).isEqualTo(FAR_NUMBER);
            }
        }

        @Test
        void aReportForTheOtherLabIsKeptThere() {
            WebPage form = wren.get("/incidents/near-miss?lab=" + second.id());

            WebPage sent = wren.submit(form.form("/incidents/near-miss")
                    .with("cell", second.cell().toString())
                    .with("sentence", "The hand was in the cell.")
                    .with("signed", "yes"));

            Document shown = wren.follow(sent).document();
            assertThat(shown.select(".mark small").text()).isEqualTo(there);
            assertThat(shown.select("h1").text()).contains("Farcell");
        }

        @Test
        void aReceiptIsReadByTheClockOfItsIncidentsLab() {
            Reported reported = second.in(() -> reports.report(Report.brief(
                    second.cell(), IncidentClass.NEAR_MISS, "The hand was in the cell.", new Teller.Anonymous())));
            String receipt = ((Reported.Kept) reported).receipt();

            Document shown = page("/incidents/receipts/" + receipt);

            // 9:00 UTC on 11 March 2026 in Halifax, in summer time since the 8th (tz database)
            assertThat(shown.select(".kicker").text()).contains("06:00");
            assertThat(shown.select("h1").text()).contains("Farcell");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
