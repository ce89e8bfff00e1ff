package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.SecondLab;
import org.standclear.booking.SlotCalendar;
import org.standclear.people.DutyRegister;
import org.standclear.people.Person;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** A lab's zone changes while nothing is agreed for its future, after a page that says what that does; it is on record. */
class LabZonePagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Labs labs;

        @Autowired
        LabTime labTime;

        @Autowired
        BookingDesk desk;

        @Autowired
        DutyRegister duties;

        @Autowired
        TrailReader record;

        @Autowired
        MovableClock clock;

        private SecondLab lab;
        private Person marit;
        private String path;

        @BeforeEach
        void aLabInHalifax() {
            lab = new SecondLab(application, "America/Halifax");
            marit = person(Role.ADMINISTRATOR);
            path = "/labs/" + lab.id() + "/zone";
        }

        private ZoneId zone() {
            return labs.find(lab.id()).orElseThrow().zone();
        }

        private MockHttpServletResponse change(String seen, String to, String reason) {
            return send(
                    post(path)
                            .param("formToken", UUID.randomUUID().toString())
                            .param("seen", seen)
                            .param("to", to)
                            .param("reason", reason),
                    marit);
        }

        private Booking booked() {
            return lab.in(
                    () -> lab.sample().booked(lab.cell(), "2026-03-12T14:00:00Z", lab.person(Role.STUDENT), null));
        }

        @Test
        void itIsChangedAfterAPageThatSaysWhatThatDoes() {
            Document choose = page(get(path), marit);
            assertThat(choose.select("option[value=Europe/Berlin]")).hasSize(1);
            lab.in(() -> duties.plan(
                    lab.person(Role.TECHNICIAN).id(),
                    clock.instant().plusSeconds(3600),
                    clock.instant().plusSeconds(7200),
                    lab.person(Role.INSTRUCTOR).id()));

            Document shown = page(get(path).param("to", "Europe/Berlin"), marit);
            assertThat(shown.select("h1").text()).contains("Europe/Berlin?");
            // 9:00 UTC on 11 March 2026: 6:00 in Halifax, in summer time since the 8th, and 10:00 in Berlin, still in
            // winter
            // time (tz database, America/Halifax and Europe/Berlin)
            assertThat(shown.select("#effects + ul").text())
                    .contains("Wed 11 Mar 06:00", "Wed 11 Mar 10:00", "1 period on duty ahead keeps its instant");
            assertThat(zone()).as("only shown so far").isEqualTo(ZoneId.of("America/Halifax"));

            assertThat(location(change("America/Halifax", "Europe/Berlin", "the lab moves")))
                    .isEqualTo("/labs/" + lab.id());

            assertThat(zone()).isEqualTo(ZoneId.of("Europe/Berlin"));
            assertThat(lab.in(labTime::zone)).isEqualTo(ZoneId.of("Europe/Berlin"));
            List<RecordedEntry> entries = record.about(lab.id(), lab.id().toString());
            assertThat(entries).extracting(RecordedEntry::kind).contains("people.lab-zone-changed");
        }

        @Test
        void itStaysWhileABookingIsAhead() {
            Booking booking = booked();

            Document shown = page(get(path).param("to", "Europe/Berlin"), marit);
            assertThat(shown.select("h1").text()).contains("stays in America/Halifax");
            assertThat(shown.select("#standing + ul").text())
                    .contains("1 booking is ahead")
                    .contains("cancel");
            assertThat(shown.select("main form[method=post]")).isEmpty();
            MockHttpServletResponse refused = change("America/Halifax", "Europe/Berlin", "the lab moves");
            assertThat(refused.getStatus()).isEqualTo(422);
            assertThat(zone()).isEqualTo(ZoneId.of("America/Halifax"));

            lab.in(() -> desk.cancel(booking.id(), lab.person(Role.STUDENT).id()));

            location(change("America/Halifax", "Europe/Berlin", "the lab moves"));
            assertThat(zone()).isEqualTo(ZoneId.of("Europe/Berlin"));
        }

        @Test
        void aFormThatCannotBeKeptComesBackAsItWas() {
            MockHttpServletResponse nothing = change("America/Halifax", "Europe/Berlin", " ");
            assertThat(nothing.getStatus()).isEqualTo(422);
            assertThat(document(nothing).select("input[name=to]").val()).isEqualTo("Europe/Berlin");
            assertThat(document(nothing).select(".errors")).isNotEmpty();
            assertThat(change("America/Halifax", "Nowhere/At_All", "x").getStatus())
                    .isEqualTo(422);
            assertThat(change("America/Halifax", "America/Halifax", "x").getStatus())
                    .isEqualTo(422);
            assertThat(change("Europe/Paris", "Europe/Berlin", "seen before somebody else")
                            .getStatus())
                    .isEqualTo(422);
            assertThat(zone()).isEqualTo(ZoneId.of("America/Halifax"));
        }

        @Test
        void slotsKeepTheirClockTimesInTheNewZone() {
            String halifax = firstSlot();
            location(change("America/Halifax", "Europe/Berlin", "the lab moves"));

            assertThat(halifax).endsWith("08:00-03:00");
            assertThat(firstSlot()).endsWith("08:00+01:00");
        }

        /** The first free slot of the day after, with its offset. */
        private String firstSlot() {
            return lab.in(() -> labTime.iso(application
                            .getBean(SlotCalendar.class)
                            .day(LocalDate.parse("2026-03-12"))
                            .cells()
                            .get(0)
                            .free()
                            .get(0)
                            .start())
                    .replaceAll(":00([+-])", "$1"));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
