package org.standclear.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.StringReader;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.DemoOnPostgres;
import org.standclear.testing.web.PageCases;

/** What the demo's week left as attendance, compared with the rows it stands on. */
class AttendanceIT {

    abstract static class Cases extends PageCases {

        @Autowired
        Courses courses;

        @Autowired
        People everybody;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        Clock clock;

        @Autowired
        Labs labs;

        private Course robots() {
            return courses.all().stream()
                    .filter(course -> course.code().equals("RBT 110"))
                    .findFirst()
                    .orElseThrow();
        }

        private List<CSVRecord> csv() throws Exception {
            Person ines = everybody.byLogin("ines").orElseThrow();
            String text = send(get("/attendance/" + robots().id() + "/turns.csv"), ines)
                    .getContentAsString();
            assertThat(text).startsWith("\uFEFFcourse,");
            return CSVParser.parse(
                            new StringReader(text),
                            CSVFormat.RFC4180
                                    .builder()
                                    .setHeader()
                                    .setSkipHeaderRecord(true)
                                    .get())
                    .getRecords();
        }

        @Test
        void hasALineForEachTurnAndCountsReleasedRunsThatAreClosedOut() throws Exception {
            List<CSVRecord> turns = csv();

            int closedOut = jdbc.sql("""
                    select count(*) from bookings b where b.course_id = ? and b.state = 'CLOSED_OUT'""")
                    .param(robots().id().value())
                    .query(Integer.class)
                    .single();
            assertThat(closedOut).isPositive();
            assertThat(turns.stream().filter(turn -> turn.get("counts").equals("yes")))
                    .hasSize(closedOut);
            assertThat(turns.stream().filter(turn -> turn.get("counts").equals("yes")))
                    .allSatisfy(turn -> {
                        assertThat(turn.get("released by")).isNotEmpty();
                        assertThat(turn.get("checked in")).isNotEmpty();
                    });
            assertThat(turns).anySatisfy(turn -> {
                assertThat(turn.get("state")).isEqualTo("missed");
                assertThat(turn.get("checked in")).isEmpty();
            });
        }

        @Test
        void hasOneLineForATurnOfSomebodyInTwoSections() throws Exception {
            int before = csv().size();
            UUID section = UUID.randomUUID();
            jdbc.sql("insert into sections (id, course_id, code) values (?, ?, '77')")
                    .params(section, robots().id().value())
                    .update();
            UUID somebody =
                    jdbc.sql("""
                    select b.operator_id from bookings b join enrolments e on e.person_id = b.operator_id
                    join sections s on s.id = e.section_id
                    where b.course_id = ? and s.course_id = b.course_id and b.state = 'CLOSED_OUT'
                    order by b.id fetch first row only""").param(robots().id().value()).query(UUID.class).single();
            jdbc.sql("insert into enrolments (person_id, section_id, enrolled_at) values (?, ?, current_timestamp)")
                    .params(somebody, section)
                    .update();
            try {
                List<CSVRecord> turns = csv();
                assertThat(turns).hasSize(before);
                assertThat(turns)
                        .anySatisfy(turn -> assertThat(turn.get("section")).endsWith(", 77"));
            } finally {
                jdbc.sql("delete from enrolments where section_id = ?")
                        .param(section)
                        .update();
                jdbc.sql("delete from sections where id = ?").param(section).update();
            }
        }

        /** A table program reads the clock at the bench, and a program can tell which instant that was. */
        @Test
        void writesTimesOfTheLabsClockWithTheirOffset() throws Exception {
            ZoneId zone = labs.theLab().zone();
            List<String> slots = csv().stream().map(turn -> turn.get("slot")).toList();
            assertThat(slots).isNotEmpty().allSatisfy(slot -> {
                OffsetDateTime at = OffsetDateTime.parse(slot);
                assertThat(at.getOffset()).isEqualTo(zone.getRules().getOffset(at.toInstant()));
                assertThat(at.getHour()).as("the lab is open by day").isBetween(7, 21);
            });
            assertThat(jdbc.sql("select starts_at from bookings where course_id = ? and state = 'CLOSED_OUT'")
                            .param(robots().id().value())
                            .query((row, number) -> SqlTime.read(row, "starts_at"))
                            .list())
                    .allSatisfy(start -> assertThat(slots)
                            .anySatisfy(slot -> assertThat(
                                            OffsetDateTime.parse(slot).toInstant())
                                    .isEqualTo(start)));
        }

        @Test
        void listsEverybodyWhoTakesTheCourse() {
            int enrolled = jdbc.sql("""
                    select count(*) from enrolments e join sections s on s.id = e.section_id where s.course_id = ?""")
                    .param(robots().id().value())
                    .query(Integer.class)
                    .single();

            var shown = page(
                    get("/attendance/" + robots().id()),
                    everybody.byLogin("ines").orElseThrow());

            assertThat(shown.select("tbody tr")).hasSizeGreaterThanOrEqualTo(enrolled);
            assertThat(shown.select("tbody tr td:last-child").eachText())
                    .anyMatch(needed -> needed.matches(".*Peg and plate \\d of 3.*"));
        }

        @Test
        void isForWhoTeaches() {
            String path = "/attendance/" + robots().id();
            assertThat(page(get(path), everybody.byLogin("ines").orElseThrow())
                            .select("h1")
                            .text())
                    .contains("students of RBT 110 have the runs they need");
            assertThat(send(get(path), everybody.byLogin("noor").orElseThrow()).getStatus())
                    .isEqualTo(403);
        }
    }

    @Nested
    @DemoOnH2
    class OnH2Engine extends Cases {}

    @Nested
    @DemoOnPostgres
    class OnPostgresEngine extends Cases {}
}
