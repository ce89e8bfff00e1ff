package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.security.Role;
import org.standclear.program.Phrasebooks;
import org.standclear.program.Programs;
import org.standclear.program.SampleProgram;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** A mended program says on its answer and on its page what changed since the revision before. */
class RevisionDifferenceIT {

    abstract static class Cases extends PageCases {

        @Autowired
        CellRegister register;

        @Autowired
        Programs programs;

        @Autowired
        Phrasebooks phrasebooks;

        private String name = "";
        private CellId cell = CellId.next();
        private Person student = new Person(PersonId.next(), "", "", Set.of(), true);

        @BeforeEach
        void aCellAndAStudent() {
            name = SampleCell.name();
            cell = SampleCell.inForce(register, name);
            student = person(Role.STUDENT);
        }

        private MockMultipartHttpServletRequestBuilder form(String path, String text) {
            MockMultipartHttpServletRequestBuilder form = multipart(path);
            form.file(new MockMultipartFile("upload", "", "application/octet-stream", new byte[0]));
            form.param("formToken", UUID.randomUUID().toString()).param("pasted", text);
            List<ProgramId> known = programs.latestOf(student.id()).stream()
                    .map(revision -> revision.program())
                    .toList();
            form.param("program", known.isEmpty() ? "" : known.get(0).toString());
            return form;
        }

        /** The answer's page for the next revision of the student's one program. */
        private Document checked(String text) {
            MockMultipartHttpServletRequestBuilder form = form("/check", text);
            form.param("cell", cell.toString());
            return page(get(location(send(form, student))), student);
        }

        private Document program() {
            return page(
                    get("/programs/" + programs.latestOf(student.id()).get(0).program()), student);
        }

        @Test
        void aFirstRevisionHasNothingToCompareWith() {
            assertThat(checked(SampleProgram.sheet("Peg")).select("#difference"))
                    .isEmpty();
            assertThat(program().text()).doesNotContain("Since revision");
        }

        @Test
        void theAnswerOfAMendedProgramSaysWhatChanged() {
            String sheet = SampleProgram.sheet("Peg");
            checked(sheet.replace("override-percent: 50", "override-percent: 60"));
            Document answer = checked(sheet.replace("y: 200, z: 20", "y: 200, z: 32")
                    .replace("plate-above\n    speed-mm-s: 120", "plate-above\n    speed-mm-s: 180"));

            assertThat(answer.select("#difference").text()).isEqualTo("Since revision 1: 3 changes");
            assertThat(answer.select("section[aria-labelledby=difference] .changes li")
                            .eachText())
                    .containsExactly(
                            "Declared override-percent 60 % to 50 %",
                            "Point tray moved 12 mm up", "Step 9 speed 120 to 180 mm/s");
            assertThat(answer.select(".changes a").attr("href")).isEqualTo("#plan-step-9");
            assertThat(answer.select("#plan-step-9")).hasSize(1);
            assertThat(answer.select(".changes li").get(2).attr("data-step")).isEqualTo("9");
            String before =
                    answer.select("section[aria-labelledby=difference] p a").attr("href");
            assertThat(answer.select("section[aria-labelledby=difference] p a").text())
                    .isEqualTo("outside limits on version 7");
            assertThat(page(get(before), student).text()).contains("revision 1", "outside");
        }

        @Test
        void theProgramsPageSaysItRevisionByRevision() {
            String sheet = SampleProgram.sheet("Peg");
            checked(sheet);
            checked(sheet + "# a remark\n");
            assertThat(send(form("/programs/upload", sheet + "  - wait-s: 1\n"), student)
                            .getStatus())
                    .isEqualTo(302);

            Document page = program();
            assertThat(page.select("article h4").eachText())
                    .containsExactly("Since revision 2: one change", "Since revision 1: no change found");
            assertThat(page.select("article").get(0).select(".changes").text())
                    .isEqualTo("Step 10 inserted: wait of 1 s");
            assertThat(page.select("article").get(1).text()).contains("Both mean the same to the check");
            assertThat(page.select("article").get(2).text()).doesNotContain("Since revision");
        }

        @Test
        void marksOfOtherPeopleAreWrittenOut() {
            String sheet = SampleProgram.sheet("Peg");
            checked(sheet);
            Document answer = checked(sheet.replace("do: grip", "do: \"<b>grip</b>\""));

            assertThat(answer.select(".changes").text()).isEqualTo("Step 4 does <b>grip</b>, before grip");
            assertThat(answer.select(".changes b")).isEmpty();
        }

        @Test
        void whatIsNotUnderstoodIsNotSaidToBeTheSame() throws IOException {
            phrasebooks.keep(new Phrasebooks.NewVersion(
                    cell, book(), "first draft", person(Role.TECHNICIAN).id(), 0));
            String spoken = Files.readString(Path.of("seed-data/programs/plain-words/peg-and-plate.txt"));
            checked(spoken);
            Document answer = checked(spoken.replace("hand: let-go", "hop about"));

            assertThat(answer.select("section[aria-labelledby=difference]").text())
                    .contains("removed: action let-go", "Lines that the check does not understand are not compared.");
        }

        private static String book() throws IOException {
            return Files.readString(Path.of("seed-data/phrasebooks/plain-words.yaml"));
        }

        @Test
        void aFileTooLongForWordsSaysSo() {
            StringBuilder sheet = new StringBuilder(SampleProgram.sheet("Long"));
            while (sheet.length() <= 256 * 1024) {
                sheet.append(
                        "  - straight: plate\n    speed-mm-s: 60\n  - straight: plate-above\n    speed-mm-s: 80\n");
            }
            checked(SampleProgram.sheet("Long"));
            assertThat(checked(sheet.toString())
                            .select("section[aria-labelledby=difference]")
                            .text())
                    .contains("Since revision 1: not compared", "too long to be compared here");
        }

        @Test
        void manyChangesAreCounted() {
            StringBuilder sheet = new StringBuilder(SampleProgram.sheet("Many"));
            checked(sheet.toString());
            for (int i = 0; i < 45; i++) {
                sheet.append("  - wait-s: 0.").append(i + 1).append('\n');
            }
            Document answer = checked(sheet.toString());
            assertThat(answer.select("#difference").text()).isEqualTo("Since revision 1: 45 changes");
            assertThat(answer.select(".changes li")).hasSize(40);
            assertThat(answer.text()).contains("5 more changes are not listed.");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
