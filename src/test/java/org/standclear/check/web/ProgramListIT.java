package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.check.ProgramChecks;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.Role;
import org.standclear.program.ProgramUploads;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.program.SampleProgram;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.StatementCount;
import org.standclear.testing.web.PageCases;

/** A list of programs asks for its authors, answers and cells together, however many it shows. */
class ProgramListIT {

    private static final int MANY = 12;

    /** What was uploaded while the clock stood at its start, the latest first: other tests upload later in their day. */
    private static final String ALL =
            "/programs?whose=all&after=" + MovableClock.START.plusMillis(1) + "_" + new UUID(-1, -1);

    abstract static class Cases extends PageCases {

        @Autowired
        CellRegister register;

        @Autowired
        ProgramUploads uploads;

        @Autowired
        ProgramChecks checks;

        @Test
        void asksForManyProgramsAsForOne() throws Exception {
            Person wren = person(Role.TECHNICIAN);
            checked(wren, cell());
            int one = statements("/programs", wren);
            IntStream.range(1, MANY).forEach(number -> checked(wren, cell()));

            assertThat(page(get("/programs"), wren).select("article")).hasSize(MANY);
            assertThat(statements("/programs", wren)).isEqualTo(one);
        }

        @Test
        void asksForManyAuthorsAsForOne() throws Exception {
            Person wren = person(Role.TECHNICIAN);
            IntStream.range(0, 20).forEach(number -> uploaded(wren));
            int one = statements(ALL, wren);
            List<Person> students =
                    IntStream.range(0, 20).mapToObj(n -> person(Role.STUDENT)).toList();
            students.forEach(this::uploaded);

            assertThat(page(get(ALL), wren).select("article").text())
                    .contains(students.get(0).printedName());
            assertThat(one).isLessThan(20);
            assertThat(statements(ALL, wren)).isEqualTo(one);
        }

        private CellId cell() {
            return SampleCell.inForce(register, SampleCell.name());
        }

        private RevisionId uploaded(Person author) {
            byte[] sheet = SampleProgram.sheet("Peg").getBytes(StandardCharsets.UTF_8);
            var kept = uploads.upload(new UploadProgram(author.id(), null, "Peg", "peg.yaml", sheet, null));
            return ((Uploaded) kept).revision().id();
        }

        private void checked(Person author, CellId cell) {
            assertThat(checks.check(uploaded(author), cell, null, author.id()))
                    .isInstanceOf(ProgramChecks.Outcome.Answered.class);
        }

        private int statements(String path, Person reader) throws Exception {
            return StatementCount.ofLooks(() -> page(get(path), reader));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
