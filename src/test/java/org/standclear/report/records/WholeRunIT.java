package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.IncidentCases;
import org.standclear.incident.IncidentClass;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.report.OwnRecords;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** Everything about one run on one page, from the booking to the questions, and the same on paper. */
class WholeRunIT {

    /** In the order in which they are read. */
    private static final List<String> PARTS = List.of(
            "The run",
            "Booking",
            "Program",
            "Answers of the check and limits",
            "Findings",
            "Waivers",
            "Signatures in the order of signing",
            "Releases",
            "Starts, stops, resets, passes, close-out",
            "What lapsed",
            "Answers that disagreed",
            "Incidents",
            "Corrective actions",
            "Restrictions, holds and tags on the cell",
            "Questions to the record",
            "Entries of the lab’s record",
            "Signatures, word for word");

    abstract static class Cases extends IncidentCases {

        @Autowired
        OwnRecords records;

        @Autowired
        MockMvc mvc;

        private IncidentId incident = IncidentId.next();

        /** Stopped, reported with a hold and an action, closed out, and asked about. */
        private Run aRunWithAStory() {
            Run run = running();
            clock.moveBy(Duration.ofMinutes(4));
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().mateo.id());
            log.finishStopped(
                    scene().booking, 2, ResetCause.PART, scene().adaeze.id());
            incident = reported(IncidentClass.PROPERTY_DAMAGE);
            reviewed(incident, ControlLevel.ENGINEERING);
            for (CloseOutItem item : CloseOutItem.values()) {
                log.closeOut(
                        scene().booking,
                        item,
                        item.choices(true).get(0).value(),
                        scene().adaeze.id());
            }
            String line = records.of(scene().noor.id()).get(0).lines().get(0);
            records.ask(scene().noor.id(), line, "Were there not three passes?");
            return run;
        }

        private MockHttpServletResponse get(String path, Person who) throws Exception {
            return mvc.perform(MockMvcRequestBuilders.get(path).with(Accounts.as(who)))
                    .andReturn()
                    .getResponse();
        }

        private Document page(Run run) throws Exception {
            MockHttpServletResponse response = get("/report/runs/" + run.id(), rosalind);
            assertThat(response.getStatus()).isEqualTo(200);
            return Jsoup.parse(response.getContentAsString());
        }

        @Test
        void showsEveryPartInItsOrder() throws Exception {
            Run run = aRunWithAStory();
            Document page = page(run);

            assertThat(page.select("main h2").eachText()).isEqualTo(PARTS);
            assertThat(text(page, "Booking"))
                    .contains("Noor Candlewick", scene().booking.toString());
            assertThat(text(page, "Answers of the check and limits")).contains("within limits", "250 mm/s", "50 %");
            assertThat(text(page, "Signatures in the order of signing"))
                    .containsSubsequence("session list", "bench list", "releaser");
            assertThat(text(page, "Starts, stops, resets, passes, close-out"))
                    .containsSubsequence("started", "protective stop", "finished", "close-out");
            assertThat(text(page, "Incidents")).contains("property damage", "The hand was in the cell");
            assertThat(page.select("a[href=/incidents/" + incident + "]")).isNotEmpty();
            assertThat(text(page, "Corrective actions")).contains("Put a cover on it", "Hemi Coppergate", "open");
            assertThat(text(page, "Restrictions, holds and tags on the cell")).contains("hold", "is reviewed");
            assertThat(text(page, "Questions to the record")).contains("Were there not three passes?", "no answer yet");
            assertThat(text(page, "Entries of the lab’s record"))
                    .contains("signoff.released", "incident.reported", "incident.cell-held");
        }

        private static String text(Document page, String title) {
            return page.select("section:has(> h2:containsOwn(" + title + "))").text();
        }

        @Test
        void isThereForStaffAndTheReviewerOnlyAndLedToFromTheLists() throws Exception {
            Run run = aRunWithAStory();
            String path = "/report/runs/" + run.id();
            assertThat(get(path, scene().noor).getStatus()).isEqualTo(403);
            assertThat(get(path, scene().hemi).getStatus()).isEqualTo(200);
            assertThat(get("/report/runs/" + scene().booking, rosalind).getStatus())
                    .isEqualTo(404);
            for (String list : new String[] {
                "/runs?cell=" + scene().cell,
                "/incidents?cell=" + scene().cell,
                "/incidents/" + incident,
                "/runs/" + run.id()
            }) {
                assertThat(Jsoup.parse(get(list, rosalind).getContentAsString()).select("a[href=" + path + "]"))
                        .as(list)
                        .isNotEmpty();
            }
            assertThat(get("/runs/" + run.id(), scene().noor).getContentAsString())
                    .doesNotContain(path + "\"");
        }

        @Test
        void printsAllOfItAndWithoutNamesNobody() throws Exception {
            Run run = aRunWithAStory();
            String path = "/report/runs/" + run.id() + "/run.pdf";

            assertThat(pdf(path, rosalind))
                    .contains(
                            "Corrective actions",
                            "Put a cover on it",
                            "Were there not three passes?",
                            "Noor Candlewick")
                    .contains("Findings", "is reviewed", ": reported");
            assertThat(pdf(path + "?names=without", rosalind))
                    .contains("Corrective actions", "property damage", "left out", "person 1")
                    .doesNotContain(
                            "Noor", "Mateo", "Adaeze", "Hemi", "Ines", "Put a cover", "three passes", "hand was");
            assertThat(pdf(path, scene().noor))
                    .as("what others reported and did is not a student's to read")
                    .contains("Findings")
                    .doesNotContain("Put a cover on it", "Corrective actions", "is reviewed");
        }

        private String pdf(String path, Person who) throws Exception {
            MockHttpServletResponse response = get(path, who);
            assertThat(response.getStatus()).isEqualTo(200);
            try (var document = Loader.loadPDF(response.getContentAsByteArray())) {
                return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
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
