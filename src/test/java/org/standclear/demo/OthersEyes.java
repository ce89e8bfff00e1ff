package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jsoup.nodes.Element;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.booking.WaitingList;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.Person;
import org.standclear.platform.time.LabTime;
import org.standclear.testing.MovableClock;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/**
 * What other students can read of somebody's arrangement, wherever they look: nothing. Noor has 45 min slots and a lower
 * bench; Mateo stands at her e-stop, Kofi has nothing to do with her.
 */
record OthersEyes(RushStage stage) {

    private static final List<String> TELLING =
            List.of("lower bench", "accommodation", "arrangement", "45 min", "helper");
    private static final Duration USUAL = Duration.ofMinutes(30);

    void nobodyLearnsOfNoorsArrangement(UUID window, UUID search, Browser browser) {
        Person noor = stage.person("noor");
        assertThat(stage.the(Accommodations.class).of(noor.id())).contains(new Accommodation(45, true, false));
        WebUser mateo = stage.at("mateo");
        WebUser kofi = stage.at("kofi");
        List<Booking> hers = longer(noor);
        assertThat(hers).as("a booking of hers that is longer than others").isNotEmpty();
        List<String> pages = Stream.concat(
                        Stream.of(
                                "/me",
                                "/today",
                                "/windows",
                                "/windows/" + window,
                                "/book/waits",
                                "/me/messages",
                                "/me/partners",
                                "/me/record",
                                "/runs",
                                "/cells"),
                        hers.stream().map(this::day))
                .distinct()
                .toList();
        Stream.of(mateo, kofi).forEach(who -> pages.forEach(path -> tellsNothing(read(who, path), path)));
        Stream.of(mateo, kofi).forEach(who -> tellsNothing(feed(who), "calendar"));
        hers.forEach(one -> looksLikeOrdinaryBookings(kofi, one));
        theyAreNotLetIn(kofi, noor, window, search, hers);
        anOfferToHerLooksLikeAnyOther(kofi, noor);
        pagesStayTheSame(kofi, pages);
        stage.seat(browser, "kofi").visit(day(hers.get(0)));
        tellsNothing(browser.text(), "in the browser");
    }

    private List<Booking> longer(Person person) {
        return stage
                .the(Bookings.class)
                .of(person.id(), stage.the(MovableClock.class).instant())
                .stream()
                .filter(one -> Duration.between(one.start(), one.end()).compareTo(USUAL) > 0)
                .toList();
    }

    private String day(Booking booking) {
        return "/book?day=" + stage.the(LabTime.class).date(booking.start());
    }

    private static String read(WebUser who, String path) {
        WebPage page = who.follow(who.get(path));
        assertThat(page.status()).as(path).isEqualTo(200);
        return page.text();
    }

    private static void tellsNothing(String text, String where) {
        TELLING.forEach(words -> assertThat(text).as(where).doesNotContainIgnoringCase(words));
    }

    /** The calendar as a program reads it, with what the summaries and descriptions say. */
    private static String feed(WebUser who) {
        WebPage made = who.submit(who.get("/me/calendar").form("/me/calendar"));
        String address = made.document().select("code.token").text();
        return who.get(address.substring(address.indexOf("/calendar/"))).html();
    }

    /** Everything that is taken or offered on the cell that day comes in stretches of the usual length. */
    private void looksLikeOrdinaryBookings(WebUser kofi, Booking hers) {
        List<Element> rows = stretches(kofi, hers.cell().toString(), day(hers), "taken");
        assertThat(rows).isNotEmpty().allSatisfy(row -> assertThat(length(row)).isEqualTo(USUAL));
        assertThat(rows.toString()).doesNotContain(stage.person("noor").printedName());
    }

    private static List<Element> stretches(WebUser who, String cell, String day, String state) {
        return who
                .get(day)
                .document()
                .select("section[aria-labelledby=cell-" + cell + "] figure.strip tbody tr")
                .stream()
                .filter(row -> row.select(".state").attr("data-state").equals(state))
                .toList();
    }

    private static Duration length(Element row) {
        String[] span = row.text()
                .replaceAll("^.*?(\\d\\d:\\d\\d)-(\\d\\d:\\d\\d).*$", "$1 $2")
                .split(" ");
        return Duration.between(LocalTime.parse(span[0]), LocalTime.parse(span[1]));
    }

    /** The plan, lists of the course and her own pages are not for other students. */
    private void theyAreNotLetIn(WebUser kofi, Person noor, UUID window, UUID search, List<Booking> hers) {
        Map<String, Integer> closed = new LinkedHashMap<>();
        closed.put("/searches/" + search, 403);
        closed.put("/windows/" + window + "/plan", 403);
        closed.put("/people/" + noor.id(), 403);
        closed.put("/people/" + noor.id() + "/turns", 403);
        closed.put("/fairness", 403);
        closed.put("/fairness/people.csv", 403);
        closed.put("/book/make-ups", 403);
        closed.put("/bookings/" + hers.get(0).id(), 404);
        closed.put("/bookings/" + hers.get(0).id() + "/attendant", 404);
        closed.forEach(
                (path, status) -> assertThat(kofi.get(path).status()).as(path).isEqualTo(status));
    }

    /** She waits, and is offered 45 minutes; others see that half hours are offered. */
    private void anOfferToHerLooksLikeAnyOther(WebUser kofi, Person noor) {
        WaitingList list = stage.the(WaitingList.class);
        Slot slot = stage.the(SlotCalendar.class)
                .nextFree(noor.id(), stage.the(MovableClock.class).instant().plus(Duration.ofHours(3)), 1)
                .get(0);
        assertThat(Duration.between(slot.start(), slot.end())).isEqualTo(Duration.ofMinutes(45));
        assertThat(list.join(new WaitingList.JoinWait(
                        noor.id(), slot.cell(), slot.start(), slot.end(), null, null, noor.id())))
                .isInstanceOf(WaitingList.Joined.On.class);
        list.round();
        Optional<WaitingList.Offer> offer = list.of(noor.id()).stream()
                .flatMap(one -> Stream.ofNullable(one.offer()))
                .filter(one -> one.slot().start().equals(slot.start()))
                .findFirst();
        assertThat(offer).as("an offer of a longer slot").isPresent();
        String day = "/book?day=" + stage.the(LabTime.class).date(slot.start());
        assertThat(stretches(kofi, slot.cell().toString(), day, "offered"))
                .isNotEmpty()
                .allSatisfy(row -> assertThat(length(row)).isEqualTo(USUAL));
        tellsNothing(read(kofi, day), day);
        assertThat(read(kofi, day)).doesNotContain(noor.printedName());
        assertThat(kofi.get("/book/offers/" + offer.orElseThrow().id()).status())
                .isEqualTo(404);
        list.decline(offer.orElseThrow().id(), noor.id());
    }

    /** An arrangement made for somebody else changes no letter of what Kofi reads. */
    private void pagesStayTheSame(WebUser kofi, List<String> pages) {
        Accommodations accommodations = stage.the(Accommodations.class);
        Person wren = stage.person("wren");
        Instant standing = stage.the(MovableClock.class).instant();
        List<String> before = pages.stream().map(path -> read(kofi, path)).toList();
        accommodations.set(
                wren.id(),
                new Accommodation(45, true, true),
                stage.person("ines").id());
        List<String> after = pages.stream().map(path -> read(kofi, path)).toList();
        accommodations.set(wren.id(), Accommodation.NONE, stage.person("ines").id());
        assertThat(stage.the(MovableClock.class).instant()).isEqualTo(standing);
        assertThat(after).isEqualTo(before);
    }
}
