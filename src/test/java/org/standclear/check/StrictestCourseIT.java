package org.standclear.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.check.ProgramChecks.Outcome;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.people.Courses;
import org.standclear.people.PeopleRegister;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.program.ProgramUploads;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.program.SampleProgram;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** Work for no course is checked under the strictest limits of the courses that the operator takes. */
class StrictestCourseIT {

    abstract static class Cases {

        @Autowired
        ProgramChecks checks;

        @Autowired
        ProgramUploads uploads;

        @Autowired
        CellRegister cells;

        @Autowired
        PeopleRegister people;

        @Autowired
        CourseRegister register;

        @Autowired
        Courses courses;

        private CellId cell = CellId.next();
        private PersonId student = PersonId.next();
        private RevisionId revision = RevisionId.next();

        @BeforeEach
        void aCellAndAStudentWithAProgram() {
            cell = SampleCell.inForce(cells, SampleCell.name());
            student = student();
            byte[] sheet = SampleProgram.sheet("Peg").getBytes(StandardCharsets.UTF_8);
            revision = ((Uploaded) uploads.upload(new UploadProgram(student, null, null, "peg.yaml", sheet, null)))
                    .revision()
                    .id();
        }

        private PersonId student() {
            return Accounts.add(people, "Noor Candlewick", Role.STUDENT).id();
        }

        private String enrolled(double override, @Nullable Double toolSpeed) {
            String code = "RBT " + UUID.randomUUID().toString().substring(0, 6);
            CourseId course = done(register.addCourse(code, "Robot Programming", null));
            done(register.changeLimits(new NewLimits(course, override, toolSpeed, "for beginners", 1, student)));
            SectionId section = done(register.addSection(course, "A", null));
            done(register.enrol(student, section, null));
            SectionId second = done(register.addSection(course, "B", null));
            done(register.enrol(student, second, null));
            return code;
        }

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private StoredAnswer answer(@Nullable CourseId course, PersonId operator) {
            return ((Outcome.Answered) checks.check(revision, cell, course, operator)).answer();
        }

        @Test
        void leavingTheCourseOutGainsNothing() {
            String strict = enrolled(30.0, null);
            enrolled(100.0, null);

            StoredAnswer answer = answer(null, student);

            assertThat(answer.verdict()).isEqualTo(StoredAnswer.Verdict.OUTSIDE);
            assertThat(answer.bench().overrideLimitPercent()).isEqualTo(30.0);
            assertThat(checks.details(answer.id()).orElseThrow().bounds())
                    .contains(new AnswerDetails.Bound(
                            "override",
                            "the course " + strict
                                    + "'s limit counts, the strictest of the operator's courses; the cell's is 50 %"));
        }

        @Test
        void overrideAndToolSpeedEachComeFromTheStrictestCourse() {
            String slowOverride = enrolled(30.0, 240.0);
            String slowTool = enrolled(45.0, 90.0);

            var bounds =
                    checks.details(answer(null, student).id()).orElseThrow().bounds();

            assertThat(bounds).extracting(AnswerDetails.Bound::check).containsExactly("override", "tool-speed");
            assertThat(bounds.get(0).says()).startsWith("the course " + slowOverride + "'s limit counts");
            assertThat(bounds.get(1).says()).startsWith("the course " + slowTool + "'s limit counts");
        }

        @Test
        void theOperatorsCoursesCountNotTheAuthors() {
            PersonId other = student();
            enrolled(30.0, null);

            assertThat(answer(null, other).verdict()).isEqualTo(StoredAnswer.Verdict.WITHIN);
            assertThat(answer(null, student).verdict()).isEqualTo(StoredAnswer.Verdict.OUTSIDE);
            assertThat(checks.briefFor(revision)).hasSize(2);
        }

        @Test
        void theNamedCourseCountsAloneAndALaxOneIsNoStricterThanUsual() {
            String lax = enrolled(80.0, null);
            StoredAnswer usual = answer(null, student);
            assertThat(usual.bench().overrideLimitPercent()).isEqualTo(50.0);
            enrolled(30.0, null);
            CourseId named = courses.takenBy(student).stream()
                    .filter(course -> course.code().equals(lax))
                    .findFirst()
                    .orElseThrow()
                    .id();

            assertThat(courses.takenBy(student)).hasSize(2);
            assertThat(answer(named, student).verdict()).isEqualTo(StoredAnswer.Verdict.WITHIN);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
