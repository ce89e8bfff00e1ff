package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.check.AnswerBrief;
import org.standclear.check.ProgramChecks;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.program.SampleProgram;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** A program is checked at home: the form, what it refuses, the answer, and who may see it. */
class CheckPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        CellRegister register;

        @Autowired
        Programs programs;

        @Autowired
        ProgramChecks checks;

        private String name = "";
        private CellId cell = CellId.next();
        private Person student = new Person(PersonId.next(), "", "", Set.of(), true);

        @BeforeEach
        void aCellAndAStudent() {
            name = SampleCell.name();
            cell = SampleCell.inForce(register, name);
            student = person(Role.STUDENT);
        }

        @Test
        void aPastedProgramIsAnsweredInWords() {
            String answer = location(send(pasted(SampleProgram.sheet("Peg <b>& plate")), student));
            Document page = page(get(answer), student);

            assertThat(page.title()).startsWith("Peg <b>& plate on " + name + ": within limits");
            assertThat(page.select("h1").text()).isEqualTo("“Peg <b>& plate” is within " + name + "'s limits");
            assertThat(page.select(".finding").size()).isGreaterThan(10);
            assertThat(page.select(".caution").text())
                    .contains("In full power")
                    .contains("at the declared override of 50 %; faster if that is not set either.")
                    .contains("what somebody typed into the cell file")
                    .contains("not a measurement");
            assertThat(page.select("section[aria-labelledby=columns] tbody tr:contains(Override) td")
                            .eachText())
                    .startsWith("50 % (line 5)");
            assertThat(page.select("section[aria-labelledby=motion] tbody tr")).hasSize(10);
            assertThat(page.select(".source li").get(1).text()).contains("Peg <b>& plate");
            assertThat(page.select("b:containsOwn(plate)")).isEmpty();
        }

        @Test
        void findingsStandWorstFirstWithNumberLimitAndLine() {
            String tooFast = SampleProgram.sheet("Peg")
                    .replace("max-tool-speed-mm-s: 200", "max-tool-speed-mm-s: 900")
                    .replace("speed-mm-s: 120", "speed-mm-s: 900")
                    .replace("power: reduced", "power: full");
            Document page = page(get(location(send(pasted(tooFast), student))), student);

            assertThat(page.select(".answer").attr("data-state")).isEqualTo("outside");
            assertThat(page.select("h1").text()).contains("is outside " + name + "'s limits");
            assertThat(page.select(".finding .state").eachText().get(0)).isEqualTo("outside limits");
            assertThat(page.select(".finding:contains(Tool speed)").text()).contains("of 250 mm/s");
            assertThat(page.select(".source li[data-state=outside] .remark")).isNotEmpty();
        }

        @Test
        void theSameFormSentTwiceAnswersOnce() {
            String token = UUID.randomUUID().toString();

            String first = location(send(pasted(SampleProgram.sheet("Peg"), token), student));
            String second = location(send(pasted(SampleProgram.sheet("Peg"), token), student));

            assertThat(second).isEqualTo(first);
            assertThat(programs.latestOf(student.id())).hasSize(1);
        }

        @Test
        void aMendedProgramIsTheNextRevision() {
            send(pasted(SampleProgram.sheet("Peg")), student);
            Revision first = programs.latestOf(student.id()).get(0);
            var mended = pasted(SampleProgram.sheet("Peg and plate"));
            mended.param("program", first.program().toString());

            send(mended, student);

            assertThat(programs.revisions(first.program())).hasSize(2);
            Document list = page(get("/programs"), student);
            assertThat(list.select("article h2").eachText()).containsExactly("Peg and plate");
            assertThat(list.text()).contains("within limits");
            Document program = page(get("/programs/" + first.program()), student);
            assertThat(program.select("article h3").eachText()).containsExactly("Revision 2", "Revision 1");
        }

        @Test
        void aDeclarationComesByFieldsOrByFile() {
            String sheet = SampleProgram.sheet("Peg").replaceFirst("(?s)declare:.*?points:", "points:");
            var byFields = pasted(sheet);
            byFields.param("power", "reduced")
                    .param("overridePercent", "50")
                    .param("maxToolSpeed", "200")
                    .param("tool", "G-02")
                    .param("partKg", "0.06")
                    .param("loop", "1");
            assertThat(headline(byFields)).contains("within");
            byte[] declaration = "power: reduced\noverride-percent: 50\n".getBytes(StandardCharsets.UTF_8);
            assertThat(headline(pasted(sheet)
                            .file(new MockMultipartFile("declarationFile", "d.yaml", "text/plain", declaration))))
                    .contains("cannot be checked");
        }

        private String headline(MockMultipartHttpServletRequestBuilder request) {
            return page(get(location(send(request, student))), student)
                    .select("h1")
                    .text();
        }

        @Test
        void badInputComesBackWithTheFormAndKeepsNothing() {
            String sheet = SampleProgram.sheet("Peg");
            refused(pasted(""), "upload", "Choose a program file");
            refused(pasted("steps: ["), "pasted", "ine ");
            refused(pasted(sheet.replace("z: 80", "z: .nan")), "pasted", "Line 11");
            refused(pasted(sheet.replace("straight: tray\n", "straight: nowhere\n")), "pasted", "nowhere");
            refused(with(pasted(sheet), "overridePercent", "1e999"), "overridePercent", "plain number");
            refused(with(pasted(sheet), "loop", "-3"), "loop", "whole number");
            refused(with(pasted(sheet), "power", "turbo"), "power", "Choose");
            refused(with(pasted(sheet), "course", UUID.randomUUID().toString()), "course", "your courses");
            refused(with(check("" + UUID.randomUUID(), CellId.next()), "pasted", sheet), "cell", "Choose the cell");
            refused(uploaded(SampleProgram.sheet("Pegé").getBytes(StandardCharsets.ISO_8859_1)), "upload", "UTF-8");
            refused(pasted(sheet.replace("elbow: right", "elbow: up")), "pasted", "Line 11");
            assertThat(programs.latestOf(student.id())).isEmpty();
        }

        @Test
        void aLongProgramIsShownInPart() {
            StringBuilder sheet = new StringBuilder(SampleProgram.sheet("Long"));
            for (int i = 0; i < 5000; i++) {
                sheet.append(
                        "  - straight: plate\n    speed-mm-s: 60\n  - straight: plate-above\n    speed-mm-s: 120\n");
            }
            sheet.append("  - straight: plate\n    speed-mm-s: 180\n  - move: tray-above\n");

            Document page = page(get(location(send(pasted(sheet.toString()), student))), student);

            assertThat(page.select("section[aria-labelledby=motion] tbody tr")).hasSize(300);
            assertThat(page.select("section[aria-labelledby=motion]").text()).contains("more steps are in the answer");
            assertThat(page.select(".source li").size()).isBetween(400, 900);
            assertThat(page.select("section[aria-labelledby=source]").text()).contains("lines are not shown here");
        }

        private static MockMultipartHttpServletRequestBuilder with(
                MockMultipartHttpServletRequestBuilder request, String field, String value) {
            request.param(field, value);
            return request;
        }

        private void refused(MockMultipartHttpServletRequestBuilder request, String field, String says) {
            MockHttpServletResponse response = send(request, student);
            Document form = document(response);
            assertThat(response.getStatus()).as(says).isEqualTo(422);
            assertThat(form.select(".errors").text()).contains(says);
            assertThat(form.select("#" + field)).isNotEmpty();
            assertThat(form.select("#" + field + "-error").text()).contains(says);
        }

        @Test
        void othersSeeNeitherProgramNorAnswer() {
            String answer = location(send(pasted(SampleProgram.sheet("Peg")), student));
            Revision revision = programs.latestOf(student.id()).get(0);
            Person other = person(Role.STUDENT);
            String[] paths = {
                answer,
                answer + "/answer.json",
                "/programs/" + revision.program(),
                "/revisions/" + revision.id() + "/file",
                "/checks/" + UUID.randomUUID(),
                "/checks/nonsense"
            };
            for (String path : paths) {
                assertThat(send(get(path), other).getStatus()).as(path).isEqualTo(404);
            }
            for (int i = 0; i < 4; i++) {
                assertThat(send(get(paths[i]), person(Role.TECHNICIAN)).getStatus())
                        .isEqualTo(200);
                assertThat(send(get(paths[i]), person(Role.ADMINISTRATOR)).getStatus())
                        .isEqualTo(403);
            }
            var theirs = with(
                    pasted(SampleProgram.sheet("Mine")),
                    "program",
                    revision.program().toString());
            assertThat(send(theirs, other).getStatus()).isEqualTo(422);
            assertThat(programs.revisions(revision.program())).hasSize(1);
        }

        @Test
        void theFileComesBackAsTextToSave() {
            byte[] bytes = SampleProgram.bytes("Peg <script>alert(1)</script>");
            send(uploaded(bytes), student);
            Revision revision = programs.latestOf(student.id()).get(0);

            MockHttpServletResponse file = send(get("/revisions/" + revision.id() + "/file"), student);

            assertThat(file.getContentAsByteArray()).isEqualTo(bytes);
            assertThat(file.getContentType()).startsWith("text/plain");
            assertThat(file.getHeader("Content-Disposition"))
                    .startsWith("attachment")
                    .contains("peg");
            assertThat(file.getHeaders("X-Content-Type-Options")).containsOnly("nosniff");
            AnswerBrief answer = checks.briefFor(revision.id()).get(0);
            assertThat(send(get("/checks/" + answer.id() + "/answer.json"), student)
                            .getContentType())
                    .startsWith("application/json");
        }

        @Test
        void anUploadAloneIsKeptAndSaysWhenNothingChanged() {
            String program = location(send(uploadOnly(), student));
            var same = with(uploadOnly(), "program", program.substring("/programs/".length()));

            Document again = page(get(location(send(same, student))), student);

            assertThat(again.select(".notice").text()).contains("Nothing changed");
            assertThat(again.select("article h3")).hasSize(1);
        }

        private static MockMultipartHttpServletRequestBuilder uploadOnly() {
            var request = multipart("/programs/upload").file(none("upload")).file(none("declarationFile"));
            request.param("formToken", UUID.randomUUID().toString()).param("pasted", SampleProgram.sheet("Peg"));
            return request;
        }

        private MockMultipartHttpServletRequestBuilder pasted(String sheet) {
            return pasted(sheet, UUID.randomUUID().toString());
        }

        private MockMultipartHttpServletRequestBuilder pasted(String sheet, String token) {
            return with(check(token, cell).file(none("upload")), "pasted", sheet.replace("\n", "\r\n"));
        }

        private MockMultipartHttpServletRequestBuilder uploaded(byte[] bytes) {
            return check(UUID.randomUUID().toString(), cell)
                    .file(new MockMultipartFile("upload", "C:\\work\\peg.yaml", "text/html", bytes));
        }

        private static MockMultipartHttpServletRequestBuilder check(String token, CellId cell) {
            MockMultipartHttpServletRequestBuilder request = multipart("/check");
            request.param("formToken", token).param("cell", cell.toString());
            return request;
        }

        private static MockMultipartFile none(String field) {
            return new MockMultipartFile(field, "", "application/octet-stream", new byte[0]);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
