package org.standclear.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.io.StringReader;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.people.Criteria;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.Run;
import org.standclear.run.Runs;
import org.standclear.signoff.Part;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.DemoOnPostgres;
import org.standclear.testing.web.PageCases;

/** A run of the demo's week as evidence: a criterion, the link, the confirmation, the table. */
class GradingEvidenceIT {

    abstract static class Cases extends PageCases {

        @Autowired
        Courses courses;

        @Autowired
        People everybody;

        @Autowired
        Criteria criteria;

        @Autowired
        Bookings bookings;

        @Autowired
        Runs runs;

        @Autowired
        JdbcClient jdbc;

        private Person ines = somebody();
        private Person noor = somebody();
        private @Nullable Run run;
        private @Nullable Assignment assignment;

        private static Person somebody() {
            return new Person(PersonId.next(), "", "", Set.of(), false);
        }

        /** Any run of an assignment that is closed out, and whoever ran it. */
        @BeforeEach
        void aRun() {
            ines = everybody.byLogin("ines").orElseThrow();
            UUID booking = jdbc.sql("""
                    select b.id from bookings b join runs r on r.booking_id = b.id
                    where b.state = 'CLOSED_OUT' and b.assignment_id is not null order by b.starts_at, b.id
                    fetch first 1 row only""").query(UUID.class).single();
            run = runs.of(new BookingId(booking)).orElseThrow();
            Booking found = bookings.find(new BookingId(booking)).orElseThrow();
            noor = everybody.find(found.operator()).orElseThrow();
            assignment = courses.assignmentOf(noor.id(), Objects.requireNonNull(found.assignment()))
                    .orElseThrow();
        }

        private Run run() {
            return Objects.requireNonNull(run);
        }

        private Assignment assignment() {
            return Objects.requireNonNull(assignment);
        }

        private String page() {
            return "/courses/" + assignment().course() + "/assignments/"
                    + assignment().id();
        }

        private MockHttpServletResponse act(String path, Person by, String... values) {
            var request = post(path).param("formToken", UUID.randomUUID().toString());
            for (int i = 0; i < values.length; i += 2) {
                request = request.param(values[i], values[i + 1]);
            }
            return send(request, by);
        }

        private String criterion(String words, String points) {
            assertThat(location(act(page() + "/criteria", ines, "words", words, "points", points)))
                    .isEqualTo(page());
            return criteria.of(assignment().id()).stream()
                    .filter(one -> one.words().equals(words))
                    .findFirst()
                    .orElseThrow()
                    .id()
                    .toString();
        }

        @Test
        void whoRanLinksAnInstructorConfirmsAndTheTableSaysBoth() throws Exception {
            String words = "The plate lies flat " + UUID.randomUUID();
            String id = criterion(words, "4");
            String evidence = "/runs/" + run().id() + "/evidence";
            assertThat(page(get(evidence), noor)
                            .select("select[name=criterion] option")
                            .eachText())
                    .contains(words + " (4 points)");
            assertThat(act(evidence, noor, "criterion", "no id").getStatus()).isEqualTo(422);
            Person stranger = everybody.byLogin("wren").orElseThrow();
            assertThat(run().involves(stranger.id())).isFalse();
            assertThat(act(evidence, stranger, "criterion", id).getStatus()).isEqualTo(404);

            location(act(evidence, noor, "criterion", id));
            assertThat(act(evidence, noor, "criterion", id).getStatus())
                    .as("once")
                    .isEqualTo(422);
            assertThat(page(get(evidence), noor).text())
                    .contains(words, "not confirmed yet")
                    .doesNotContain("Confirm ");
            assertThat(line(words).get("confirmed by")).isEmpty();
            assertThat(act(evidence + "/" + id + "/confirm", noor).getStatus()).isEqualTo(403);
            location(act(evidence + "/" + id + "/confirm", ines));

            CSVRecord line = line(words);
            assertThat(line.get("student")).isEqualTo(noor.printedName());
            assertThat(line.get("assignment")).isEqualTo(assignment().title());
            assertThat(line.get("points")).isEqualTo("4");
            assertThat(line.get("linked by")).isEqualTo(noor.printedName());
            assertThat(line.get("confirmed by")).isEqualTo("Ines Quarryvale");
            assertThat(line.get("closed out")).isNotEmpty();
            howItCameOut(line, page(get(evidence), noor));
            assertThat(act(evidence + "/" + id + "/remove", noor).getStatus())
                    .as("confirmed")
                    .isEqualTo(422);
            location(act(evidence + "/" + id + "/take-back", ines));
            location(act(evidence + "/" + id + "/remove", noor));
            assertThat(page(get(evidence), noor).select("#linked ~ ul").text()).doesNotContain(words);
        }

