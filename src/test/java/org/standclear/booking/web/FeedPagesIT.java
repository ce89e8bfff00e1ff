package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.io.StringReader;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.component.VEvent;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.Bookings;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.booking.SampleLab;
import org.standclear.people.Accommodations;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Calendar addresses: made, read by a calendar program, revoked. It is Wed 11 March 2026, 09:00 UTC. */
class FeedPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Bookings bookings;

        @Autowired
        BookingDesk desk;

        @Autowired
        PeopleRegister register;

        @Autowired
        JdbcClient jdbc;

        private @Nullable SampleLab lab;
        private CellId avocet = CellId.next();

        @BeforeEach
        void aLab() {
            lab = new SampleLab(application);
            avocet = lab().cell(7);
        }

        private SampleLab lab() {
            return Objects.requireNonNull(lab);
        }

        private String addressOf(Person person, String of) {
            Document page = document(send(
                    post("/me/calendar")
                            .param("formToken", UUID.randomUUID().toString())
                            .param("of", of),
                    person));
            String address = page.select("code.token").text();
            assertThat(address).contains("/calendar/").endsWith(".ics");
            return address.substring(address.indexOf("/calendar/"));
        }

        private MockHttpServletResponse fetch(String address) throws Exception {
            return mvc.perform(get(address)).andReturn().getResponse();
        }

        private List<VEvent> events(String address) throws Exception {
            MockHttpServletResponse answer = fetch(address);
            assertThat(answer.getStatus()).isEqualTo(200);
            assertThat(answer.getContentType()).isEqualTo("text/calendar;charset=utf-8");
            assertThat(answer.getHeader("Set-Cookie")).isNull();
            return new CalendarBuilder()
                    .build(new StringReader(answer.getContentAsString()))
                    .getComponents("VEVENT");
        }

        private List<String> values(String address, String property) throws Exception {
            return events(address).stream().map(event -> value(event, property)).toList();
        }

        private static String value(VEvent event, String property) {
            return event.getProperty(property).orElseThrow().getValue();
        }

        @Test
        void aPersonsCalendarFollowsTheBookingWithARisingSequence() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Person mateo = lab().student("Mateo Ironbark");
            Booking booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, mateo);
            String address = addressOf(noor, "");

            VEvent first = events(address).get(0);
            assertThat(value(first, "UID")).isEqualTo(booking.id() + "@standclear");
            assertThat(value(first, "SEQUENCE")).isEqualTo("0");
            assertThat(value(first, "STATUS")).isEqualTo("CONFIRMED");
            assertThat(value(first, "DESCRIPTION")).contains("With Mateo Ironbark.");
            assertThat(Instant.from(
                            Objects.requireNonNull(first.getDateTimeStart()).getDate()))
                    .isEqualTo(booking.start());

            bookings.askForAttendant(booking.id(), noor.id());
            VEvent second = events(address).get(0);
            assertThat(Integer.parseInt(value(second, "SEQUENCE"))).isEqualTo(1);
            assertThat(value(second, "DESCRIPTION")).contains("Needs an e-stop attendant.");

            desk.cancel(booking.id(), noor.id());
            VEvent third = events(address).get(0);
            assertThat(Integer.parseInt(value(third, "SEQUENCE"))).isEqualTo(2);
            assertThat(value(third, "STATUS")).isEqualTo("CANCELLED");
            assertThat(value(third, "UID")).isEqualTo(value(first, "UID"));
        }

        @Test
        void aMovedBookingIsCancelledHereAndStandsThere() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            String address = addressOf(noor, "");
            desk.moveTo(new org.standclear.booking.MoveBooking(
                    booking.id(),
                    avocet,
                    Instant.parse("2026-03-13T10:07:00Z"),
                    true,
                    lab().technician("A").id(),
                    "why"));

            assertThat(events(address))
                    .extracting(event -> value(event, "STATUS"))
                    .containsExactly("CANCELLED", "CONFIRMED");
        }

        @Test
        void aCellsCalendarNamesNobodyAndOnlyStaffMakeIt() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Person adaeze = lab().technician("Adaeze Lanternby");
            lab().booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            desk.close(new CloseCell(
                    avocet,
                    Instant.parse("2026-03-12T14:00:00Z"),
                    Instant.parse("2026-03-12T15:00:00Z"),
                    CellClosure.Kind.CLASS,
                    "RBT 214",
                    adaeze.id()));

            String address = addressOf(adaeze, avocet.toString());
            List<VEvent> events = events(address);

            assertThat(events).hasSize(2);
            assertThat(fetch(address).getContentAsString())
                    .doesNotContain("Noor")
                    .contains(CellClosure.Kind.CLASS.words())
                    .as("what staff wrote for staff")
                    .doesNotContain("RBT 214");
            // a student who asks for the same gets the own calendar
            assertThat(fetch(addressOf(noor, avocet.toString())).getContentAsString())
                    .contains("Your bookings");
            assertThat(page(get("/me/calendar"), noor).select("option")).hasSize(1);
        }

        @Test
        void aCellsCalendarDoesNotSayThatSomebodyNeedsLonger() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            Person adaeze = lab().technician("Adaeze Lanternby");
            application
                    .getBean(Accommodations.class)
                    .set(noor.id(), new Accommodations.Accommodation(45, false, false), adaeze.id());
            Booking booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, null);
            assertThat(booking.end()).isEqualTo(Instant.parse("2026-03-12T12:52:00Z"));
            String address = addressOf(adaeze, avocet.toString());
            assertThat(events(address))
                    .extracting(event -> value(event, "DTSTART") + " " + value(event, "DTEND"))
                    .containsExactly("20260312T120700Z 20260312T123700Z", "20260312T123700Z 20260312T130700Z");
            List<String> ids = values(address, "UID");
            assertThat(ids).doesNotHaveDuplicates().isEqualTo(values(address, "UID"));
            assertThat(ids)
                    .noneMatch(uid -> uid.contains(booking.id().toString()))
                    .noneMatch(uid -> uid.startsWith(ids.get(0).substring(0, 12)) && !uid.equals(ids.get(0)));
            assertThat(values(addressOf(adaeze, "lab"), "UID"))
                    .as("another address has others")
                    .doesNotContainAnyElementsOf(ids);
            assertThat(values(address, "DTSTAMP"))
                    .as("the day, not the second, of the last change")
                    .containsOnly("20260311T000000Z");
            assertThat(values(address, "LAST-MODIFIED")).containsOnly("20260311T000000Z");

            desk.cancel(booking.id(), noor.id());
            assertThat(events(address))
                    .extracting(event -> value(event, "STATUS"))
                    .as("both")
                    .containsExactly("CANCELLED", "CANCELLED");
        }

        @Test
        void keepsNoSecretAndForgetsARevokedOneAtOnce() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            String address = addressOf(noor, "");
            String secret = address.replace("/calendar/", "").replace(".ics", "");
            assertThat(secret).hasSize(43);
            assertThat(jdbc.sql("select secret_sha256 from booking_feeds where owner_id = ?")
                            .param(noor.id().value())
                            .query(String.class)
                            .single())
                    .isNotEqualTo(secret)
                    .hasSize(64);
            Document page = page(get("/me/calendar"), noor);
            assertThat(page.text()).doesNotContain(secret);
            String revoke = page.select("form[action$=/revoke]").attr("action");
            assertThat(send(
                                    post(revoke)
                                            .param(
                                                    "formToken",
                                                    UUID.randomUUID().toString()),
                                    lab().student("Mateo Ironbark"))
                            .getStatus())
                    .isEqualTo(404);
            assertThat(location(send(
                            post(revoke).param("formToken", UUID.randomUUID().toString()), noor)))
                    .isEqualTo("/me/calendar");

            assertThat(fetch(address).getStatus()).isEqualTo(404);
            assertThat(fetch("/calendar/nothing.ics").getStatus()).isEqualTo(404);
        }

        @Test
        void aCellsAndTheLabsEndWithTheRole() throws Exception {
            Person adaeze = lab().technician("Adaeze Lanternby");
            Person marit = lab().technician("Marit Ashgrove");
            List<String> addresses = List.of(addressOf(adaeze, avocet.toString()), addressOf(adaeze, "lab"));
            String own = addressOf(adaeze, "");
            assertThat(addresses)
                    .allSatisfy(
                            address -> assertThat(fetch(address).getStatus()).isEqualTo(200));

            assertThat(register.setRoles(adaeze.id(), java.util.Set.of(Role.STUDENT), 1, marit.id()))
                    .isInstanceOf(PeopleRegister.Outcome.Done.class);

            assertThat(addresses)
                    .allSatisfy(
                            address -> assertThat(fetch(address).getStatus()).isEqualTo(404));
            assertThat(fetch(own).getStatus()).as("the own bookings stay").isEqualTo(200);
        }

        @Test
        void endsWithTheAccount() throws Exception {
            Person noor = lab().student("Noor Candlewick");
            String address = addressOf(noor, "");
            register.deactivate(
                    noor.id(), "left the college", lab().technician("A").id());

            assertThat(fetch(address).getStatus()).isEqualTo(404);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
