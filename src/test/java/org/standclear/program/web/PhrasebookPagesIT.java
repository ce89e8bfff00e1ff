package org.standclear.program.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.program.Phrasebooks;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** A cell's phrasebook is tried, kept in versions, and used by the check. */
class PhrasebookPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        CellRegister register;

        @Autowired
        Phrasebooks phrasebooks;

        @Autowired
        JdbcClient jdbc;

        private CellId cell = CellId.next();
        private String where = "";

        @BeforeEach
        void aCell() {
            cell = SampleCell.inForce(register, SampleCell.name());
            where = "/cells/" + cell + "/phrasebook";
        }

        private static String book() throws IOException {
            return Files.readString(Path.of("seed-data/phrasebooks/plain-words.yaml"));
        }

        private static String program() throws IOException {
            return Files.readString(Path.of("seed-data/programs/plain-words/peg-and-plate.txt"));
        }

        private MockHttpServletResponse keep(String book, int basedOn, Person by) {
            return send(
                    post(where + "/edit")
                            .param("formToken", UUID.randomUUID().toString())
                            .param("act", "keep")
                            .param("basedOn", Integer.toString(basedOn))
                            .param("reason", "first draft")
                            .param("book", book),
                    by);
        }

        @Test
        void isKeptInVersionsWithWhoAndWhy() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            assertThat(page(get(where), person(Role.STUDENT)).text()).contains("has no phrasebook");
            assertThat(location(keep(book(), 0, technician))).isEqualTo(where);
            assertThat(location(keep(book() + "# more\n", 1, person(Role.INSTRUCTOR))))
                    .isEqualTo(where);

            Document shown = page(get(where), person(Role.STUDENT));
            assertThat(shown.text()).contains("reads Plain Words, version 2", "first draft", technician.printedName());
            assertThat(shown.select("a[href$=/edit]")).isEmpty();
            assertThat(page(get(where + "/versions/1"), technician)
                            .select("pre")
                            .text())
                    .isEqualTo(book().strip());
            assertThat(send(get(where + "/versions/3"), technician).getStatus()).isEqualTo(404);
        }

        @Test
        void refusesABrokenBookAReasonLeftOutAndALateChange() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            MockHttpServletResponse broken = keep(book().replace("means: wait", "means: sleep"), 0, technician);
            assertThat(broken.getStatus()).isEqualTo(422);
            assertThat(document(broken).select(".errors").text()).containsPattern("Line \\d+: means needs");
            assertThat(location(keep(book(), 0, technician))).isEqualTo(where);
            assertThat(document(keep(book() + "# a\n", 0, technician)).text()).contains("Somebody kept version 1");
            assertThat(document(keep(book(), 1, technician)).text()).contains("Nothing changed");
            assertThat(phrasebooks.versions(cell)).hasSize(1);
            assertThat(keep(book(), 1, person(Role.STUDENT)).getStatus()).isEqualTo(403);
        }

        @Test
        void showsWhatTheLinesOfAProgramMean() throws Exception {
            keep(book(), 0, person(Role.TECHNICIAN));
            Document tried = page(post(where).param("program", "swing to <b>\nrest 2 seconds\n"), person(Role.STUDENT));
            assertThat(tried.select("#tried tbody tr")).hasSize(2);
            assertThat(tried.select("#tried tbody tr").get(0).text()).isEqualTo("1 swing to <b> not understood");
            assertThat(tried.select("#tried tbody tr").get(1).text()).isEqualTo("2 rest 2 seconds wait: time 2 s");
            assertThat(tried.select("#tried").text()).contains("1 of 2 lines are understood");
            assertThat(tried.select("#tried .roll li").eachText())
                    .containsExactly("Line 1: swing to <b> not understood");
            assertThat(tried.select("#tried tr" + tried.select("#tried .roll a").attr("href"))
                            .attr("data-state"))
                    .isEqualTo("outside");
            assertThat(tried.select("main form").attr("action"))
                    .as("the answer is seen")
                    .endsWith("#tried");
            assertThat(send(post(where).param("program", " "), person(Role.STUDENT))
                            .getStatus())
                    .isEqualTo(422);
        }

        @Test
        void triesADraftWithoutKeepingIt() throws Exception {
            Document tried = page(
                    post(where + "/edit")
                            .param("act", "try")
                            .param("basedOn", "0")
                            .param("book", book())
                            .param("program", program()),
                    person(Role.INSTRUCTOR));
            assertThat(tried.select("#tried").text()).contains("lines are understood. It has 11 steps.");
            assertThat(tried.select("button[value=try]").attr("formaction")).isEqualTo(where + "/edit#tried");
            assertThat(tried.select("#tried .roll")).isEmpty();
            assertThat(phrasebooks.current(cell)).isEmpty();
        }

        @Test
        void isUsedByTheCheckAndAskedAnewWhenItChanges() throws Exception {
            Person student = person(Role.STUDENT);
            keep(book(), 0, person(Role.TECHNICIAN));
            String first = checked(student);
            assertThat(page(get(first), student).text()).contains("within limits");
            keep(book().replace("rest {time} ms", "rest for {time} ms"), 1, person(Role.TECHNICIAN));
            assertThat(checked(student)).isNotEqualTo(first);
        }

        private String checked(Person student) throws Exception {
            return location(send(
                    multipart("/check")
                            .param("formToken", UUID.randomUUID().toString())
                            .param("cell", cell.toString())
                            .param("pasted", program()),
                    student));
        }

        @Test
        void isNeverChanged() throws Exception {
            keep(book(), 0, person(Role.TECHNICIAN));
            assertThatThrownBy(() -> jdbc.sql("update phrasebook_versions set book = 'x' where cell_id = :cell")
                            .param("cell", cell.value())
                            .update())
                    .isInstanceOf(DataAccessException.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
