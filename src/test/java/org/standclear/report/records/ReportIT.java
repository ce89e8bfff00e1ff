package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;
import org.standclear.cell.CellStates;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.report.ExceptionRule;
import org.standclear.report.SignoffQualities;
import org.standclear.report.SignoffQuality;
import org.standclear.report.TermReport;
import org.standclear.report.TermReports;
import org.standclear.report.TermSpan;
import org.standclear.report.WeekExceptions;
import org.standclear.report.WeekExceptions.Line;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What reports and exceptions say of a run that was really made; tests share the database, so they look at what is added. */
class ReportIT {

    abstract static class Cases extends BenchCases {

        private static final LocalDate MONDAY = LocalDate.of(2026, 3, 9);
        private static final TermSpan DAY = new TermSpan(LocalDate.of(2026, 3, 11), LocalDate.of(2026, 3, 11));

        @Autowired
        TermReports reports;

        @Autowired
        WeekExceptions exceptions;

        @Autowired
        ExceptionRows rows;

        @Autowired
        CellStates states;

        @Autowired
        SignoffQualities qualities;

        @Autowired
        RunLog log;

        @Autowired
        Runs runs;

        @Autowired
        MockMvc mvc;

        private Person ines;

        @BeforeEach
        void anInstructor() {
            ines = scene().lab.person("Tomasz Fennimore-Ash", Role.INSTRUCTOR);
        }

