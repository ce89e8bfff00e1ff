package org.standclear.story;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.platform.ids.BookingId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailVerification;

/** From a program at home to a released, logged and closed-out run, in real browsers; and the ways it must not go. */
class BrowserStoryIT {

    private static final Instant AT_THE_BENCH = Instant.parse("2026-03-11T10:09:00Z");
    private static final Map<String, String> DISPLAY = Map.of("power", "reduced", "override", "50");

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        MovableClock clock;

        @Autowired
        Bookings bookings;

        StoryPeople people;
        Seat noor;
        Seat mateo;
        Seat adaeze;
        BookingId booking = BookingId.next();

        @BeforeEach
        void aStory(Browser operator, Browser attendant, Browser releaser) {
            clock.moveToStart();
            people = new StoryPeople(application);
            noor = new Seat(operator, people.noor, people).signIn();
            mateo = new Seat(attendant, people.mateo, people).signIn();
            adaeze = new Seat(releaser, people.adaeze, people).signIn();
        }

        @AfterEach
        void leaveTheLab() {
            people.close();
        }

        @Test
        void goesFromHomeToAClosedOutRun() throws IOException {
            checksAtHomeAndMends();
            books();
            clock.moveTo(AT_THE_BENCH);
            signsIn();
            benchList();
            assertThat(releases()).startsWith("Released until 10:19");
            noor.isUsable("released").browser().picture("bench-released");
            noor.bench().submit("/start").isUsable("running");
            assertThat(state()).isEqualTo(BookingState.RUNNING);

            stopsWithOneTap();
            releasedAgainByTheShortList();
            closesOut();
            instructorReads();
        }

        private void checksAtHomeAndMends() throws IOException {
            String good = Files.readString(Path.of("seed-data/programs/peg-and-plate.yaml"));
            check(good.replace("speed-mm-s: 120", "speed-mm-s: 720"), "");
            assertThat(noor.browser().text())
                    .contains("outside limits")
                    .contains("Step 5 asks for 720 mm/s")
                    .contains("step 5, line 26");
            noor.isUsable("an answer outside limits").browser().picture("check-outside");
            noor.browser().resize(ScreenSize.PHONE);
            noor.isUsable("an answer on a phone");
            noor.browser().resize(ScreenSize.DESKTOP).follow("Bring the mended program");
            noor.browser().fill("Or paste the program", good).press("Check it");
            assertThat(noor.headline()).containsIgnoringCase("within");
            noor.isUsable("an answer within limits").browser().picture("check-within");
        }

        private void check(String sheet, String query) {
            noor.browser().visit("/check" + query);
            noor.isUsable("the check's form");
            noor.pick("cell", people.cell.toString());
            noor.browser().fill("Or paste the program", sheet).press("Check it");
        }

        private void books() {
            noor.browser().visit("/book");
            noor.isUsable("the day's free slots").browser().picture("book");
            noor.browser().click(noor.browser().find("a.slot[href*='" + people.cell + "'][href*='10:07']"));
            noor.isUsable("a slot");
            noor.pick("attendant", people.mateo.id().toString());
            noor.browser().press("Book this slot");
            booking = BookingId.of(noor.browser().path().replaceAll("^.*/bookings/([0-9a-f-]{36}).*$", "$1"));
            noor.isUsable("the booking");
            noor.browser().visit("/bookings/" + booking + "/program");
            noor.browser().find("button[type=submit]");
            noor.pick("revision", people.latest().id().toString());
            noor.browser().press("Attach and check");
            assertThat(state()).isEqualTo(BookingState.CHECKED);
            noor.isUsable("the program of the booking");
            for (String path : List.of("/today", "/me", "/cells", "/cells/" + people.cell, "/programs")) {
                noor.browser().visit(path);
                noor.isUsable(path);
            }
            noor.browser().visit("/me").picture("my-page");
            mateo.browser().visit("/me");
            assertThat(mateo.browser().text()).contains("10:07");
        }

        private void signsIn() {
            noor.answer(Map.of("other", "Mateo Ironbark")).isUsable("the session list");
            noor.answer(Map.of("clothing", "in-order")).answer(Map.of("line", "nothing-loose"));
            noor.answer(Map.of("tool", "G-02", "fixture", "as-booked")).sign();
            mateo.answer(Map.of("other", "Noor Candlewick"));
            mateo.answer(Map.of("clothing", "in-order")).answer(Map.of("line", "nothing-loose"));
            mateo.answer(Map.of("tool", "G-02", "fixture", "as-booked")).sign();
            assertThat(state()).isEqualTo(BookingState.READY);
        }

        private void benchList() {
            noor.answer(Map.of("fingerprint", people.latest().fingerprintEnd())).answer(DISPLAY);
            noor.answer(Map.of("sensitivity", "level 3")).answer(Map.of("tool", "G-02", "pull", "tight"));
            noor.answer(Map.of("fixture", "clamped")).answer(Map.of("ends", "passes", "passes", "5"));
            noor.bench().isUsable("the operator's signature").sign();
            mateo.answer(Map.of("hand", "on-it")).sign();
        }

