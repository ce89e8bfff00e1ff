package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.StatementCount;
import org.standclear.testing.web.Accounts;

/** The page Record on both engines: entries, filters, pages, exports, verify. */
class RecordPageIT {

    abstract static class Cases {

        @Autowired
        MockMvc mvc;

        @Autowired
        PeopleRegister register;

        @Autowired
        Trail trail;

        @Autowired
        Labs labs;

        @Autowired
        PlatformTransactionManager transactions;

        private MockHttpServletResponse as(Role role, MockHttpServletRequestBuilder request) throws Exception {
            return as(Accounts.add(register, "Somebody", role), request);
        }

        private MockHttpServletResponse as(Person person, MockHttpServletRequestBuilder request) throws Exception {
            return mvc.perform(request.with(Accounts.as(person))).andReturn().getResponse();
        }

        private Document page(MockHttpServletResponse response) throws Exception {
            assertThat(response.getStatus()).isEqualTo(200);
            return Jsoup.parse(response.getContentAsString());
        }

        private Document record(String query) throws Exception {
            return page(as(Role.REVIEWER, get("/record" + query)));
        }

        private LabId lab() {
            return labs.theLab().id();
        }

        private void append(TrailEntry entry) {
            new TransactionTemplate(transactions).executeWithoutResult(status -> trail.append(entry));
        }

        private String appendAbout(String words, String kind, @Nullable PersonId actor) {
            String subject = UUID.randomUUID().toString();
            append(TrailEntry.of(lab(), kind, subject, actor, words).with("cell", "cell-of-" + subject));
            return subject;
        }

        @Test
        void showsEntriesWithWhatTheySay() throws Exception {
            String subject = appendAbout("Noor <b>booked</b> Avocet.", "test.shown", null);

            Document page = record("?about=" + subject);
            assertThat(page.title()).startsWith("Record");
            assertThat(page.select("tbody tr")).hasSize(1);
            assertThat(page.select("tbody tr").text())
                    .contains("Noor <b>booked</b> Avocet.", "the application", "test.shown", "cell-of-" + subject);
            assertThat(page.select("tbody b")).isEmpty();
        }

        @Test
        void narrowsByKindPersonThingAndDay() throws Exception {
            PersonId noor = PersonId.next();
            String subject = appendAbout("Done by her.", "test.narrowed", noor);
            append(TrailEntry.of(lab(), "test.narrowed", noor, null, "Done to her."));
            append(TrailEntry.of(lab(), "test.other", "x", null, "Names her.").with("attendant", noor));

            assertThat(record("?person=" + noor).select("tbody tr")).hasSize(3);
            assertThat(record("?kind=test.narrowed&person=" + noor).select("tbody tr"))
                    .hasSize(2);
            assertThat(record("?kind=test.&person=" + noor).select("tbody tr")).hasSize(3);
            assertThat(record("?kind=test_narrowed&person=" + noor).select("tbody tr"))
                    .isEmpty();
            assertThat(record("?about=cell-of-" + subject).select("tbody tr")).hasSize(1);
            assertThat(record("?day=2026-03-11&about=" + subject).select("tbody tr"))
                    .hasSize(1);
            assertThat(record("?day=2026-03-12&about=" + subject).text()).contains("No entry fits");
        }

        @Test
        void turnsPagesWithoutLosingAnEntry() throws Exception {
            String kind = "test.paged" + UUID.randomUUID();
            for (int i = 1; i <= 101; i++) {
                append(TrailEntry.of(lab(), kind, "p", null, "Number " + i + "."));
            }

            Document first = record("?kind=" + kind);
            assertThat(first.select("tbody tr")).hasSize(50);
            assertThat(first.select("tbody tr:first-child").text()).contains("Number 101.");
            Document second = record(olderThan(first));
            Document third = record(olderThan(second));
            assertThat(second.select("tbody tr:first-child").text()).contains("Number 51.");
            assertThat(third.select("tbody tr")).hasSize(1);
            assertThat(third.select("a[rel=next]")).isEmpty();
        }

        private String olderThan(Document page) {
            String link = page.select("a[rel=next]").attr("href");
            return link.substring(link.indexOf('?'));
        }

