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
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.BulkMoves;
import org.standclear.booking.Slot;
import org.standclear.booking.Turns;
import org.standclear.booking.WaitingList;
import org.standclear.booking.allocation.PlannedTurn;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Windows;
import org.standclear.message.Messages;
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
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailReader;
import org.standclear.trail.TrailVerification;

/**
 * Rush Thursday, from the forecast to the refilled slot, played in the demo by its people at real browsers: a due date at
 * over twice what the lab can give, staggered, a plan searched and accepted, a cell down and everybody moved, a late cancel
 * that somebody of the waiting list takes. Calendars are read by an independent library, e-mails come from a real server.
 */
@BrowserTest
class RushThursdayIT extends RushStage {

    private static final LocalDate THURSDAY = LocalDate.of(2026, 3, 19);
    private static final int SLOTS = 27;

    @Test
    void isPlayedFromTheForecastToTheRefilledSlot(Browser staff, Browser student) throws Exception {
        begin(TestDatabase.freshH2());
        seat(staff, "ines");
        staggers(staff);
        UUID window = the(Windows.class).from(THURSDAY).get(0).id();
        UUID search = shares(staff, window);
        new OthersEyes(this).nobodyLearnsOfNoorsArrangement(window, search, student);
        List<Booking> planned = bookings(search);
        CellId down = fullest(planned);
        cellGoesDown(
                down, planned.stream().filter(one -> one.cell().equals(down)).toList(), staff, student);
        refills(search, down, staff, student);
        assertThat(the(Trail.class).verify(the(Labs.class).theLab().id())).isInstanceOf(TrailVerification.Whole.class);
    }

    /** The forecast shows the rush while dates are tried, and the suggestion makes it less. */
    private void staggers(Browser ines) throws InterruptedException {
        DueAssignment rush = the(DueDates.class).dueFrom(the(MovableClock.class).instant()).stream()
                .filter(one -> one.title().equals("Sorting run"))
                .findFirst()
                .orElseThrow();
        ines.visit("/forecast").follow("RBT 110, Sorting run");
        int before = percent(headline(ines));
        assertThat(before).as("use of the peak day, percent").isGreaterThan(200);
        WebElement date = ines.find("input[name='due-" + rush.sections().get(0).id() + "']");
        ines.find("input[name='due-" + rush.sections().get(0).id() + "'] + input[type=range]")
                .sendKeys(Keys.ARROW_RIGHT); // dragged by one day
        assertThat(date.getDomProperty("value")).isEqualTo(THURSDAY.plusDays(1).toString());
        until(() -> percent(headline(ines)) < before);
        ines.visit("/forecast/" + rush.id()).follow("Stagger the due dates");
        ines.fill("Why they change", "Thursday would be overrun").press("Put them in force");

        DueAssignment apart = the(DueDates.class).find(rush.id()).orElseThrow();
        assertThat(apart.due().values().stream().distinct()).hasSizeGreaterThan(1);
        assertThat(percent(headline(ines))).isLessThan(before);
        assertThat(the(TrailReader.class)
                        .about(the(Labs.class).theLab().id(), rush.id().toString()))
                .anyMatch(entry -> (entry.words() + entry.facts()).contains("Thursday would be overrun"));
    }

