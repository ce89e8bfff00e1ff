package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.component.VEvent;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.openqa.selenium.StaleElementReferenceException;
import org.standclear.booking.Booking;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.web.WebUser;

/** What a story in the demo stands on: the demo at an instant, people at browsers, a mail server, a calendar program. */
abstract class RushStage {

    private static final Instant WEDNESDAY_NOON = Instant.parse("2026-03-11T12:03:00Z");

    private static final String SITE = "https://bench.quillhaven.example";

    static final Duration PATIENCE = Duration.ofMinutes(3);

    private final GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    private @Nullable DemoAt demo;

    DemoAt demo() {
        return Objects.requireNonNull(demo);
    }

    <T> T the(Class<T> type) {
        return demo().the(type);
    }

    void begin(TestDatabase database) {
        server.start();
        demo = DemoAt.start(
                WEDNESDAY_NOON,
                database,
                "--spring.mail.host=127.0.0.1",
                "--spring.mail.port=" + server.getSmtp().getPort(),
                "--standclear.mail.from=Robot bench <bench@quillhaven.example>",
                "--standclear.mail.site=" + SITE);
    }

    @AfterEach
    void end() {
        if (demo != null) {
            demo.close();
        }
        server.stop();
    }

    WebUser at(String login) {
        return demo().visitor().signIn(login, DemoCollege.password());
    }

    Person person(String login) {
        return the(People.class).byLogin(login).orElseThrow();
    }

    static int percent(String headline) {
        return Integer.parseInt(headline.replaceAll("(?s).* at (\\d+) %.*", "$1"));
    }

    /** What a calendar program reads of the booking. */
    List<String> states(String address, Booking booking) throws Exception {
        return new CalendarBuilder()
                .build(new StringReader(demo().visitor().get(address).html())).<VEvent>getComponents("VEVENT").stream()
                        .filter(event -> event.getProperty("UID")
                                .orElseThrow()
                                .getValue()
                                .startsWith(booking.id() + "@"))
                        .map(event -> event.getProperty("STATUS").orElseThrow().getValue())
                        .toList();
    }

    /** The HTML of such a letter; the outbox is emptied every few seconds. */
    String letter(String address, String words) throws Exception {
        Instant until = Instant.now().plus(Duration.ofSeconds(60));
        while (Instant.now().isBefore(until)) {
            for (MimeMessage mail : server.getReceivedMessages()) {
                String html = html(mail);
                if (mail.getAllRecipients()[0].toString().equals(address) && html.contains(words)) {
                    return html;
                }
            }
            Thread.sleep(200);
        }
        throw new AssertionError("no e-mail to " + address + " with: " + words);
    }

    private static String html(MimeMessage mail) throws Exception {
        return String.valueOf(((MimeMultipart) mail.getContent()).getBodyPart(1).getContent());
    }

    /** Opens the letter in the browser as a mail program would, and says where on the site its link leads. */
    String opened(Browser browser, String letter) throws Exception {
        Path file = Files.createTempFile("letter", ".html");
        Files.writeString(file, letter);
        try {
            browser.visit(file.toUri().toString());
            String link = String.valueOf(browser.find("a").getAttribute("href"));
            assertThat(link).startsWith(SITE);
            return link.substring(SITE.length());
        } finally {
            Files.delete(file);
        }
    }

    /** Somebody sits down at the browser and signs in; whoever sat there before is signed out. */
    Browser seat(Browser browser, String login) {
        browser.startAt(demo().address());
        browser.visit("/sign-in").driver().manage().deleteAllCookies();
        browser.visit("/sign-in")
                .fill("Sign-in name", login)
                .fill("Password", DemoCollege.password())
                .press("Sign in");
        assertThat(browser.path()).doesNotContain("sign-in");
        return browser;
    }

    /** Waits for what a page shows by itself after a while. */
    static void until(BooleanSupplier met) throws InterruptedException {
        Instant end = Instant.now().plus(PATIENCE);
        while (!isMet(met)) {
            assertThat(Instant.now()).as("patience").isBefore(end);
            Thread.sleep(200);
        }
    }

    private static boolean isMet(BooleanSupplier met) {
        try {
            return met.getAsBoolean();
        } catch (StaleElementReferenceException replaced) {
            return false;
        }
    }

    static String headline(Browser browser) {
        return browser.find("h1").getText();
    }
}
