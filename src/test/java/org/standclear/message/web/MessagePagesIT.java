package org.standclear.message.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.SecondLab;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.people.Person;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.web.PageCases;

/** The box of messages and the wishes about e-mail. */
@OnH2
class MessagePagesIT extends PageCases {

    @Autowired
    ApplicationContext application;

    @Autowired
    Messages messages;

    @Autowired
    PlatformTransactionManager transactions;

    @Test
    void saysWhatComesHereWhileThereIsNothing() {
        Document page = page(get("/me/messages"), person(Role.STUDENT));

        assertThat(page.select("h1").text()).isEqualTo("No message yet");
        assertThat(page.select("main").text()).contains("When staff move a booking of yours");
    }

    @Test
    void showsAMessageAsNewOnce() {
        Person noor = person(Role.STUDENT);
        new TransactionTemplate(transactions)
                .executeWithoutResult(status ->
                        messages.tell(Message.of(noor.id(), "test", "Moved <b>", List.of("To Bittern."), "/me")));

        Document first = page(get("/me/messages"), noor);
        Document second = page(get("/me/messages"), noor);

        assertThat(first.select("h1").text()).isEqualTo("1 new message");
        assertThat(first.select("main").text()).contains("Moved <b>", "To Bittern.");
        assertThat(second.select("h1").text()).isEqualTo("No new message");
        assertThat(page(get("/me/messages"), person(Role.STUDENT)).text()).doesNotContain("Bittern");
    }

    @Test
    void keepsOfAVeryLongTextWhatFitsAndSaysHowMuchMoreThereIs() {
        Person noor = person(Role.STUDENT);
        List<String> turns = java.util.stream.IntStream.range(0, 200)
                .mapToObj(turn -> "Thu 26 Nov, 14:07-14:37, Avocet: you stand at the e-stop, " + turn)
                .toList();
        new TransactionTemplate(transactions)
                .executeWithoutResult(status ->
                        messages.tell(Message.of(noor.id(), "test", "Rush week is shared out", turns, "/windows/1")));

        List<String> kept = messages.of(noor.id(), 1).get(0).lines();
        int more = 200 - (kept.size() - 1);
        assertThat(kept.subList(0, kept.size() - 1))
                .isEqualTo(turns.subList(0, 200 - more))
                .hasSizeGreaterThan(50);
        assertThat(kept.get(kept.size() - 1)).isEqualTo("and " + more + " more, on the page.");
        List<String> longest = List.of("x".repeat(3939));
        assertThat(Message.of(noor.id(), "test", "s", longest, "/").lines()).isEqualTo(longest);
        assertThat(Message.of(noor.id(), "test", "s", List.of("x".repeat(3940)), "/")
                        .lines())
                .containsExactly("and 1 more, on the page.");
    }

    @Test
    void saysOfAMessageOfAnotherLabWhichAndByWhoseClock() {
        Person noor = person(Role.STUDENT);
        SecondLab there = new SecondLab(application, "America/St_Johns");
        Message message = Message.of(noor.id(), "test", "Your slot", List.of("Thu 12 Mar, 09:00."), "/me");
        LabScope.run(
                there.id(),
                () -> new TransactionTemplate(transactions).executeWithoutResult(status -> messages.tell(message)));

        String box = page(get("/me/messages"), noor).select("ul.roll").text();

        String when = DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH)
                .withZone(ZoneId.of("America/St_Johns"))
                .format(messages.of(noor.id(), 1).get(0).at());
        assertThat(box).contains(when + ", Second bench", ", by the clock of America/St Johns");
    }

    @Test
    void leadsToOlderMessagesAndCallsThemNewUntilTheyAreSeen() {
        Person noor = person(Role.STUDENT);
        for (int number = 1; number <= 65; number++) {
            Message message = Message.of(noor.id(), "test", "Message " + number + ".", List.of("Text."), "/me");
            new TransactionTemplate(transactions).executeWithoutResult(status -> messages.tell(message));
        }

        Document first = page(get("/me/messages"), noor);
        String older = first.select("nav.pager a").attr("href");
        Document second = page(get(older), noor);
        Document last = page(get(second.select("nav.pager a").attr("href")), noor);

        assertThat(first.select("h1").text()).isEqualTo("65 new messages");
        assertThat(first.select("ul.roll li")).hasSize(30);
        assertThat(second.select("h1").text()).isEqualTo("35 new messages");
        assertThat(last.select("ul.roll li")).hasSize(5);
        assertThat(last.select("nav.pager")).isEmpty();
        assertThat(last.select("ul.roll li a").eachText()).contains("Message 1.");
        assertThat(messages.unreadOf(noor.id())).isZero();
        assertThat(page(get(older), person(Role.STUDENT)).text()).doesNotContain("Text.");
    }

    @Test
    void keepsWishesAndRefusesWhatIsNoAddress() {
        Person noor = person(Role.STUDENT);
        var wrong = send(
                post("/me/messages")
                        .param("formToken", UUID.randomUUID().toString())
                        .param("address", "noor at college")
                        .param("on", "true")
                        .param("quietFrom", "25:00")
                        .param("quietUntil", "07:00"),
                noor);
        assertThat(wrong.getStatus()).isEqualTo(422);
        assertThat(document(wrong).select("input[name=address]").val()).isEqualTo("noor at college");
        assertThat(document(wrong).text()).contains("Write a time of day, as 21:00.");

        var kept = send(
                post("/me/messages")
                        .param("formToken", UUID.randomUUID().toString())
                        .param("address", "noor@college.example")
                        .param("on", "true")
                        .param("quietFrom", "22:00")
                        .param("quietUntil", "06:00"),
                noor);
        assertThat(location(kept)).isEqualTo("/me/messages");
        assertThat(messages.wishesOf(noor.id()).orElseThrow().address()).isEqualTo("noor@college.example");
    }
}
