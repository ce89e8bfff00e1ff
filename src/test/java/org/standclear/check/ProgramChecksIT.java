package org.standclear.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.check.ProgramChecks.Outcome;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.people.PeopleRegister;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.Role;
import org.standclear.program.ProgramUploads;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.program.SampleProgram;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** Answers are kept per revision, cell version and course limits, once each, and never change. */
class ProgramChecksIT {

    abstract static class Cases {

        @Autowired
        ProgramChecks checks;

        @Autowired
        ProgramUploads uploads;

        @Autowired
        CellRegister register;

        @Autowired
        PeopleRegister people;

        @Autowired
        CourseRegister courses;

        @Autowired
        JdbcClient jdbc;

        private String name = "";
        private CellId cell = CellId.next();
        private PersonId author = PersonId.next();

        @BeforeEach
        void aCellAndAnAuthor() {
            name = SampleCell.name();
            cell = SampleCell.inForce(register, name);
            author = Accounts.add(people, "Noor Candlewick", Role.STUDENT).id();
        }

        @Test
        void answersAndKeepsTheAnswer() {
            StoredAnswer answer = answer(revision(SampleProgram.sheet("Peg")), null);

            assertThat(answer.verdict()).isEqualTo(StoredAnswer.Verdict.WITHIN);
            assertThat(answer.cellVersion()).isEqualTo(7);
            assertThat(answer.json()).contains("\"answer-format\": 1").contains(name);
            assertThat(checks.find(answer.id())).contains(answer);
            assertThat(checks.answersFor(answer.revision())).containsExactly(answer);
            assertThat(answer(answer.revision(), null)).isEqualTo(answer);
            BenchFacts bench = answer.bench();
            assertThat(bench.power()).isEqualTo("reduced");
            assertThat(bench.overridePercent()).isEqualTo(50.0);
            assertThat(bench.overrideLimitPercent()).isEqualTo(50.0);
            assertThat(bench.tool()).isEqualTo("G-02");
            assertThat(bench.loop()).isEqualTo("5");
            // G-02 weighs 0.42 kg in the cell file, the part 0.06 kg in the sheet
            assertThat(bench.payloadKg()).isCloseTo(0.48, Offset.offset(1e-12));
            assertThat(bench.fullPowerPeakMmS()).isGreaterThan(bench.heldPeakMmS());
        }

        @Test
        void theSmallerOfCellAndCourseCounts() {
            RevisionId revision = revision(SampleProgram.sheet("Peg"));
            CourseId course = course(30.0);

            StoredAnswer answer = answer(revision, course);

            assertThat(answer.verdict()).isEqualTo(StoredAnswer.Verdict.OUTSIDE);
            assertThat(answer.bench().overrideLimitPercent()).isEqualTo(30.0);
            assertThat(checks.details(answer.id()).orElseThrow().bounds())
                    .contains(new AnswerDetails.Bound("override", "the course's limit counts; the cell's is 50 %"));
            assertThat(answer(revision, null).verdict()).isEqualTo(StoredAnswer.Verdict.WITHIN);
            assertThat(checks.briefFor(revision)).hasSize(2);
        }

        @Test
        void aNewCellVersionAsksForANewAnswer() {
            RevisionId revision = revision(SampleProgram.sheet("Peg"));
            StoredAnswer before = answer(revision, null);
            String tighter = SampleCell.file(name, 8).replace("payload-kg: 1.0", "payload-kg: 0.3");
            register.approve(SampleCell.proposed(register, cell, tighter), PersonId.next(), 7);

            StoredAnswer after = answer(revision, null);

            assertThat(after.cellVersion()).isEqualTo(8);
            assertThat(after.verdict()).isEqualTo(StoredAnswer.Verdict.OUTSIDE);
            assertThat(checks.find(before.id())).contains(before);
        }

        @Test
        void equalQuestionsAtTheSameTimeHaveOneAnswer() {
            RevisionId revision = revision(SampleProgram.sheet("Peg"));

            List<CompletableFuture<StoredAnswer>> asked = IntStream.range(0, 8)
                    .mapToObj(i -> CompletableFuture.supplyAsync(() -> answer(revision, null)))
                    .toList();

            assertThat(asked.stream().map(CompletableFuture::join).distinct()).hasSize(1);
            assertThat(checks.briefFor(revision)).hasSize(1);
        }

        @Test
        void whatTheFormDeclaresIsDeclaredAndTheFileIsFound() {
            RevisionId revision = revision(SampleProgram.sheet("Peg"), "override-percent: 40\n");

            StoredAnswer answer = answer(revision, null);

            assertThat(answer.verdict()).isEqualTo(StoredAnswer.Verdict.OUTSIDE);
            assertThat(checks.details(answer.id()).orElseThrow().columns())
                    .contains(new AnswerDetails.Column("Override", "40 %", "50 % (line 5)", false));
        }

        @Test
        void aProgramThatDoesNotFitTheArmIsUnreadableAndNothingIsKept() {
            RevisionId revision = revision(SampleProgram.sheet("Peg").replace(", elbow: right}", "}"));

            Outcome outcome = checks.check(revision, cell, null, author);

            assertThat(outcome)
                    .isInstanceOfSatisfying(
                            Outcome.Unreadable.class,
                            unreadable -> assertThat(unreadable.says())
                                    .startsWith("Line ")
                                    .contains("elbow"));
            assertThat(checks.briefFor(revision)).isEmpty();
        }

        @Test
        void theDatabaseRefusesToChangeAnAnswer() {
            StoredAnswer answer = answer(revision(SampleProgram.sheet("Peg")), null);

            assertThatThrownBy(() -> jdbc.sql("update check_answers set verdict = 'OUTSIDE' where id = :id")
                            .param("id", answer.id().value())
                            .update())
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("never changed");
        }

        private StoredAnswer answer(RevisionId revision, @Nullable CourseId course) {
            Outcome outcome = checks.check(revision, cell, course, author);
            if (outcome instanceof Outcome.Answered answered) {
                return answered.answer();
            }
            throw new AssertionError(outcome.toString());
        }

        private RevisionId revision(String sheet) {
            return revision(sheet, null);
        }

        private RevisionId revision(String sheet, @Nullable String declaration) {
            ProgramUploads.Outcome outcome = uploads.upload(new UploadProgram(
                    author, null, null, "peg.yaml", sheet.getBytes(StandardCharsets.UTF_8), declaration));
            if (outcome instanceof Uploaded uploaded) {
                return uploaded.revision().id();
            }
            throw new AssertionError(outcome.toString());
        }

        private CourseId course(double override) {
            String code = "RBT " + UUID.randomUUID().toString().substring(0, 6);
            CourseId course =
                    ((CourseRegister.Outcome.Done<CourseId>) courses.addCourse(code, "Robot Programming", null)).id();
            var limits = new NewLimits(course, override, null, "slower for beginners", 1, author);
            assertThat(courses.changeLimits(limits)).isInstanceOf(CourseRegister.Outcome.Done.class);
            return course;
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