        @Test
        void keepsAShortListOfCriteriaPerAssignment() {
            String words = "Released within " + UUID.randomUUID();
            String id = criterion(words, "");
            assertThat(act(page() + "/criteria", ines, "words", words.toUpperCase(Locale.ROOT))
                            .getStatus())
                    .as("twice")
                    .isEqualTo(422);
            MockHttpServletResponse wrong = act(page() + "/criteria", ines, "words", "New one", "points", "many");
            assertThat(wrong.getStatus()).isEqualTo(422);
            assertThat(document(wrong).select("input[name=words]").val()).isEqualTo("New one");
            assertThat(act(page() + "/criteria", ines, "words", " ", "points", "4")
                            .getStatus())
                    .isEqualTo(422);
            assertThat(act(page() + "/criteria", ines, "words", "x", "points", "1001")
                            .getStatus())
                    .isEqualTo(422);
            location(act(page() + "/criteria/" + id + "/retire", ines));
            assertThat(page(get(page()), ines).text()).doesNotContain(words);
            assertThat(criteria.find(UUID.fromString(id)).orElseThrow().inUse()).isFalse();
            assertThat(act(page() + "/criteria/" + UUID.randomUUID() + "/retire", ines)
                            .getStatus())
                    .isEqualTo(404);
            assertThat(send(get(page()), noor).getStatus()).isEqualTo(403);
        }

        @Test
        void saysWhatTheAssignmentNeedsOfACell() {
            assertThat(page(get(page()), ines)
                            .select("select[name=tool] option")
                            .eachText())
                    .contains("any tool");
            assertThat(act(page() + "/needs", ines, "tool", "X-99").getStatus()).isEqualTo(422);
            location(act(page() + "/needs", ines, "tool", "G-02"));
            assertThat(page(get(page()), ines).text()).contains("These cells have it now: Avocet");
            location(act(page() + "/needs", ines, "tool", ""));
            assertThat(page(get(page()), ines).text()).contains("Every cell will do.");
        }

        /** What the table and the page say beside what the run log has. */
        private void howItCameOut(CSVRecord line, Document page) {
            String attendant = run().inPart(Part.ATTENDANT).stream()
                    .map(everybody::printedName)
                    .collect(Collectors.joining(", then "));
            String sha256 = jdbc.sql("select sha256 from program_revisions where id = ?")
                    .param(run().revision().value())
                    .query(String.class)
                    .single();
            assertThat(line.get("how it ended")).isEqualTo("closed out");
            assertThat(line.get("passes")).isEqualTo(String.valueOf(run().passes()));
            assertThat(line.get("stops")).isEqualTo(String.valueOf(run().stops()));
            assertThat(line.get("run ended")).isNotEmpty();
            assertThat(line.get("e-stop attendant")).isEqualTo(attendant).isNotEmpty();
            assertThat(line.get("program sha-256")).isEqualTo(sha256).hasSize(64);
            assertThat(page.select("#came ~ dl").text()).contains(attendant, sha256, "closed out, " + run().passes());
        }

        @Test
        void neutralisesNamesThatBeginLikeAFormula() throws Exception {
            String words = "=1+1 " + UUID.randomUUID();
            String id = criterion(words, "");
            PersonId attendant = run().inPart(Part.ATTENDANT).get(0);
            String name = everybody.printedName(attendant);
            rename(attendant, "@SUM(A1) Ironbark");
            try {
                location(act("/runs/" + run().id() + "/evidence", noor, "criterion", id));
                CSVRecord line = line("'" + words);
                assertThat(line.get("e-stop attendant")).startsWith("'@SUM(A1) Ironbark");
                location(act("/runs/" + run().id() + "/evidence/" + id + "/remove", noor));
            } finally {
                rename(attendant, name);
            }
        }

        /** Around the form, which would refuse such a name: it may come from a roster of years ago. */
        private void rename(PersonId person, String name) {
            jdbc.sql("update people set printed_name = ? where id = ?")
                    .params(name, person.value())
                    .update();
        }

        /** The line of the table for that criterion. */
        private CSVRecord line(String words) throws Exception {
            String text = send(get("/attendance/" + assignment().course() + "/evidence.csv"), ines)
                    .getContentAsString();
            List<CSVRecord> lines = CSVParser.parse(
                            new StringReader(text),
                            CSVFormat.RFC4180
                                    .builder()
                                    .setHeader()
                                    .setSkipHeaderRecord(true)
                                    .get())
                    .getRecords();
            return lines.stream()
                    .filter(one -> one.get("criterion").equals(words))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Nested
    @DemoOnH2
    class OnH2Engine extends Cases {}

    @Nested
    @DemoOnPostgres
    class OnPostgresEngine extends Cases {}
}