    /** A search finds a plan, which books everybody in one act. */
    private UUID shares(Browser ines, UUID window) throws InterruptedException {
        ines.visit("/windows").follow("Rush Thursday").press("Search for the best plan");
        UUID search = UUID.fromString(ines.path().replaceAll(".*/searches/([0-9a-f-]{36}).*", "$1"));
        until(() -> !ines.findAll("form[action$='/accept'] button").isEmpty());
        assertThat(headline(ines)).contains("turns have a place");
        assertThat(ines.findAll("figure.strip")).isNotEmpty();
        assertThat(ines.findAll("#left ~ .frame tbody tr"))
                .as("who is left out, and why")
                .hasSameSizeAs(the(Plans.class).leftOut(search))
                .isNotEmpty()
                .allSatisfy(row -> assertThat(
                                row.findElements(By.tagName("td")).get(1).getText())
                        .isNotBlank());
        assertThat(bookings(search)).as("nothing before it is accepted").isEmpty();
        ines.picture("rush-plan");
        ines.press("Accept this plan");

        List<Booking> booked = bookings(search);
        assertThat(booked)
                .hasSizeBetween(SLOTS / 2, SLOTS)
                .hasSize(the(Plans.class).places(search).size());
        assertThat(booked.stream().map(one -> one.cell() + " " + one.start())).doesNotHaveDuplicates();
        ines.visit("/windows/" + window);
        assertThat(headline(ines)).isEqualTo("The slots are shared out");
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

    private static CellId fullest(List<Booking> planned) {
        return planned.stream().collect(Collectors.groupingBy(Booking::cell, Collectors.counting())).entrySet().stream()
                .max(Map.Entry.<CellId, Long>comparingByValue()
                        .thenComparing(one -> one.getKey().toString()))
                .orElseThrow()
                .getKey();
    }

    /** A cell is tagged out: everybody on it is moved, told, and can see it in their calendars. */
    private void cellGoesDown(CellId down, List<Booking> standing, Browser staff, Browser student) throws Exception {
        Map<PersonId, String> calendars = new HashMap<>();
        Person first = operator(standing.get(0));
        calendars.put(first.id(), subscribes(seat(student, first.login()), first));
        for (Booking one : standing.subList(1, standing.size())) {
            calendars.computeIfAbsent(one.operator(), id -> subscribes(operator(one)));
        }
        seat(staff, "adaeze").visit("/cells/" + down + "/stop");
        staff.driver().executeScript("arguments[0].click()", staff.find("input[value='out-of-service']"));
        staff.fill("What is the matter?", "cable chafed");
        staff.click(staff.find("form[action$='/stop'] button[type=submit]"));
        staff.visit("/cells/" + down).follow("Move all bookings");
        staff.driver()
                .executeScript(
                        "arguments[0].value = arguments[1]", staff.field("Bookings up to and on"), THURSDAY.toString());
        staff.press("Plan again");
        BookingId overtaken = aPlannedSlotIsOfferedToSomebody(down);
        staff.fill("Why", "cable chafed").press("Move everybody");
        assertThat(headline(staff)).as(staff.text()).startsWith("Moved: ");
        assertThat(the(Bookings.class).find(overtaken).orElseThrow().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
        assertThat(staff.text()).contains("not as planned: that slot was taken");

        for (Booking one : standing) {
            assertThat(the(Bookings.class).find(one.id()).orElseThrow().state()).isEqualTo(BookingState.MOVED_BY_STAFF);
            boolean madeUp = the(Turns.class).makeUpsOf(one.operator()).stream().anyMatch(Turns.MakeUp::stands);
            assertThat(!elsewhere(one, down).isEmpty() || madeUp)
                    .as("a new slot, or a make-up")
                    .isTrue();
            assertThat(states(Objects.requireNonNull(calendars.get(one.operator())), one))
                    .containsExactly("CANCELLED");
            assertThat(letter(operator(one).login() + "@quillhaven.example", "cable chafed"))
                    .isNotBlank();
        }
        assertThat(standing).anyMatch(one -> !elsewhere(one, down).isEmpty());
        student.visit("/me/messages");
        assertThat(student.text()).contains("cable chafed", "sent by e-mail");
        String page = opened(student, letter(first.login() + "@quillhaven.example", "cable chafed"));
        assertThat(student.text()).contains("cable chafed", "Open the page");
        student.visit(page);
        assertThat(student.path()).as("the page that the letter leads to").startsWith("/bookings/");
        assertThat(student.text()).contains(operator(standing.get(0)).printedName());
    }

    /** While the plan is being looked at, a round of the waiting list gives one of its slots to somebody who waits. */
    private BookingId aPlannedSlotIsOfferedToSomebody(CellId down) {
        BulkMoves.Planned planned =
                the(BulkMoves.class)
                        .plan(new BulkMoves.Which(down, Instant.parse("2026-03-19T23:00:00Z"), false))
                        .stream()
                        .filter(one -> one.to() != null)
                        .findFirst()
                        .orElseThrow();
        Slot slot = Objects.requireNonNull(planned.to());
        Person adaeze = person("adaeze");
        WaitingList list = the(WaitingList.class);
        assertThat(list.join(new WaitingList.JoinWait(
                        adaeze.id(), slot.cell(), slot.start(), slot.end(), null, null, adaeze.id())))
                .isInstanceOf(WaitingList.Joined.On.class);
        list.round();
        assertThat(list.of(adaeze.id()))
                .anyMatch(
                        one -> one.offer() != null && one.offer().slot().start().equals(slot.start()));
        return planned.booking().id();
    }

    private Person operator(Booking booking) {
        return the(People.class).find(booking.operator()).orElseThrow();
    }

    /** Makes a calendar address and wants e-mail, at the pages for it. */
    private String subscribes(Browser browser, Person person) {
        browser.visit("/me/messages").fill("E-mail address", person.login() + "@quillhaven.example");
        browser.tick("Send me e-mail").press("Keep this");
        browser.visit("/me/calendar").press("Make an address");
        String address = browser.find("code.token").getText();
        return address.substring(address.indexOf("/calendar/"));
    }

    /** The same without a browser, for the many. */
    private String subscribes(Person person) {
        the(Messages.class).wish(person.id(), Messages.Wishes.plain(person.login() + "@quillhaven.example"));
        WebUser user = at(person.login());
        WebPage made = user.submit(user.get("/me/calendar").form("/me/calendar"));
        String address = made.document().select("code.token").text();
        return address.substring(address.indexOf("/calendar/"));
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
    private void refills(UUID search, CellId down, Browser gives, Browser waits) throws Exception {
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
        seat(waits, waiting.login())
                .visit("/book/waits?cell=" + given.cell() + "&start=" + given.start())
                .press("Wait for it");
        assertThat(headline(waits)).startsWith("You wait for");

        seat(gives, operator(given).login()).visit("/bookings/" + given.id()).follow("Cancel");
        assertThat(gives.text()).contains("late cancel");
        gives.press("Cancel it, late");
        assertThat(the(Bookings.class).find(given.id()).orElseThrow().state()).isEqualTo(BookingState.LATE_CANCELLED);
        the(WaitingList.class).round();

        gives.visit("/book?day=" + THURSDAY);
        assertThat(gives.findAll("section[aria-labelledby='cell-" + given.cell() + "'] .slot[data-state=offered]"))
                .as("offered, and not to whom")
                .isNotEmpty()
                .allSatisfy(mark ->
                        assertThat(mark.getText()).contains("offered until").doesNotContain(waiting.printedName()));
        String offer = opened(waits, letter(waiting.login() + "@quillhaven.example", "is free"));
        waits.visit(offer);
        assertThat(headline(waits)).startsWith("Offered to you until ");
        waits.press("Take it");
        Booking refilled = the(Bookings.class)
                .find(BookingId.of(waits.path().replaceAll(".*/bookings/([0-9a-f-]{36}).*", "$1")))
                .orElseThrow();
        assertThat(refilled.operator()).isEqualTo(waiting.id());
        assertThat(refilled.cell()).isEqualTo(given.cell());
        assertThat(refilled.start()).isEqualTo(given.start());
        gives.visit("/book?day=" + THURSDAY);
        assertThat(gives.findAll(".slot[data-state=offered]")).isEmpty();
        assertThat(gives.consoleErrors()).isEmpty();
        assertThat(waits.consoleErrors()).isEmpty();
    }

    private boolean may(Person person, Booking booking) {
        return the(Authorisations.class).of(person.id()).stream()
                .anyMatch(one -> one.duty() == Duty.OPERATOR && one.covers(booking.cell(), booking.start()));
    }
}
