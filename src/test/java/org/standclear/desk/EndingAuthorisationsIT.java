package org.standclear.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Cells;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;
import org.standclear.testing.web.PageCases;

/** Authorisations that end soon: for staff by cell, for everybody their own, in the page and in the calendar file. */
class EndingAuthorisationsIT {

    abstract static class Cases extends PageCases {

        private static final Duration MONTH = Duration.ofDays(30);

        @Autowired
        ApplicationContext application;

        @Autowired
        AuthorisationRegister register;

        @Autowired
        Authorisations authorisations;

        @Autowired
        People everybody;

        @Autowired
        Cells cells;

        @Autowired
        LabTime labTime;

        @Autowired
        MovableClock clock;

        private Person until(String name, CellId cell, Instant end) {
            Person person = Accounts.add(people, name, Role.STUDENT);
            grant(person, cell, clock.instant(), end);
            return person;
        }

        private void grant(Person person, CellId cell, Instant from, Instant end) {
            Person by = person(Role.INSTRUCTOR);
            register.grant(new Grant(person.id(), Duty.OPERATOR, cell, from, end, "induction passed", by.id()));
        }

        private List<Person> ending() {
            return authorisations.ending(clock.instant(), clock.instant().plus(MONTH)).stream()
                    .map(one -> everybody.find(one.person()).orElseThrow())
                    .toList();
        }

        @Test
        void namesWhatEndsWithinThirtyDaysAndIsNotFollowedByAnother() {
            CellId cell = new SampleLab(application).cell(7);
            Instant now = clock.instant();
            Person soon = until("Kofi Marblewood", cell, now.plus(MONTH).minusSeconds(1));
            Person later = until("Leilani Driftmark", cell, now.plus(MONTH));
            Person renewed = until("Yuki Halfmoon", cell, now.plus(Duration.ofDays(10)));
            grant(renewed, cell, now.plus(Duration.ofDays(9)), now.plus(Duration.ofDays(300)));
            Person gap = until("Saoirse Pinwheel", cell, now.plus(Duration.ofDays(10)));
            grant(gap, cell, now.plus(Duration.ofDays(11)), now.plus(Duration.ofDays(300)));

            assertThat(ending()).contains(soon, gap).doesNotContain(later, renewed);
            clock.moveBy(MONTH.minusSeconds(1));
            assertThat(ending()).as("it ended").doesNotContain(soon);
        }

        @Test
        void showsStaffEverybodysByCellAndTheCalendarFileToo() throws Exception {
            CellId cell = new SampleLab(application).cell(7);
            String name = cells.find(cell).orElseThrow().name();
            Instant end = clock.instant().plus(Duration.ofDays(10));
            Person kofi = until("Kofi Marblewood", cell, end);

            String staff = page(get("/due"), person(Role.TECHNICIAN)).text();
            assertThat(staff).contains("Authorisations that end within 30 days");
            assertThat(page(get("/due"), person(Role.TECHNICIAN))
                            .select("h3:contains(" + name + ") + ul")
                            .text())
                    .contains("Kofi Marblewood")
                    .contains("operator")
                    .contains("ends " + labTime.full(end));
            assertThat(page(get("/due"), person(Role.REVIEWER)).text()).doesNotContain("Kofi Marblewood");

            VEvent event = events(Role.INSTRUCTOR).stream()
                    .filter(one -> value(one, "SUMMARY").startsWith(name + ": one authorisation"))
                    .findFirst()
                    .orElseThrow();
            assertThat(value(event, "DTSTART"))
                    .isEqualTo(labTime.date(end).toString().replace("-", ""));
            assertThat(value(event, "DESCRIPTION")).isEqualTo("Kofi Marblewood, operator");
            assertThat(events(Role.REVIEWER))
                    .noneMatch(one -> value(one, "SUMMARY").contains("authorisation ends"));
            assertThat(page(get("/me"), kofi).text())
                    .contains("Your authorisation as operator on " + name + " ends " + labTime.full(end));
            assertThat(page(get("/me"), person(Role.STUDENT)).text()).doesNotContain("Your authorisation as");
        }

        private List<VEvent> events(Role role) throws Exception {
            String text = send(get("/due.ics"), person(role)).getContentAsString();
            return new CalendarBuilder().build(new StringReader(text)).getComponents("VEVENT");
        }

        private static String value(VEvent event, String name) {
            return event.getProperty(name)
                    .map(property -> ((Property) property).getValue())
                    .orElseThrow();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
