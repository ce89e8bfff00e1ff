package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.SampleLab;
import org.standclear.booking.Turns;
import org.standclear.booking.WaitingList;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.people.CourseRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** What each person had and did not get, one by one, in the file that goes with the page. */
class FairnessIT {

    @SuppressWarnings("NullAway.Init") // made before each test
    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        CourseRegister courses;

        @Autowired
        BookingDesk desk;

        @Autowired
        Turns turns;

        @Autowired
        WaitingList waits;

        @Autowired
        MovableClock clock;

        private final String own = UUID.randomUUID().toString().substring(0, 8);
        private SampleLab lab;
        private CellId avocet;
        private SectionId section;
        private Person ines;
        private Person noor;

        @BeforeEach
        void aSection() {
            clock.moveToStart();
            lab = new SampleLab(application);
            avocet = lab.cell(7);
            ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            var course = ((CourseRegister.Outcome.Done<org.standclear.platform.ids.CourseId>)
                            courses.addCourse("F" + own, "Robots", ines.id()))
                    .id();
            section = ((CourseRegister.Outcome.Done<SectionId>) courses.addSection(course, "01", ines.id())).id();
            noor = lab.student("Noor " + own);
            courses.enrol(noor.id(), section, ines.id());
        }

        private CSVRecord line() throws Exception {
            String text = send(
                            get("/fairness/people.csv")
                                    .param("first", "2026-03-09")
                                    .param("last", "2026-03-15"),
                            ines)
                    .getContentAsString();
            CSVFormat format = CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get();
            try (CSVParser parser = CSVParser.parse(new StringReader(text.replaceFirst("^\uFEFF", "")), format)) {
                return parser.stream()
                        .filter(one -> one.get("name").equals(noor.printedName()))
                        .findFirst()
                        .orElseThrow();
            }
        }

        @Test
        void listsWhoIsEnrolledAndHadNothing() throws Exception {
            assertThat(line().get("sections")).isEqualTo("F" + own + "-01");
            assertThat(line().get("slots")).isEqualTo("0");
            assertThat(line().get("mean_wait_hours")).as("no slot, no wait").isEmpty();
        }

        @Test
        void countsALateCancelAndSaysWhenItWasExcused() throws Exception {
            Booking booking = lab.booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            clock.moveTo(booking.start().minus(Duration.ofHours(1)));
            desk.cancel(booking.id(), noor.id());
            assertThat(line().get("late_cancels") + line().get("excused")).isEqualTo("10");

            turns.excuse(booking.id(), false, ines.id());

            assertThat(line().get("late_cancels") + line().get("excused")).isEqualTo("11");
            assertThat(line().get("slots")).isEqualTo("0");
        }

        @Test
        void countsATimeThatWentByOnTheWaitingListAndNoneThatWasLeft() throws Exception {
            // the slot is somebody else's, so no offer can be made
            lab.booked(avocet, "2026-03-12T12:07:00Z", lab.student("Kofi Marblewood"), null);
            wait("2026-03-12T12:07:00Z", "2026-03-12T12:37:00Z");
            WaitingList.Joined.On left = wait("2026-03-13T12:07:00Z", "2026-03-13T12:37:00Z");
            waits.leave(left.waiting().id(), noor.id());
            assertThat(line().get("waited_in_vain")).isEqualTo("0");

            clock.moveTo(Instant.parse("2026-03-12T12:40:00Z"));
            waits.round();

            assertThat(line().get("waited_in_vain")).isEqualTo("1");
        }

        private WaitingList.Joined.On wait(String from, String until) {
            return (WaitingList.Joined.On) waits.join(
                    new JoinWait(noor.id(), avocet, Instant.parse(from), Instant.parse(until), null, null, noor.id()));
        }

        @Test
        void showsTheSameOnThePage() {
            assertThat(page(get("/fairness"), ines)
                            .select("#people ~ div thead th")
                            .eachText())
                    .containsExactly(
                            "Who",
                            "Sections",
                            "Slots",
                            "Missed",
                            "Late cancels",
                            "Excused",
                            "Left out",
                            "Waited in vain",
                            "Wait");
        }

        @Test
        void putsEachNumberBelowItsHead() {
            Booking booking = lab.booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            clock.moveTo(booking.start().minus(Duration.ofHours(1)));
            desk.cancel(booking.id(), noor.id());
            turns.excuse(booking.id(), false, ines.id());

            assertThat(page(get("/fairness").param("first", "2026-03-09").param("last", "2026-03-15"), ines)
                            .select("#people ~ div tbody tr:has(th:containsOwn(" + noor.printedName() + ")) td")
                            .eachText())
                    .as("sections, slots, missed, late cancels, excused, left out, waited in vain, wait")
                    .containsExactly("F" + own + "-01", "0", "0", "1", "1", "0", "0", "none");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
