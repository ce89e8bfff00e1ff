package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.SampleLab;
import org.standclear.booking.Turns;
import org.standclear.booking.WaitingList;
import org.standclear.cell.CellStates;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.PageCases;

/** The waiting list, lost turns, arrangements and moving everybody, as pages. It is Wed 11 March 2026, 09:00 UTC. */
@OnH2
class TurnPagesIT extends PageCases {

    @Autowired
    ApplicationContext application;

    @Autowired
    Bookings bookings;

    @Autowired
    BookingDesk desk;

    @Autowired
    WaitingList waitingList;

    @Autowired
    Turns turns;

    @Autowired
    Accommodations accommodations;

    @Autowired
    CellStates states;

    @Autowired
    MovableClock clock;

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

    private MockHttpServletResponse act(String path, Person by, String... values) {
        var request = post(path).param("formToken", UUID.randomUUID().toString());
        for (int i = 0; i < values.length; i += 2) {
            request = request.param(values[i], values[i + 1]);
        }
        return send(request, by);
    }

    @Test
    void saysWhyThereIsNothingToWaitForWithoutAnAuthorisation() {
        Person teuila = lab().person("Teuila Brackwater", Role.STUDENT);
        Document page = page(get("/book/waits"), teuila);
        assertThat(page.select("main form")).isEmpty();
        assertThat(page.select("main").text())
                .contains("not authorised as operator of any cell", "Ask lab staff for the induction")
                .doesNotContain("wait for one below");

        var sent = act("/book/waits", teuila, "day", "2026-03-12", "from", "12:00", "until", "13:00", "purpose", "");
        assertThat(sent.getStatus()).isEqualTo(422);
        assertThat(waitingList.of(teuila.id())).isEmpty();
    }

    @Test
    void whoCameTooLateWaitsIsOfferedTheSlotAndTakesIt() {
        Person noor = lab().student("Noor Candlewick");
        Person yuki = lab().student("Yuki Halfmoon");
        Booking booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, null);
        Document refused = page(get("/book/slot?cell=" + avocet + "&start=2026-03-12T12:07:00Z"), yuki);
        String wait = refused.select("a:contains(Wait for a slot)").attr("href");
        Document form = page(get(wait), yuki);
        assertThat(form.select("input[name=from]").val()).isEqualTo("12:07");
        assertThat(form.select("h1").text()).isEqualTo("You wait for no slot");

        var wrong = act("/book/waits", yuki, "cell", avocet.toString(), "day", "soon", "from", "12", "until", "13:00");
        assertThat(wrong.getStatus()).isEqualTo(422);
        assertThat(document(wrong).select("input[name=day]").val()).isEqualTo("soon");
        assertThat(location(act(
                        "/book/waits",
                        yuki,
                        "cell",
                        avocet.toString(),
                        "day",
                        "2026-03-12",
                        "from",
                        "12:00",
                        "until",
                        "13:00",
                        "purpose",
                        "")))
                .isEqualTo("/book/waits");
        desk.cancel(booking.id(), noor.id());
        waitingList.round();

