package org.standclear.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Today, My page and where everybody's day begins. */
class StartPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        BookingDesk desk;

        @Autowired
        MovableClock clock;

        @Test
        void sendsEverybodyToTheirStart() {
            assertThat(location(send(get("/"), person(Role.STUDENT)))).isEqualTo("/me");
            assertThat(location(send(get("/"), person(Role.TECHNICIAN)))).isEqualTo("/desk");
            assertThat(location(send(get("/"), person(Role.INSTRUCTOR)))).isEqualTo("/today");
            assertThat(location(send(get("/"), person(Role.REVIEWER)))).isEqualTo("/reviewer");
            assertThat(location(send(get("/"), person(Role.ADMINISTRATOR)))).isEqualTo("/people");
            assertThat(location(send(get("/"), person(Role.BENCH)))).isEqualTo("/bench");
        }

        @Test
        void showsNamesOfOthersToStaffOnly() {
            SampleLab lab = new SampleLab(application);
            CellId avocet = lab.cell(7);
            Person linnea = lab.student("Linnea Brass");
            Person baraka = lab.student("Baraka Hollowell");
            lab.booked(avocet, "2026-03-11T12:07:00Z", linnea, baraka);

            Document staff = page(get("/today"), lab.technician("Adaeze Lanternby"));
            assertThat(staff.select("article:has(a[href=/cells/" + avocet + "])")
                            .text())
                    .contains("Linnea Brass")
                    .contains("Baraka Hollowell");
            Document other = page(get("/today"), lab.student("Yuki Halfmoon"));
            assertThat(other.select("article:has(a[href=/cells/" + avocet + "])")
                            .text())
                    .contains("taken")
                    .doesNotContain("Linnea")
                    .doesNotContain("Baraka");
            Document own = page(get("/today"), baraka);
            assertThat(own.select("article:has(a[href=/cells/" + avocet + "])").text())
                    .contains("Linnea Brass");
            assertThat(page(get("/today"), person(Role.BENCH)).text()).doesNotContain("Linnea");
        }

        @Test
        void saysWhatWaitsForWhom() {
            SampleLab lab = new SampleLab(application);
            Person pilar = lab.student("Pilar Featherstone");
            Booking booking = lab.booked(lab.cell(7), "2026-03-11T12:07:00Z", pilar, null);
            clock.moveTo(booking.start().minus(Duration.ofMinutes(5)));
            Document today = page(get("/today"), pilar);
            assertThat(today.select("#waits ~ ul li").text())
                    .contains("12:07")
                    .contains("Pilar Featherstone")
                    .contains("No program is named yet");
            assertThat(today.select("#now").attr("hx-get")).isEqualTo("/today");
        }

        @Test
        void leadsFromMyPageToTheNextStep() {
            SampleLab lab = new SampleLab(application);
            Person arjun = lab.student("Arjun Thistledown");
            assertThat(page(get("/me"), arjun).select("h1").text()).isEqualTo("You have no booking ahead");
            Booking booking = lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", arjun, null);

            Document mine = page(get("/me"), arjun);
            assertThat(mine.select("h1").text()).startsWith("Next: ").endsWith("Thu 12 Mar, 12:07-12:37");
            assertThat(mine.select("header.answer a.button").attr("href"))
                    .isEqualTo("/bookings/" + booking.id() + "/program");
            assertThat(mine.select("#authorised ~ div").text())
                    .contains("operator")
                    .contains("every cell")
                    .contains("valid");
            desk.cancel(booking.id(), arjun.id());
            assertThat(page(get("/me"), arjun).select("#record ~ div").text())
                    .contains("Thu 12 Mar")
                    .contains("cancelled");
            assertThat(page(get("/me"), person(Role.ADMINISTRATOR)).select("#programs"))
                    .isEmpty();
            assertThat(send(get("/me"), person(Role.BENCH)).getStatus()).isEqualTo(403);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
