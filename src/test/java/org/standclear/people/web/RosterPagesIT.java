package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.standclear.booking.SampleLab;
import org.standclear.people.Enrolment;
import org.standclear.people.Person;
import org.standclear.people.RosterImports;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A roster is sent, looked at, applied and taken back. */
class RosterPagesIT {

    abstract static class Cases extends RosterCases {

        @Test
        void readsASetOfOneRosterFilesChosenTogether() {
            var files = Map.of(
                    "users.csv", "sourcedId,username,givenName,familyName\nu1,noor" + own + ",Noor,Candlewick\n",
                    "classes.csv", "sourcedId,classCode,courseSourcedId\nc1," + course + "-01,k1\n",
                    "courses.csv", "sourcedId,courseCode\nk1," + course + "\n",
                    "enrollments.csv", "sourcedId,classSourcedId,userSourcedId,role\ne1,c1,u1,student\n");
            var request = multipart("/people/rosters");
            files.forEach((name, text) -> request.file(
                    new MockMultipartFile("file", name, "text/csv", text.getBytes(StandardCharsets.UTF_8))));
            String preview =
                    location(send(request.param("formToken", UUID.randomUUID().toString()), ines()));
            assertThat(page(get(preview), ines()).select("h1").text())
                    .isEqualTo("1 new account, 1 new enrolment, 0 not in the file");

            location(apply(preview));
            Person noor = everybody.byLogin("noor" + own).orElseThrow();
            assertThat(courses.enrolmentsOf(noor.id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactly("01");
            location(act(preview + "/undo"));
            assertThat(courses.enrolmentsOf(noor.id())).isEmpty();

            var two = multipart("/people/rosters");
            List.of("one.csv", "two.csv")
                    .forEach(name -> two.file(new MockMultipartFile("file", name, "text/csv", new byte[] {65, 66})));
            MockHttpServletResponse refused =
                    send(two.param("formToken", UUID.randomUUID().toString()), ines());
            assertThat(refused.getStatus()).isEqualTo(422);
            assertThat(document(refused).text()).contains("Send one roster, or the set of users.csv");
        }

        @Test
        void showsTheDifferencesAppliesThemAndTakesThemBack() {
            SampleLab lab = new SampleLab(application);
            Person kofi = lab.student("Kofi Marblewood");
            done(register.enrol(kofi.id(), Objects.requireNonNull(second), null));
            lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", kofi, null);

            String preview = location(sendFile("login,name,course,section\n" + line("noor", "Noor Candlewick", "01")
                    + line("mateo", "Mateo Ironbark", "03")));
            Document page = page(get(preview), ines());
            assertThat(page.select("h1").text()).isEqualTo("2 new accounts, 2 new enrolments, 1 not in the file");
            assertThat(page.text())
                    .contains(course + "-02: the file names nobody of this section")
                    .contains("Kofi Marblewood")
                    .contains("1 booking ahead, which stays")
                    .contains("The section " + course + "-03 will be added.");
            assertThat(everybody.byLogin("noor" + own)).isEmpty();

            assertThat(location(apply(preview, "takeOut", "true"))).isEqualTo(preview);
            Person noor = everybody.byLogin("noor" + own).orElseThrow();
            assertThat(courses.enrolmentsOf(noor.id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactly("01");
            assertThat(courses.enrolmentsOf(kofi.id())).isEmpty();
            assertThat(desk.quotaOf(kofi.id())).isNotNull();
            assertThat(apply(preview).getStatus()).as("once").isEqualTo(422);

            assertThat(location(act(preview + "/undo"))).isEqualTo(preview);
            assertThat(everybody.byLogin("noor" + own).orElseThrow().active()).isFalse();
            assertThat(courses.enrolmentsOf(noor.id())).isEmpty();
            assertThat(courses.enrolmentsOf(kofi.id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactly("02");
            assertThat(act(preview + "/undo").getStatus()).isEqualTo(422);
            assertThat(page(get("/people/rosters"), ines()).text()).contains("taken back by");
        }

        @Test
        void keepsWhoIsNotInTheFileUnlessAskedOtherwise() {
            Person kofi = new SampleLab(application).student("Kofi Marblewood");
            done(register.enrol(kofi.id(), Objects.requireNonNull(first), null));
            String preview = location(sendFile("login,name,course,section\n" + line("noor", "Noor Candlewick", "01")));

            location(apply(preview));

            assertThat(courses.enrolmentsOf(kofi.id())).hasSize(1);
        }

        @Test
        void keepsTheHistoryOfPairs() {
            String header = "login,name,course,section,team\n";
            String noor = "noor" + own + ",Noor Candlewick," + course + ",01,";
            location(apply(location(sendFile(header + noor + "A\n"))));
            location(apply(location(sendFile(header + noor + "B\n"))));

            assertThat(jdbc.sql("""
                            select t.team from team_members t join people p on p.id = t.person_id
                            where p.login = ? order by t.from_at, t.team""").param("noor" + own).query(String.class).list())
                    .containsExactly("A", "B");
            assertThat(jdbc.sql("""
                            select count(*) from team_members t join people p on p.id = t.person_id
                            where p.login = ? and t.until_at is null""").param("noor" + own).query(Integer.class).single())
                    .isEqualTo(1);
        }

        @Test
        void saysInOneLineWhatIsWrongAndChangesNothing() {
            var unknown = sendFile("login,name,course,section\nnoor,Noor Candlewick,NO SUCH COURSE,01\n");
            assertThat(unknown.getStatus()).isEqualTo(422);
            assertThat(document(unknown).select("[role=alert] li").eachText())
                    .containsExactly(
                            "There is no course NO SUCH COURSE. Add it on the page Courses first, or correct the file.");
            String mixedUp = IntStream.range(0, 300)
                    .mapToObj(i -> "s" + i + own + ",Student,C" + i + own + ",01")
                    .collect(Collectors.joining("\n"));
            assertThat(document(sendFile("login,name,course,section\n" + mixedUp))
                            .select("[role=alert] li")
                            .text())
                    .contains(" and 288 more. Add it on the page Courses");
            assertThat(document(send(
                                    post("/people/rosters")
                                            .param(
                                                    "formToken",
                                                    UUID.randomUUID().toString()),
                                    ines()))
                            .text())
                    .contains("Choose a file first.");
        }

        /** As long as a file may be. */
        int longest() {
            return RosterImports.MOST_LINES;
        }

        @Test
        void appliesAsManyLinesAsAFileMayHave() {
            String lines = IntStream.range(0, longest())
                    .mapToObj(i -> "s" + i + "." + own + ",Student " + i + "," + course + ",01")
                    .collect(Collectors.joining("\n"));
            String preview = location(sendFile("login,name,course,section\n" + lines));

            assertThat(location(apply(preview))).isEqualTo(preview);
            assertThat(jdbc.sql("select count(*) from enrolments where section_id = ?")
                            .param(Objects.requireNonNull(first).value())
                            .query(Integer.class)
                            .single())
                    .isEqualTo(longest());
            assertThat(location(act(preview + "/undo"))).isEqualTo(preview);
            // whoever shares this database does not have to read past them
            UUID id = UUID.fromString(preview.substring(preview.lastIndexOf('/') + 1));
            for (String table : List.of("roster_effects", "roster_returns", "roster_rows")) {
                jdbc.sql("delete from " + table + " where import_id = ?")
                        .param(id)
                        .update();
            }
            String these = "(select id from people where login like ?)";
            jdbc.sql("delete from person_roles where person_id in " + these)
                    .param("s%." + own)
                    .update();
            jdbc.sql("delete from people where login like ?").param("s%." + own).update();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {
        @Override
        int longest() {
            return 2_000;
        }
    }
}