        /** Started, stopped after four minutes, finished; closed out an hour later. */
        private Run aStoppedRun() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            clock.moveBy(Duration.ofMinutes(4));
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().mateo.id());
            log.finishStopped(
                    scene().booking, 2, ResetCause.PART, scene().adaeze.id());
            clock.moveBy(Duration.ofMinutes(61));
            for (CloseOutItem item : CloseOutItem.values()) {
                log.closeOut(
                        scene().booking,
                        item,
                        item.choices(true).get(0).value(),
                        scene().adaeze.id());
            }
            return runs.of(scene().booking).orElseThrow();
        }

        @Test
        void countsWhatARunAdds() {
            TermReport before = reports.of(DAY);
            aStoppedRun();
            TermReport after = reports.of(DAY);

            assertThat(after.exposure().starts()).isEqualTo(before.exposure().starts() + 1);
            assertThat(after.exposure().runs()).isEqualTo(before.exposure().runs() + 1);
            assertThat(after.exposure().attendedMinutes())
                    .isEqualTo(before.exposure().attendedMinutes() + 4);
            assertThat(count(after, "PROTECTIVE_STOP")).isEqualTo(count(before, "PROTECTIVE_STOP") + 1);
            assertThat(count(after, "E_STOP_PRESS")).isEqualTo(count(before, "E_STOP_PRESS"));
            assertThat(after.cells())
                    .filteredOn(cell -> cell.starts() == 1 && cell.testsPassed() == 1)
                    .allSatisfy(cell -> assertThat(cell.untestedDays()).isZero());
            TermSpan later = new TermSpan(LocalDate.of(2026, 3, 12), LocalDate.of(2026, 3, 12));
            assertThat(reports.of(later).exposure().starts()).isZero();
            assertThat(DAY.before().last()).isEqualTo(LocalDate.of(2026, 3, 10));
        }

        private static int count(TermReport report, String code) {
            return report.counts().stream()
                    .filter(one -> one.code().equals(code))
                    .findFirst()
                    .orElseThrow()
                    .events();
        }

        @Test
        void findsALateCloseOutFromTheThresholdOn() {
            String run = aStoppedRun().id().toString();
            assertThat(found("not-closed-out", 61)).contains(run);
            assertThat(found("not-closed-out", 62)).doesNotContain(run);
        }

        @Test
        void findsWhatEveryOtherRuleIsAbout() {
            Release release = scene().released();
            Instant now = clock.instant();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            states.tagOut(scene().cell, scene().hemi.id(), "cable chafe");
            clock.moveBy(Duration.ofHours(50));
            assertThat(now).isBefore(clock.instant());
            assertThat(found("signed-quickly", 1)).contains(release.id().toString());
            assertThat(found("signed-quickly", 0)).isEmpty();
            assertThat(found("released-at-once", 5)).contains(release.id().toString());
            assertThat(found("lapsed-often", 1)).contains(scene().booking.toString());
            assertThat(found("lapsed-often", 40)).isEmpty();
            assertThat(found("held-long", 48)).contains(tag());
            assertThat(found("held-long", 51)).doesNotContain(tag());
        }

        private String tag() {
            return states.tags(scene().cell).get(0).id().toString();
        }

        @Test
        void drawsOneInTwenty() {
            long drawn = 0;
            for (int i = 0; i < 20_000; i++) {
                drawn += ExceptionRows.drawn(new java.util.UUID(i, 7), 20) ? 1 : 0;
            }
            // 1000 expected, standard deviation 31 (binomial): six of them on either side
            assertThat(drawn).isBetween(815L, 1185L);
        }

        private List<String> found(String code, int threshold) {
            Days days = new Days(
                    LabId.of("00000000-0000-7000-8000-000000000001"),
                    Instant.parse("2026-03-09T00:00:00Z"),
                    Instant.parse("2026-03-16T00:00:00Z"),
                    MONDAY,
                    MONDAY.plusDays(7));
            ExceptionQueries.Query rule = ExceptionQueries.ALL.stream()
                    .filter(one -> one.code().equals(code))
                    .findFirst()
                    .orElseThrow();
            return rows.of(rule, threshold, days, clock.instant()).stream()
                    .map(one -> one.id().toString())
                    .toList();
        }

        @Test
        void asksNoRuleThatIsSwitchedOff() {
            scene().released();
            exceptions.change("signed-quickly", false, 30, "the clock of this test stands still", ines.id());
            assertThat(exceptions.week(MONDAY).lines())
                    .noneMatch(line -> line.rule().equals("signed-quickly") && line.read() == null);
            exceptions.change("signed-quickly", true, 30, "asked again", ines.id());
            assertThat(exceptions.rules())
                    .filteredOn(rule -> rule.code().equals("signed-quickly"))
                    .allMatch(ExceptionRule::active);
            assertThat(exceptions.week(MONDAY).lines()).hasSizeLessThanOrEqualTo(WeekExceptions.MOST);
        }

        @Test
        void refusesAChangeWithoutReasonOrNumber() {
            assertThat(exceptions.change("waived", true, 0, "why", ines.id()))
                    .isInstanceOf(WeekExceptions.Changed.Refused.class);
            assertThat(exceptions.change("waived", true, 1, " ", ines.id()))
                    .isInstanceOf(WeekExceptions.Changed.Refused.class);
            assertThat(exceptions.change("no-such-rule", true, 1, "why", ines.id()))
                    .isInstanceOf(WeekExceptions.Changed.Refused.class);
        }

        @Test
        void signsTheLinesThatWereShown() {
            aStoppedRun();
            WeekExceptions.Week week = exceptions.week(MONDAY);
            assertThat(week.unread()).isPositive();
            assertThat(exceptions.sign(MONDAY, "another hash", "", ines.id()))
                    .isInstanceOf(WeekExceptions.Signed.Refused.class);

            assertThat(exceptions.sign(MONDAY, week.sha256(), "Talk to both.", ines.id()))
                    .isEqualTo(new WeekExceptions.Signed.Kept((int) week.unread()));

            List<Line> read = exceptions.week(MONDAY).lines().stream()
                    .filter(line -> line.read() != null)
                    .toList();
            assertThat(read).hasSizeGreaterThanOrEqualTo((int) week.unread());
            assertThat(read)
                    .anySatisfy(line -> assertThat(
                                    Objects.requireNonNull(line.read()).remark())
                            .isEqualTo("Talk to both."));
        }

        @Test
        void looksAtListsWithoutLookingAtPeople() {
            SignoffQuality before = qualities.week(MONDAY);
            scene().released();
            SignoffQuality after = qualities.week(MONDAY);
            assertThat(after.lists()).isEqualTo(before.lists() + 1);
            assertThat(after.seconds()).isSorted();
        }

        @Test
        void printsARunWithAndWithoutNames() throws Exception {
            String run = aStoppedRun().id().toString();
            String named = text(get("/report/runs/" + run + "/run.pdf"));
            assertThat(named)
                    .contains("Noor Candlewick", "Mateo Ironbark", "Adaeze Lanternby", "protective stop", "SHA-256");
            String without = text(get("/report/runs/" + run + "/run.pdf?names=without"));
            assertThat(without)
                    .contains("person 1", "protective stop", "left out")
                    .doesNotContain("Noor", "Candlewick", "Mateo", "Adaeze", "Peg and plate");
        }

        @Test
        void printsATermAndItsTable() throws Exception {
            aStoppedRun();
            String term = text(get("/report/term.pdf?first=2026-03-11&last=2026-03-11"));
            assertThat(term).contains("protective stops", "95 % limits", "Fairness of use", "Corrective actions");
            String csv = new String(get("/report/term.csv?first=2026-03-11&last=2026-03-11"), StandardCharsets.UTF_8);
            try (CSVParser parsed = CSVFormat.RFC4180.parse(new InputStreamReader(
                    new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8))) {
                assertThat(parsed.getRecords())
                        .hasSizeGreaterThan(15)
                        .allSatisfy(row -> assertThat(row.size()).isEqualTo(8));
            }
            assertThat(send("/report/term.pdf?first=2026-03-11&last=2026-03-10").getStatus())
                    .isEqualTo(404);
            assertThat(send("/report?first=2026-03-11&last=2026-03-10").getStatus())
                    .isEqualTo(422);
        }

        private static String text(byte[] pdf) throws IOException {
            try (var document = Loader.loadPDF(pdf)) {
                return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            }
        }

        private byte[] get(String path) throws Exception {
            MockHttpServletResponse response = send(path);
            assertThat(response.getStatus()).as(path).isEqualTo(200);
            return response.getContentAsByteArray();
        }

        private MockHttpServletResponse send(String path) throws Exception {
            SignedInPerson me = new SignedInPerson(ines.id(), ines.login(), ines.printedName(), ines.roles(), null);
            return mvc.perform(MockMvcRequestBuilders.get(path).with(SecurityMockMvcRequestPostProcessors.user(me)))
                    .andReturn()
                    .getResponse();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
