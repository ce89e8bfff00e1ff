package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Cells;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** What people do to a booking on its pages, and what others are told. */
class BookingActsIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Bookings bookings;

        @Autowired
        MovableClock clock;

        private @Nullable SampleLab lab;
        private @Nullable Person noor;
        private @Nullable Person mateo;
        private @Nullable Booking booking;

        @BeforeEach
        void aBooking() {
            lab = new SampleLab(application);
            noor = lab().student("Noor Candlewick");
            mateo = lab().student("Mateo Ironbark");
            booking = lab().booked(lab().cell(7), "2026-03-12T12:07:00Z", noor(), mateo());
        }

        private SampleLab lab() {
            return Objects.requireNonNull(lab);
        }

        private Person noor() {
            return Objects.requireNonNull(noor);
        }

        private Person mateo() {
            return Objects.requireNonNull(mateo);
        }

        private String path() {
            return "/bookings/" + Objects.requireNonNull(booking).id();
        }

        private Booking now() {
            return bookings.find(Objects.requireNonNull(booking).id()).orElseThrow();
        }

        private MockHttpServletRequestBuilder act(String what) {
            return post(path() + what).param("formToken", UUID.randomUUID().toString());
        }

        private MockHttpServletRequestBuilder act(String what, int version) {
            return act(what).param("version", String.valueOf(version));
        }

        @Test
        void showsTheBookingToItsPeopleAndStaffOnly() {
            Person adaeze = lab().technician("Adaeze Lanternby");
            for (Person one : List.of(noor(), mateo(), adaeze)) {
                Document page = page(get(path()), one);
                assertThat(page.select("h1").text()).endsWith("Thu 12 Mar, 12:07-12:37");
                assertThat(page.text())
                        .contains("Noor Candlewick")
                        .contains("Mateo Ironbark")
                        .contains("booked");
            }
            Person yuki = lab().student("Yuki Halfmoon");
            String other = "/bookings/" + UUID.randomUUID();
            for (String page : List.of(path(), path() + "/cancel", path() + "/attendant", other, "/bookings/1")) {
                assertThat(send(get(page), yuki).getStatus()).isEqualTo(404);
            }
            for (String what : List.of("/cancel", "/attendant")) {
                assertThat(send(act(what, 1), yuki).getStatus()).isEqualTo(404);
            }
            assertThat(send(act("/check-in"), yuki).getStatus()).isEqualTo(404);
            assertThat(send(act("/cancel", 1), mateo()).getStatus()).isEqualTo(404);
            assertThat(now().state()).isEqualTo(BookingState.BOOKED);
        }

        @Test
        void cancelsAfterAsking() {
            Document ask = page(get(path() + "/cancel"), noor());
            assertThat(ask.text()).contains("The slot is free for others at once, and nothing is counted.");
            String version = ask.select("input[name=version]").val();
            location(send(act("/cancel").param("version", version), noor()));
            assertThat(now().state()).isEqualTo(BookingState.CANCELLED);
            assertThat(page(get("/me"), mateo())
                            .select(".answer a[href=/me/messages]")
                            .text())
                    .isEqualTo("1 new message");
            assertThat(page(get("/me/messages"), mateo()).text())
                    .contains("You are not needed at the e-stop", "Thu 12 Mar 12:07");
            assertThat(page(get("/me/messages"), noor()).text()).contains("No message yet");
            MockHttpServletResponse again = send(act("/cancel").param("version", version), noor());
            assertThat(again.getStatus()).isEqualTo(422);
            assertThat(document(again).text()).contains("The booking is cancelled and cannot be cancelled");
        }

        @Test
        void saysBeforehandThatACancelIsLate() {
            clock.moveTo(now().start().minus(Duration.ofMinutes(30)));
            assertThat(page(get(path() + "/cancel"), noor()).text())
                    .contains("late cancel")
                    .contains("less than 2 h");
        }

        @Test
        void showsBothVersionsWhenTheBookingChangedMeanwhile() {
            Person tal = lab().student("Tal Emberley");
            int seen = now().version();
            bookings.askForAttendant(now().id(), noor().id());
            MockHttpServletResponse stale =
                    send(act("/attendant", seen).param("attendant", tal.id().toString()), noor());
            assertThat(stale.getStatus()).isEqualTo(409);
            assertThat(document(stale).text()).contains("Tal Emberley").contains("needs one");
            assertThat(send(act("/cancel", seen), noor()).getStatus()).isEqualTo(409);
            assertThat(now().attendant()).isNull();
        }

        @Test
        void namesAnotherAttendantAndLetsTheAttendantStepBack() {
            Person tal = lab().student("Tal Emberley");
            Document form = page(get(path() + "/attendant"), noor());
            assertThat(form.select("h1").text()).isEqualTo("Mateo Ironbark attends the e-stop");
            assertThat(form.select("select option").eachAttr("value"))
                    .contains(tal.id().toString())
                    .doesNotContain(noor().id().toString());
            location(send(
                    act("/attendant", now().version())
                            .param("attendant", tal.id().toString()),
                    noor()));
            assertThat(now().attendant()).isEqualTo(tal.id());

            assertThat(page(get(path() + "/attendant"), tal).select("h1").text())
                    .isEqualTo("Step back from the e-stop?");
            assertThat(send(
                                    act("/attendant", now().version())
                                            .param("attendant", mateo().id().toString()),
                                    tal)
                            .getStatus())
                    .isEqualTo(404);
            assertThat(location(send(act("/attendant", now().version()).param("attendant", ""), tal)))
                    .isEqualTo("/me");
            assertThat(now().attendant()).isNull();
            assertThat(send(get(path()), tal).getStatus()).isEqualTo(404);
        }

        @Test
        void checksInOnlyAroundTheStart() {
            MockHttpServletResponse early = send(act("/check-in"), noor());
            assertThat(early.getStatus()).isEqualTo(422);
            assertThat(document(early).text()).contains("check-in opens 10 min before the start");
            clock.moveTo(now().start().minus(Duration.ofMinutes(5)));
            location(send(act("/check-in"), lab().technician("Adaeze Lanternby")));
            assertThat(now().checkedInAt()).isEqualTo(clock.instant());
        }

        @Test
        void staffKeepACellAndGiveItBack() {
            Person adaeze = lab().technician("Adaeze Lanternby");
            MockHttpServletResponse standing = send(closure("12:00", "14:00", "RBT 110-02"), adaeze);
            assertThat(standing.getStatus()).isEqualTo(422);
            assertThat(document(standing).select("a[href=" + path() + "]").text())
                    .contains("Noor Candlewick");
            MockHttpServletResponse wrong = send(closure("25:00", "14:00", ""), adaeze);
            assertThat(document(wrong).text()).contains("There is no such time: \"25:00\"");
            assertThat(document(send(closure("15:00", "14:00", "x"), adaeze)).text())
                    .contains("The end has to be after the start");

            assertThat(location(send(closure("14:00", "16:00", "RBT 110-02"), adaeze)))
                    .isEqualTo("/book?day=2026-03-12");
            Document day = page(get("/book?day=2026-03-12"), adaeze);
            String cell = application
                    .getBean(Cells.class)
                    .find(now().cell())
                    .orElseThrow()
                    .name();
            // other tests keep cells of their own on that day
            String kept = day.select("a[href^=/closures/]:not([href*=new])").eachAttr("href").stream()
                    .filter(href -> page(get(href), adaeze).select("h1").text().startsWith(cell))
                    .findFirst()
                    .orElseThrow();
            assertThat(page(get(kept), adaeze).select("h1").text())
                    .isEqualTo(cell + " is kept for a class, Thu 12 Mar 14:00-16:00");
            location(send(
                    post(kept + "/remove").param("formToken", UUID.randomUUID().toString()), adaeze));
            assertThat(send(get(kept), adaeze).getStatus()).isEqualTo(404);
            assertThat(send(get("/closures/new"), person(Role.STUDENT)).getStatus())
                    .isEqualTo(403);
        }

        private MockHttpServletRequestBuilder closure(String from, String until, String words) {
            return post("/closures/new")
                    .param("formToken", UUID.randomUUID().toString())
                    .param("cell", now().cell().toString())
                    .param("day", "2026-03-12")
                    .param("from", from)
                    .param("until", until)
                    .param("kind", "CLASS")
                    .param("words", words);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
