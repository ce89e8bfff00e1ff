package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Turns;
import org.standclear.booking.WaitingList;
import org.standclear.booking.allocation.PlannedTurn;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.Windows;
import org.standclear.cell.CellStates;
import org.standclear.message.Messages;
import org.standclear.people.Accommodations;
import org.standclear.people.Authorisations;
import org.standclear.people.DueDates;
import org.standclear.people.DueDates.DueAssignment;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.MovableClock;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailReader;
import org.standclear.trail.TrailVerification;

/**
 * Rush Thursday, from the forecast to the refilled slot, played in the demo by its people at their pages: a due date at over
 * twice what the lab can give, staggered, a plan searched and accepted, a cell down and everybody moved, a late cancel that
 * somebody of the waiting list takes. Calendars are read by an independent library, e-mails by a real server.
 */
class RushThursdayIT extends RushStage {

    private static final LocalDate THURSDAY = LocalDate.of(2026, 3, 19);
    private static final int SLOTS = 27;

    @Test
    void isPlayedFromTheForecastToTheRefilledSlot() throws Exception {
        begin(TestDatabase.freshH2());
        WebUser ines = at("ines");
        staggers(ines);
        UUID window = the(Windows.class).from(THURSDAY).get(0).id();
        UUID search = shares(ines, window);
        List<Booking> planned = bookings(search);
        Booking moved = cellGoesDown(planned);
        refills(search, moved.cell());
        nobodyLearnsOfNoorsArrangement(window);
        assertThat(the(Trail.class).verify(the(Labs.class).theLab().id())).isInstanceOf(TrailVerification.Whole.class);
    }

    /** The forecast shows the rush, and the suggestion makes it less. */
    private void staggers(WebUser ines) {
        DueAssignment rush = the(DueDates.class).dueFrom(the(MovableClock.class).instant()).stream()
                .filter(one -> one.title().equals("Sorting run"))
                .findFirst()
                .orElseThrow();
        String path = "/forecast/" + rush.id();
        WebPage together = ines.get(path);
        int before = percent(together.document().select("h1").text());
        assertThat(before).as("use of the peak day, percent").isGreaterThan(200);
        String move = together.document().select("#staggered ~ p.acts a").attr("href");
        WebPage asked = ines.get(move);
        sent(ines, asked.form(path + "/move").with("reason", "Thursday would be overrun"));

        DueAssignment apart = the(DueDates.class).find(rush.id()).orElseThrow();
        assertThat(apart.due().values().stream().distinct()).hasSizeGreaterThan(1);
        assertThat(percent(ines.get(path).document().select("h1").text())).isLessThan(before);
        assertThat(trail(rush.id().toString())).anyMatch(words -> words.contains("Thursday would be overrun"));
    }

    private List<String> trail(String subject) {
        return the(TrailReader.class).about(the(Labs.class).theLab().id(), subject).stream()
                .map(entry -> entry.words() + " " + entry.facts())
                .toList();
    }

    /** A search finds a plan, which books everybody in one act. */
    private UUID shares(WebUser ines, UUID window) throws InterruptedException {
        String path = "/windows/" + window;
        WebPage searching = sent(ines, ines.get(path).form(path + "/searches"));
        UUID search = UUID.fromString(searching.path().substring("/searches/".length()));
        Instant until = Instant.now().plus(PATIENCE);
        while (the(Searches.class).find(search).orElseThrow().endedAt() == null
                && Instant.now().isBefore(until)) {
            Thread.sleep(200);
        }
        WebPage preview = ines.get("/searches/" + search);
        assertThat(preview.document().select("h1").text()).contains("turns have a place");
        assertThat(preview.document().select("figure.strip")).isNotEmpty();
        assertThat(the(Plans.class).leftOut(search))
                .as("who is left out, and why")
                .isNotEmpty()
                .allSatisfy(one -> assertThat(one.says()).isNotBlank());
        assertThat(bookings(search)).as("nothing before it is accepted").isEmpty();
        sent(ines, preview.form("/searches/" + search + "/accept"));

        List<Booking> booked = bookings(search);
        assertThat(booked)
                .hasSizeBetween(SLOTS / 2, SLOTS)
                .hasSize(the(Plans.class).places(search).size());
        assertThat(booked.stream().map(one -> one.cell() + " " + one.start())).doesNotHaveDuplicates();
        return search;
    }

    private List<Booking> bookings(UUID search) {
        List<Booking> booked = new ArrayList<>();
        for (PlannedTurn place : the(Plans.class).places(search)) {
            BookingId id = place.booking();
            if (id != null) {
                booked.add(the(Bookings.class).find(id).orElseThrow());
            }
        }
        return booked;
    }