        private String releases() {
            adaeze.bench();
            assertThat(adaeze.browser().text()).as("read blind").doesNotContain("reduced, 50 %");
            adaeze.isUsable("the releaser's list").browser().resize(ScreenSize.TABLET);
            adaeze.browser().visit("/bench/" + people.cell).picture("bench-list");
            adaeze.answer(DISPLAY).answer(Map.of("people", "clear")).sign();
            assertThat(state()).isEqualTo(BookingState.RELEASED);
            return noor.bench().headline();
        }

        private void stopsWithOneTap() {
            mateo.bench().submit("/stop");
            assertThat(state()).isEqualTo(BookingState.STOPPED);
            adaeze.bench();
            assertThat(adaeze.headline()).startsWith("Stopped");
            adaeze.isUsable("stopped").choose("cause", "precaution").submit("/reset");
            assertThat(state()).isEqualTo(BookingState.READY);
        }

        private void releasedAgainByTheShortList() {
            noor.answer(Map.of("fingerprint", people.latest().fingerprintEnd()))
                    .answer(DISPLAY)
                    .sign();
            mateo.answer(Map.of("hand", "on-it")).sign();
            releases();
            noor.bench().submit("/start");
            assertThat(state()).isEqualTo(BookingState.RUNNING);
        }

        private void closesOut() {
            noor.bench().browser().fill("Passes made", "5");
            noor.submit("/finish").isUsable("close-out");
            for (String tap : List.of("disabled", "out", "as-declared", "parked", "nothing")) {
                noor.bench()
                        .browser()
                        .click(noor.browser().find("form[action$='/close-out'] button[value='" + tap + "']"));
            }
            assertThat(state()).isEqualTo(BookingState.CLOSED_OUT);
        }

        private void instructorReads() {
            adaeze.browser().visit("/desk").resize(ScreenSize.DESKTOP);
            adaeze.isUsable("the desk").browser().picture("desk");
            adaeze.browser().visit("/today").picture("today");
            noor.browser().driver().manage().deleteAllCookies();
            Seat ines = new Seat(noor.browser(), people.ines, people).signIn();
            ines.browser().visit("/runs");
            ines.isUsable("the runs");
            ines.browser().click(ines.browser().find("main table a[href*='/runs/']"));
            assertThat(ines.browser().text())
                    .contains("Noor Candlewick")
                    .contains("Mateo Ironbark")
                    .contains("Adaeze Lanternby")
                    .contains("5 passes, 1 stop");
            ines.isUsable("the run").browser().picture("run");
            ines.browser().visit("/record/verify");
            ines.isUsable("verify").submit("/record/verify");
            assertThat(ines.browser().text()).containsIgnoringCase("whole");
            assertThat(application.getBean(Trail.class).verify(people.lab)).isInstanceOf(TrailVerification.Whole.class);
        }

        BookingState state() {
            return bookings.find(booking).orElseThrow().state();
        }

        @Test
        void doesNotGoWithoutASecondPersonTheSameFileAndACellInService() throws IOException {
            String good = Files.readString(Path.of("seed-data/programs/peg-and-plate.yaml"));
            check(good, "");
            attendantIsNotTheOperator();
            books();
            clock.moveTo(AT_THE_BENCH);
            signsIn();
            benchList();
            releases();

            oneByteMore(good);
            assertThat(noor.bench().browser().text()).contains("The program file changed.");
            assertThat(state()).isNotEqualTo(BookingState.RELEASED);

            WebElement more = mateo.bench().browser().find("aside details summary");
            mateo.browser().driver().executeScript("arguments[0].click()", more);
            mateo.browser().fill("What is the matter?", "cable chafe").press("Tag out of service");
            assertThat(noor.bench().browser().text()).contains("out of service").contains("cable chafe");
            assertThat(noor.browser().findAll("form[action$='/start']")).isEmpty();
        }

        private void attendantIsNotTheOperator() {
            noor.browser().visit("/book");
            noor.browser().click(noor.browser().find("a.slot[href*='" + people.cell + "'][href*='10:07']"));
            assertThat(noor.browser().findAll("select[name=attendant] option[value='" + people.noor.id() + "']"))
                    .as("nobody is offered to attend their own run")
                    .isEmpty();
            WebElement list = noor.browser().driver().findElement(By.cssSelector("select[name=attendant]"));
            noor.browser()
                    .driver()
                    .executeScript(
                            "arguments[0].append(new Option('me', arguments[1], true, true))",
                            list,
                            people.noor.id().toString());
            noor.browser().press("Book this slot");
            assertThat(noor.browser().text()).contains("Not booked").containsIgnoringCase("somebody else");
            noor.browser().consoleErrors();
        }

        private void oneByteMore(String good) {
            String program = people.latest().program().toString();
            clock.moveBy(java.time.Duration.ofSeconds(20));
            check(good + "\n", "?program=" + program + "&cell=" + people.cell);
        }
    }

    @Nested
    @OnH2
    @BrowserTest
    class H2 extends Cases {}

    @Nested
    @OnPostgres
    @BrowserTest
    class Postgres extends Cases {}
}
