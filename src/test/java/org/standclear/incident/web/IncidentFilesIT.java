package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The list as a table, read back by a library: every incident once, what is counted, and nobody's words or name. */
class IncidentFilesIT {

    abstract static class Cases extends IncidentPageCases {

        private List<CSVRecord> table(String query) throws Exception {
            MockHttpServletResponse answer = send(ines, get("/incidents.csv" + query));
            assertThat(answer.getStatus()).isEqualTo(200);
            assertThat(answer.getContentType()).startsWith("text/csv");
            assertThat(answer.getContentAsString()).doesNotContain("The hand was", "The bit met", "Hemi", "Noor");
            CSVFormat format = CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get();
            String lines = answer.getContentAsString().replaceFirst("^\uFEFF", "");
            return format.parse(new StringReader(lines)).getRecords();
        }

        @Test
        void hasALineForEachIncidentOfTheCell() throws Exception {
            running();
            Incident miss = now(reported(IncidentClass.NEAR_MISS));
            Incident contact = now(reported(IncidentClass.CONTACT));
            done(reports.fill(
                    contact.id(), IncidentClass.CONTACT, FORM, scene().hemi.id()));

            List<CSVRecord> lines = table("?cell=" + scene().cell);
            assertThat(lines).hasSize(2);
            CSVRecord line = lines.stream()
                    .filter(one -> one.get("number").equals(String.valueOf(contact.number())))
                    .findFirst()
                    .orElseThrow();
            assertThat(line.get("class")).isEqualTo("contact");
            assertThat(line.get("actual")).isEqualTo("damage");
            assertThat(line.get("foreseeable")).isEqualTo("treatment");
            assertThat(line.get("cell_held")).isEqualTo("true");
            assertThat(line.get("form_done_at")).isNotEmpty();
            assertThat(table("?cell=" + scene().cell + "&kind=near-miss"))
                    .extracting(one -> one.get("number"))
                    .containsExactly(String.valueOf(miss.number()));
            assertThat(see(ines, "/incidents?cell=" + scene().cell)
                            .select("a[href^=/incidents.csv]")
                            .attr("href"))
                    .contains("cell=" + scene().cell);
        }

        @Test
        void goesOnAfterAPartOfTheList() throws Exception {
            for (int i = 0; i < 203; i++) {
                reported(IncidentClass.OBSERVATION);
            }
            List<CSVRecord> lines = table("?cell=" + scene().cell);
            assertThat(lines).extracting(one -> one.get("number")).hasSize(203).doesNotHaveDuplicates();
        }

        @Test
        void isNotForStudentsAndKnowsItsFilters() throws Exception {
            assertThat(statusOf(scene().noor, "/incidents.csv")).isEqualTo(403);
            assertThat(statusOf(ines, "/incidents.csv?kind=nonsense")).isEqualTo(404);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