        Document offered = page(get("/book/waits"), yuki);
        assertThat(offered.select("h1").text()).isEqualTo("A slot is offered to you");
        String offer = offered.select("a[href^=/book/offers/]").attr("href");
        String cell = "section[aria-labelledby=cell-" + avocet + "]";
        Document others = page(get("/book?day=2026-03-12"), noor);
        assertThat(others.select(cell + " .slots .slot").eachText())
                .contains("12:07 offered until 09:10")
                .doesNotContain("12:07 taken", "12:07");
        assertThat(others.text()).doesNotContain("Yuki");
        assertThat(page(get("/book/slot?cell=" + avocet + "&start=2026-03-12T12:07:00Z"), noor)
                        .select("h1 ~ p")
                        .text())
                .contains("offered to somebody on the waiting list until 09:10")
                .doesNotContain("Yuki");
        assertThat(page(get("/book?day=2026-03-12"), yuki)
                        .select(cell + " .slots a[href=" + offer + "]")
                        .text())
                .contains("offered to you until 09:10");
        assertThat(page(get(offer), yuki).select("h1").text()).startsWith("Offered to you until 09:10");
        assertThat(send(get(offer), noor).getStatus()).isEqualTo(404);
        assertThat(page(get("/me/messages"), yuki).text()).contains("A slot is offered to you until 09:10");
        assertThat(page(get("/me"), yuki).select(".answer").text())
                .contains("offered to you until 09:10", "Thu 12 Mar 12:07-12:37");
        assertThat(location(act(offer + "/take", yuki))).startsWith("/bookings/");
        assertThat(act(offer + "/take", yuki).getStatus()).isEqualTo(422);
        assertThat(page(get(offer), yuki).select("h1").text()).startsWith("This offer is over");
    }

    @Test
    void aStudentSaysWhyAndStaffExcuseItWithAMakeUp() {
        Person noor = lab().student("Noor Candlewick");
        Person mateo = lab().student("Mateo Ironbark");
        Person adaeze = lab().technician("Adaeze Lanternby");
        Booking lost = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, mateo);
        clock.moveTo(Instant.parse("2026-03-12T11:00:00Z"));
        desk.cancel(lost.id(), noor.id());
        assertThat(page(get("/bookings/" + lost.id()), noor).select("a[href$=/lost]"))
                .hasSize(1);
        assertThat(act("/bookings/" + lost.id() + "/lost", noor, "words", " ").getStatus())
                .isEqualTo(422);
        assertThat(location(act("/bookings/" + lost.id() + "/lost", noor, "words", "The bus did not come")))
                .isEqualTo("/bookings/" + lost.id());
        assertThat(send(get("/bookings/" + lost.id() + "/lost"), mateo).getStatus())
                .isEqualTo(404);
        assertThat(page(get("/bookings/" + lost.id()), mateo).text()).doesNotContain("bus");

        Document list = page(get("/book/lost"), adaeze);
        assertThat(list.text()).contains("The bus did not come");
        location(act("/bookings/" + lost.id() + "/excuse", adaeze, "makeUp", "true"));
        assertThat(turns.find(lost.id()).orElseThrow().excusedBy()).isEqualTo(adaeze.id());
        Document person = page(get("/people/" + noor.id() + "/turns"), adaeze);
        assertThat(person.text()).contains("late cancelled, excused", "until Wed 10 Jun");
        location(act("/bookings/" + lost.id() + "/count-again", adaeze));
        assertThat(turns.makeUpsOf(noor.id())).isEmpty();
    }

    @Test
    void nobodyButStaffAndThePersonLearnsOfAnArrangement() {
        Person noor = lab().student("Noor Candlewick");
        Person mateo = lab().student("Mateo Ironbark");
        Person other = lab().student("Yuki Halfmoon");
        Person adaeze = lab().technician("Adaeze Lanternby");
        String page = "/people/" + noor.id() + "/turns";
        assertThat(act(page + "/arrangements", adaeze, "slotMinutes", "5").getStatus())
                .isEqualTo(422);
        assertThat(location(act(page + "/arrangements", adaeze, "slotMinutes", "45", "lowerBench", "true")))
                .isEqualTo(page);
        assertThat(accommodations.of(noor.id())).contains(new Accommodation(45, true, false));
        Booking booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, mateo);

        assertThat(page(get("/bookings/" + booking.id()), noor).text()).contains("45 min slots, lower bench");
        assertThat(page(get("/bookings/" + booking.id()), adaeze).text()).contains("45 min slots, lower bench");
        assertThat(page(get("/bookings/" + booking.id()), mateo).text()).doesNotContain("lower bench");
        assertThat(send(get(page), other).getStatus()).isEqualTo(403);
        assertThat(send(get(page), noor).getStatus()).isEqualTo(403);
        // to others it looks like two ordinary bookings
        Document day = page(get("/book?day=2026-03-12"), other);
        var marks = day.select("section[aria-labelledby=cell-" + avocet + "] .slots .slot");
        assertThat(marks.eachText()).contains("12:07 taken", "12:37 taken").noneMatch(text -> text.contains("12:52"));
        assertThat(day.select("section[aria-labelledby=cell-" + avocet + "]").text())
                .doesNotContain("Noor")
                .doesNotContain("12:52");
        assertThat(page(get("/book?day=2026-03-12"), adaeze).text()).contains("Noor");
    }

    @Test
    void everybodyIsMovedOffACellAndTheMoveIsUndone() {
        Person noor = lab().student("Noor Candlewick");
        Person adaeze = lab().technician("Adaeze Lanternby");
        lab().cell(15);
        Booking booking = lab().booked(avocet, "2026-03-12T12:07:00Z", noor, null);
        String path = "/cells/" + avocet + "/move-all";
        Document plan = page(get(path), adaeze);
        assertThat(plan.select("h1").text()).startsWith("1 booking moves off");
        String seen = plan.select("input[name=seen]").val();

        assertThat(act(path, adaeze, "seen", seen, "reason", "").getStatus()).isEqualTo(422);
        assertThat(act(path, adaeze, "seen", "old", "reason", "cable").getStatus())
                .isEqualTo(422);
        String moved = location(act(path, adaeze, "seen", seen, "reason", "cable chafed"));
        assertThat(page(get(moved), adaeze).select("h1").text()).startsWith("Moved: 1 booking off");
        assertThat(bookings.find(booking.id()).orElseThrow().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
        assertThat(location(act(moved + "/undo", adaeze))).isEqualTo(moved);
        assertThat(page(get(moved), adaeze).select("h1").text()).startsWith("Undone");
        assertThat(act(moved + "/undo", adaeze).getStatus()).isEqualTo(422);
        assertThat(bookings.of(noor.id(), clock.instant().plus(Duration.ofHours(1))))
                .singleElement()
                .matches(back -> back.cell().equals(avocet));
    }
}