        @Test
        void asksForManyPeopleAsForOne() throws Exception {
            Person reader = Accounts.add(register, "Somebody", Role.REVIEWER);
            PersonId wren = Accounts.add(register, "Wren One", Role.STUDENT).id();
            append(TrailEntry.of(lab(), "test.named", "n", wren, "One did it."));
            int one = statements(reader);
            for (int i = 0; i < 20; i++) {
                PersonId other =
                        Accounts.add(register, "Wren " + i, Role.STUDENT).id();
                append(TrailEntry.of(lab(), "test.named", "n", other, "Another did it."));
            }
            assertThat(statements(reader)).isEqualTo(one);
        }

        private int statements(Person reader) throws Exception {
            return StatementCount.ofLooks(() -> as(reader, get("/record")));
        }

        @Test
        void saysWhichFilterCannotBeRead() throws Exception {
            var response = as(Role.REVIEWER, get("/record?day=2026-02-30&person=nobody"));

            assertThat(response.getStatus()).isEqualTo(422);
            Document page = Jsoup.parse(response.getContentAsString());
            assertThat(page.select("[role=alert]").text()).contains("2026-02-30", "not the id of a person");
            assertThat(as(Role.REVIEWER, get("/record?before=soon")).getStatus())
                    .isEqualTo(400);
        }

        @Test
        void handsOutCsvThatNoTableProgramRuns() throws Exception {
            String subject = appendAbout("=HYPERLINK(\"http://x\"), said Noor", "test.csv", null);

            var csv = as(Role.ADMINISTRATOR, get("/record/entries.csv?about=" + subject));
            assertThat(csv.getContentType()).startsWith("text/csv");
            assertThat(csv.getHeader("Content-Disposition")).contains("record.csv");
            assertThat(csv.getContentAsString().lines())
                    .hasSize(2)
                    .last()
                    .asString()
                    .contains("\"'=HYPERLINK(\"\"http://x\"\"), said Noor\"");
        }

        @Test
        void handsOutLinesFromWhichTheHashIsRecomputed() throws Exception {
            String subject = appendAbout("Done ä.", "test.lines", PersonId.next());

            String line = as(Role.TECHNICIAN, get("/record/entries.jsonl?about=" + subject))
                    .getContentAsString();
            assertThat(line)
                    .contains("\"words\":\"Done ä.\"", "\"facts\":\"{\\\"cell\\\":\\\"cell-of-" + subject, "\"hash\":");
            assertThat(line.lines()).hasSize(1);
        }

        @Test
        void verifiesAndComparesWithAHashThatWasKept() throws Exception {
            append(TrailEntry.of(lab(), "test.last", "z", null, "The last one."));
            assertThat(page(as(Role.INSTRUCTOR, get("/record/verify"))).select("form[action=/record/verify]"))
                    .hasSize(1);
            // adding the account is an entry of its own, so it comes before the record is counted
            Person instructor = Accounts.add(register, "Somebody", Role.INSTRUCTOR);
            var whole = (TrailVerification.Whole) trail.verify(lab());

            Document same = page(as(
                    instructor,
                    post("/record/verify")
                            .with(csrf())
                            .param("entry", "" + whole.entries())
                            .param("hash", whole.lastHash())));
            assertThat(same.select("h1").text()).isEqualTo("The record is whole: " + whole.entries() + " entries");
            assertThat(same.text()).contains(whole.lastHash(), "still has the hash that was written down");

            Document other = page(as(
                    Role.INSTRUCTOR,
                    post("/record/verify").with(csrf()).param("entry", "999999").param("hash", whole.lastHash())));
            assertThat(other.text()).contains("There is no entry 999999");
            var wrong = as(Role.INSTRUCTOR, post("/record/verify").with(csrf()).param("entry", "one"));
            assertThat(wrong.getStatus()).isEqualTo(422);
        }

        @Test
        void isClosedToStudentsAndBenchScreensAndStrangers() throws Exception {
            for (String path :
                    new String[] {"/record", "/record/entries.csv", "/record/entries.jsonl", "/record/verify"}) {
                assertThat(as(Role.STUDENT, get(path)).getStatus()).isEqualTo(403);
                assertThat(as(Role.BENCH, get(path)).getStatus()).isEqualTo(403);
                assertThat(mvc.perform(get(path)).andReturn().getResponse().getStatus())
                        .isEqualTo(302);
            }
            assertThat(as(Role.STUDENT, post("/record/verify").with(csrf())).getStatus())
                    .isEqualTo(403);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
