package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SecondLab;
import org.standclear.booking.labs.LabRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.PageCases;

/** Who works in several labs reads on every page whose clock its times are by; their calendar is of no one lab. */
@OnH2
class LabClockIT extends PageCases {

    @Autowired
    ApplicationContext application;

    @Autowired
    LabRegister labs;

    private Person inTwoLabs() {
        SecondLab there = new SecondLab(application, "America/St_Johns");
        Person person = person(Role.TECHNICIAN);
        assertThat(labs.appoint(there.id(), person.login(), Set.of(Role.TECHNICIAN), PersonId.next()))
                .isInstanceOf(LabRegister.Outcome.Done.class);
        return person;
    }

    @Test
    void saysInTheHeaderWhoseClockTimesAreBy() {
        Person person = inTwoLabs();

        for (String path : new String[] {"/today", "/book", "/me", "/windows"}) {
            Document page = page(get(path), person);
            String here = page.select(".lab-switch option[selected]").text();
            assertThat(here).as(path).isNotEmpty();
            assertThat(page.select(".lab-switch span").text()).as(path).startsWith("Times: ");
        }
    }

    @Test
    void namesNoLabInThePersonsOwnCalendar() throws Exception {
        Person person = inTwoLabs();
        Document made = document(send(
                post("/me/calendar")
                        .param("formToken", UUID.randomUUID().toString())
                        .param("of", ""),
                person));
        String address = made.select("main").text().replaceAll(".*(/calendar/[A-Za-z0-9_-]+\\.ics).*", "$1");

        String calendar = send(get(address), person).getContentAsString();

        assertThat(calendar).contains("X-WR-CALNAME:Your bookings\r\n");
    }

    @Test
    void asksNobodyOfOneLabWhichItIs() {
        assertThat(page(get("/book"), person(Role.STUDENT)).select(".lab-switch"))
                .isEmpty();
    }
}
