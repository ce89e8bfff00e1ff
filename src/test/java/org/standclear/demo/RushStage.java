package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.GreenMailUtil;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.component.VEvent;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.standclear.booking.Booking;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** What a story in the demo stands on: the demo at an instant, people at their pages, a mail server, a calendar program. */
abstract class RushStage {

    private static final Instant WEDNESDAY_NOON = Instant.parse("2026-03-11T12:03:00Z");

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
                "--standclear.mail.site=https://bench.quillhaven.example");
    }

    @AfterEach
    void end() {
        if (demo != null) {
            demo.close();
        }
        server.stop();
    }

    WebUser at(String login) {
        return demo().visitor().signIn(login, org.standclear.testing.DemoCollege.password());
    }

    Person person(String login) {
        return the(People.class).byLogin(login).orElseThrow();
    }

    WebPage sent(WebUser user, WebPage.WebForm form) {
        WebPage page = user.follow(user.submit(form));
        assertThat(page.status()).as(page.text()).isEqualTo(200);
        return page;
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

    /** Whether the server gets such a letter; the outbox is emptied every few seconds. */
    boolean mailTo(String address, String words) throws Exception {
        Instant until = Instant.now().plus(Duration.ofSeconds(60));
        while (Instant.now().isBefore(until)) {
            for (MimeMessage mail : server.getReceivedMessages()) {
                if (mail.getAllRecipients()[0].toString().equals(address)
                        && GreenMailUtil.getBody(mail).replaceAll("=\r?\n", "").contains(words)) {
                    return true;
                }
            }
            Thread.sleep(500);
        }
        return false;
    }

    /** The form that is sent by POST, where another on the page has the same address. */
    static WebPage.WebForm posted(WebPage page, String action) {
        Map<String, String> values = new LinkedHashMap<>();
        page.document().forms().stream()
                .filter(form -> form.attr("action").equals(action)
                        && form.attr("method").equalsIgnoreCase("post"))
                .findFirst()
                .orElseThrow()
                .formData()
                .forEach(field -> values.put(field.key(), field.value()));
        return new WebPage.WebForm(action, values);
    }
}