    /** The fullest cell is tagged out: everybody on it is moved, told, and can see it in their calendars. */
    private Booking cellGoesDown(List<Booking> planned) throws Exception {
        CellId down =
                planned.stream()
                        .collect(Collectors.groupingBy(Booking::cell, Collectors.counting()))
                        .entrySet()
                        .stream()
                        .max(Map.Entry.<CellId, Long>comparingByValue()
                                .thenComparing(one -> one.getKey().toString()))
                        .orElseThrow()
                        .getKey();
        List<Booking> standing =
                planned.stream().filter(one -> one.cell().equals(down)).toList();
        Map<PersonId, String> calendars = new HashMap<>();
        for (Booking one : standing) {
            Person operator = the(People.class).find(one.operator()).orElseThrow();
            assertThat(the(Messages.class)
                            .wish(operator.id(), Messages.Wishes.plain(operator.login() + "@quillhaven.example")))
                    .isEmpty();
            WebUser user = at(operator.login());
            WebPage made = user.submit(user.get("/me/calendar").form("/me/calendar"));
            String address = made.document().select("code.token").text();
            calendars.put(operator.id(), address.substring(address.indexOf("/calendar/")));
        }
        the(CellStates.class).tagOut(down, person("adaeze").id(), "cable chafed");
        WebUser adaeze = at("adaeze");
        String path = "/cells/" + down + "/move-all";
        WebPage plan = adaeze.get(path + "?until=" + THURSDAY);
        WebPage done = sent(adaeze, posted(plan, path).with("reason", "cable chafed"));
        assertThat(done.document().select("h1").text()).startsWith("Moved: ");

        for (Booking one : standing) {
            assertThat(the(Bookings.class).find(one.id()).orElseThrow().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
            List<Booking> now = elsewhere(one, down);
            boolean madeUp = the(Turns.class).makeUpsOf(one.operator()).stream().anyMatch(Turns.MakeUp::stands);
            assertThat(!now.isEmpty() || madeUp).as("a new slot, or a make-up").isTrue();
            List<String> states = states(Objects.requireNonNull(calendars.get(one.operator())), one);
            assertThat(states).containsExactly("CANCELLED");
            Person operator = the(People.class).find(one.operator()).orElseThrow();
            assertThat(mailTo(operator.login() + "@quillhaven.example", "cable chafed"))
                    .isTrue();
        }
        assertThat(standing).anyMatch(one -> !elsewhere(one, down).isEmpty());
        return standing.get(0);
    }

    private List<Booking> elsewhere(Booking one, CellId down) {
        return the(Bookings.class).of(one.operator(), one.start().minusSeconds(60)).stream()
                .filter(now -> now.operator().equals(one.operator())
                        && !now.cell().equals(down)
                        && now.state().holdsItsSlot()
                        && Objects.equals(now.assignment(), one.assignment()))
                .toList();
    }

    /** On the day somebody cancels late: it is counted once, and who waits is offered the slot and takes it. */
    private void refills(UUID search, CellId down) throws Exception {
        the(MovableClock.class).moveTo(Instant.parse("2026-03-19T08:05:00Z"));
        Booking given = bookings(search).stream()
                .filter(one -> !one.cell().equals(down) && one.state() == BookingState.BOOKED)
                .filter(one -> one.start().isAfter(Instant.parse("2026-03-19T08:45:00Z"))
                        && one.start().isBefore(Instant.parse("2026-03-19T10:00:00Z")))
                .findFirst()
                .orElseThrow();
        Person waiting = the(Plans.class).leftOut(search).stream()
                .map(one -> the(People.class).find(one.operator()).orElseThrow())
                .filter(one -> may(one, given) && !one.login().equals("noor"))
                .findFirst()
                .orElseThrow();
        the(Messages.class).wish(waiting.id(), Messages.Wishes.plain(waiting.login() + "@quillhaven.example"));
        WebUser user = at(waiting.login());
        WebPage joined = sent(
                user,
                user.get("/book/waits?cell=" + given.cell() + "&start=" + given.start())
                        .form("/book/waits"));
        assertThat(joined.document().select("h1").text()).startsWith("You wait for");

        Person operator = the(People.class).find(given.operator()).orElseThrow();
        WebUser giving = at(operator.login());
        String cancel = "/bookings/" + given.id() + "/cancel";
        WebPage asked = giving.get(cancel);
        assertThat(asked.text()).contains("late cancel");
        sent(giving, asked.form(cancel));
        assertThat(the(Bookings.class).find(given.id()).orElseThrow().state()).isEqualTo(BookingState.LATE_CANCELLED);
        the(WaitingList.class).round();

        assertThat(mailTo(waiting.login() + "@quillhaven.example", "is free")).isTrue();
        assertThat(giving.get("/book?day=" + THURSDAY)
                        .document()
                        .select("section[aria-labelledby=cell-" + given.cell() + "] .slot[data-state=offered]"))
                .as("offered, and not to whom")
                .isNotEmpty()
                .allSatisfy(mark ->
                        assertThat(mark.text()).contains("offered until").doesNotContain(waiting.printedName()));
        String offer = user.get("/book/waits")
                .document()
                .select("a[href^=/book/offers/]")
                .attr("href");
        WebPage booked = sent(user, user.get(offer).form(offer + "/take"));
        assertThat(booked.path()).startsWith("/bookings/");
        Booking refilled = the(Bookings.class)
                .find(BookingId.of(booked.path().substring("/bookings/".length())))
                .orElseThrow();
        assertThat(refilled.operator()).isEqualTo(waiting.id());
        assertThat(refilled.cell()).isEqualTo(given.cell());
        assertThat(refilled.start()).isEqualTo(given.start());
    }

    private boolean may(Person person, Booking booking) {
        return the(Authorisations.class).of(person.id()).stream()
                .anyMatch(one -> one.duty() == Duty.OPERATOR && one.covers(booking.cell(), booking.start()));
    }

    /** Noor has longer slots and a lower bench; nobody who meets her bookings reads of it. */
    private void nobodyLearnsOfNoorsArrangement(UUID window) {
        assertThat(the(Accommodations.class).of(person("noor").id())).isPresent();
        WebUser mateo = at("mateo");
        for (String path : List.of(
                "/me",
                "/today",
                "/book?day=" + THURSDAY,
                "/windows/" + window,
                "/book/waits",
                "/me/messages",
                "/me/partners",
                "/attendants")) {
            WebPage page = mateo.follow(mateo.get(path));
            assertThat(page.status()).as(path).isEqualTo(200);
            assertThat(page.text())
                    .as(path)
                    .doesNotContainIgnoringCase("lower bench")
                    .doesNotContainIgnoringCase("accommodation")
                    .doesNotContain("45 min");
        }
    }
}
