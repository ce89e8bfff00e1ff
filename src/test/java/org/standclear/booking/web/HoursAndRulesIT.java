package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;
import org.standclear.trail.TrailFilter;
import org.standclear.trail.TrailReader;

/** Who leads the lab sets its hours and the numbers of the booking rules. It is Wed 11 March 2026, 09:00 UTC. */
class HoursAndRulesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        OpeningHours hours;

        @Autowired
        BookingNumbers numbers;

        @Autowired
        Bookings bookings;

        @Autowired
        TrailReader trail;

        @Autowired
        Labs labs;

        private @Nullable SampleLab lab;
        private @Nullable Person ines;
        private Map<DayOfWeek, List<OpenPeriod>> weekBefore = Map.of();
        private BookingSettings numbersBefore = BookingSettings.DEFAULTS;

        @BeforeEach
        void aLab() {
            lab = new SampleLab(application);
            ines = lab().person("Ines Quarryvale", Role.INSTRUCTOR);
            weekBefore = hours.week();
            numbersBefore = numbers.inForce();
        }

        @AfterEach
        void asItWas() {
            hours.setWeek(weekBefore, ines().id(), "as it was");
            numbers.change(numbersBefore, ines().id(), "as it was");
            hours.exceptions(LocalDate.of(2026, 3, 11)).forEach(day -> hours.asEveryWeek(day.day(), ines().id()));
        }

        private SampleLab lab() {
            return Objects.requireNonNull(lab);
        }

        private Person ines() {
            return Objects.requireNonNull(ines);
        }

        private static MockHttpServletRequestBuilder sent(Document page, String action, String... changes) {
            Element form = Objects.requireNonNull(page.selectFirst("form[action=" + action + "]"));
            MockHttpServletRequestBuilder request = post(action);
            for (Element input : form.select("input[name]")) {
                String value = input.val();
                for (int i = 0; i < changes.length; i += 2) {
                    value = changes[i].equals(input.attr("name")) ? changes[i + 1] : value;
                }
                request.param(
                        input.attr("name"),
                        input.attr("name").equals("formToken")
                                ? UUID.randomUUID().toString()
                                : value);
            }
            return request;
        }

        private String latestWords() {
            return trail.latest(
                            new TrailFilter(labs.theLab().id(), "booking.", null, "", null, null), Long.MAX_VALUE, 1)
                    .get(0)
                    .words();
        }

        @Test
        void changesTheWeekWithWhoAndWhy() {
            Document page = page(get("/book/hours"), ines());
            location(send(
                    sent(page, "/book/hours/week", "saturday", "9:00-12:00, 13:00–15:30", "reason", "rush week"),
                    ines()));

            assertThat(hours.week().get(DayOfWeek.SATURDAY))
                    .hasToString("[OpenPeriod[opens=09:00, closes=12:00], OpenPeriod[opens=13:00, closes=15:30]]");
            assertThat(latestWords()).isEqualTo("Opening hours changed: rush week");
            MockHttpServletResponse stale =
                    send(sent(page, "/book/hours/week", "sunday", "09:00-10:00", "reason", "too"), ines());
            assertThat(stale.getStatus()).isEqualTo(409);
            assertThat(document(stale).text()).contains("13:00-15:30");
            assertThat(hours.week()).doesNotContainKey(DayOfWeek.SUNDAY);
        }

        @Test
        void saysWhatCannotBeReadAndStoresNothing() {
            Document page = page(get("/book/hours"), ines());
            String[][] wrong = {
                {"monday", "8 till 6", "cannot be read"},
                {"tuesday", "18:00-08:00", "ends before it begins"},
                {"friday", "08:00-12:00, 11:00-13:00", "overlap"},
                {"sunday", "25:00-26:00", "cannot be read"}
            };
            for (String[] one : wrong) {
                MockHttpServletResponse answer =
                        send(sent(page, "/book/hours/week", one[0], one[1], "reason", "a try"), ines());
                assertThat(answer.getStatus()).isEqualTo(422);
                assertThat(document(answer).text()).contains(one[2]);
                assertThat(document(answer).select("input[name=" + one[0] + "]").val())
                        .isEqualTo(one[1]);
            }
            assertThat(send(sent(page, "/book/hours/week"), ines()).getStatus()).isEqualTo(422);
            MockHttpServletResponse past =
                    send(sent(page, "/book/hours/days", "day", "2026-03-10", "note", "a holiday"), ines());
            assertThat(document(past).text()).contains("That day is past");
            MockHttpServletResponse noDay =
                    send(sent(page, "/book/hours/days", "day", "2026-02-30", "hours", "x", "note", ""), ines());
            assertThat(document(noDay).text())
                    .contains("There is no such day")
                    .contains("cannot be read")
                    .contains("Write something here.");
            assertThat(hours.week()).isEqualTo(weekBefore);
        }

        @Test
        void asksOnceMoreWhereBookingsWouldBeOutside() {
            Person noor = lab().student("Noor Candlewick");
            Booking booking = lab().booked(lab().cell(7), "2026-03-13T09:07:00Z", noor, null);
            Document page = page(get("/book/hours"), ines());
            MockHttpServletRequestBuilder closed =
                    sent(page, "/book/hours/days", "day", "2026-03-13", "hours", "", "note", "college holiday");
            MockHttpServletResponse asked = send(closed, ines());

            assertThat(asked.getStatus()).isEqualTo(422);
            Document question = document(asked);
            assertThat(question.select("h1").text()).contains("outside the new hours");
            assertThat(question.select("a[href=/bookings/" + booking.id() + "]").text())
                    .contains("09:07-09:37: Noor Candlewick");
            assertThat(hours.on(LocalDate.of(2026, 3, 13)).closed()).isFalse();
            Booking later = lab().booked(lab().cell(15), "2026-03-13T10:15:00Z", noor, null);
            MockHttpServletResponse again = send(sent(question, "/book/hours/days"), ines());
            assertThat(again.getStatus()).isEqualTo(422);
            assertThat(document(again).select("a[href=/bookings/" + later.id() + "]"))
                    .isNotEmpty();
            location(send(sent(document(again), "/book/hours/days"), ines()));

            assertThat(hours.on(LocalDate.of(2026, 3, 13)).note()).isEqualTo("college holiday");
            assertThat(bookings.find(booking.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
            Document listed = page(get("/book/hours"), ines());
            assertThat(listed.text()).contains("Fri 13 Mar 2026, closed: college holiday");
            location(send(sent(listed, "/book/hours/days/remove", "day", "2026-03-13"), ines()));
            assertThat(hours.on(LocalDate.of(2026, 3, 13)).closed()).isFalse();
        }

        @Test
        void putsOtherNumbersInForce() {
            Document page = page(get("/book/rules"), ines());
            MockHttpServletResponse wrong = send(
                    sent(page, "/book/rules", "slotMinutes", "5", "graceMinutes", "200", "horizonDays", "two weeks"),
                    ines());
            assertThat(wrong.getStatus()).isEqualTo(422);
            assertThat(document(wrong).text())
                    .contains("from 10 to 240; \"5\" is not")
                    .contains("from 1 to 180; \"two weeks\" is not")
                    .contains("Write something here.");
            assertThat(numbers.inForce()).isEqualTo(numbersBefore);

            location(send(sent(page, "/book/rules", "futurePerPerson", "3", "reason", "rush <b>week</b>"), ines()));
            assertThat(numbers.inForce().futurePerPerson()).isEqualTo(3);
            assertThat(page(get("/book/rules"), ines()).text())
                    .contains("rush <b>week</b>")
                    .contains("Ines Quarryvale");
            assertThat(latestWords()).isEqualTo("Changed the booking rules: rush <b>week</b>");
            assertThat(send(sent(page, "/book/rules", "futurePerPerson", "4", "reason", "more"), ines())
                            .getStatus())
                    .isEqualTo(409);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
