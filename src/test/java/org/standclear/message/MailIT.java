package org.standclear.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.message.Messages.Wishes;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** E-mail over real SMTP, to a server inside the test. It is Wed 11 March 2026, 09:00 UTC; the lab's zone is UTC. */
class MailIT {

    private static final MailSettings SETTINGS =
            new MailSettings("Robot bench <bench@college.example>", "https://lab.college.example");

    abstract static class Cases {

        @Autowired
        MessageRows rows;

        @Autowired
        OutboxRows outbox;

        @Autowired
        Labs labs;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock clock;

        @Autowired
        PlatformTransactionManager transactions;

        private final GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        private int port;

        @SuppressWarnings("NullAway.Init")
        private JdbcMessages messages;

        @BeforeEach
        void aServer() {
            jdbc.sql("delete from messages where mail_state = 'WAITING'").update();
            messages = new JdbcMessages(rows, SETTINGS, labs, clock);
            server.start();
            port = server.getSmtp().getPort();
        }

        @AfterEach
        void noServer() {
            server.stop();
        }

        private MailPost post(String instance) {
            JavaMailSenderImpl sender = new JavaMailSenderImpl();
            sender.setHost("127.0.0.1");
            sender.setPort(port);
            return new MailPost(outbox, sender, SETTINGS, instance, clock);
        }

        private PersonId somebody(Wishes wishes) {
            PersonId person = PersonId.next();
            assertThat(messages.wish(person, wishes)).isEmpty();
            return person;
        }

        private PersonId somebody() {
            return somebody(Wishes.plain("p" + PersonId.next() + "@college.example"));
        }

        private void tell(Message message) {
            new TransactionTemplate(transactions).executeWithoutResult(status -> messages.tell(message));
        }

        private static Message moved(PersonId person) {
            return Message.of(
                    person,
                    "booking-moved",
                    "Your booking was moved \u2013 Avocet",
                    List.of("Avocet is down: <cable> & clamp.", "Yours is on Bittern now."),
                    "/bookings/1");
        }

        private String mailOf(PersonId person) {
            return messages.of(person, 1).get(0).mail();
        }

        @Test
        void sendsPlainTextAndHtmlWithTheRowsOwnMessageId() throws Exception {
            PersonId noor = somebody(Wishes.plain("noor@college.example"));
            tell(moved(noor));

            assertThat(post("one").round()).isEqualTo(1);

            MimeMessage mail = server.getReceivedMessages()[0];
            assertThat(mail.getSubject()).isEqualTo("Your booking was moved \u2013 Avocet");
            assertThat(mail.getAllRecipients()).extracting(Object::toString).containsExactly("noor@college.example");
            assertThat(mail.getMessageID())
                    .isEqualTo("<" + messages.of(noor, 1).get(0).id() + "@college.example>");
            MimeMultipart both = (MimeMultipart) mail.getContent();
            assertThat(both.getContentType()).startsWith("multipart/alternative");
            String text = String.valueOf(both.getBodyPart(0).getContent());
            String html = String.valueOf(both.getBodyPart(1).getContent());
            assertThat(text).contains("Avocet is down: <cable> & clamp.", "https://lab.college.example/bookings/1");
            String whose = labs.theLab().name() + "; times are by the clock of "
                    + labs.theLab().zoneName() + ".";
            assertThat(text).contains(whose);
            assertThat(html).contains(whose);
            assertThat(html).contains("&lt;cable&gt; &amp; clamp.").doesNotContain("<cable>");
            assertThat(mailOf(noor)).isEqualTo("sent by e-mail");
            assertThat(post("one").round()).isZero();
        }

        @Test
        void twoInstancesSendEachLetterOnce() throws Exception {
            List<PersonId> people = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                people.add(somebody());
                tell(moved(people.get(i)));
            }
            List<Callable<Integer>> rounds =
                    List.of(() -> post("one").round(), () -> post("two").round());
            ExecutorService both = Executors.newFixedThreadPool(2);
            try {
                int sent = 0;
                for (Future<Integer> round : both.invokeAll(rounds)) {
                    sent += round.get();
                }
                assertThat(sent).isEqualTo(30);
            } finally {
                both.shutdownNow();
            }
            HashSet<String> ids = new HashSet<>();
            for (MimeMessage mail : server.getReceivedMessages()) {
                assertThat(ids.add(mail.getMessageID())).as("sent twice").isTrue();
            }
            assertThat(ids).hasSize(30);
        }

        @Test
        void keepsEverythingWhileTheServerIsAwayAndSendsItOnceWhenItIsBack() throws Exception {
            PersonId noor = somebody();
            PersonId mateo = somebody();
            tell(moved(noor));
            tell(moved(mateo));
            server.stop();
            int tries = 0;
            for (int minute = 0; minute < 60; minute++) {
                assertThat(post("one").round()).isZero();
                clock.moveBy(Duration.ofMinutes(1));
                tries++;
            }
            int attempts = jdbc.sql("select max(attempts) from messages where person_id in (?, ?)")
                    .params(noor.value(), mateo.value())
                    .query(Integer.class)
                    .single();
            assertThat(attempts).as("tried with pauses").isBetween(4, 8).isLessThan(tries);
            assertThat(mailOf(noor)).isEqualTo("e-mail is tried again");

            server.start();
            port = server.getSmtp().getPort();
            clock.moveBy(Duration.ofMinutes(31));
            post("one").round();
            post("two").round();
            assertThat(server.getReceivedMessages()).hasSize(2);
            assertThat(mailOf(mateo)).isEqualTo("sent by e-mail");
        }

        @Test
        void sendsAgainUnderTheSameMessageIdWhenTheProcessDiedBeforeItWasWrittenDown() throws Exception {
            PersonId noor = somebody();
            tell(moved(noor));
            // the other instance claims the letter, hands it to the server, and dies before it can mark it
            OutboxRows.Due due = outbox.claim("dying", clock.instant()).orElseThrow();
            JavaMailSenderImpl sender = new JavaMailSenderImpl();
            sender.setHost("127.0.0.1");
            sender.setPort(port);
            MimeMessage mail = sender.createMimeMessage();
            Letter.write(mail, due, SETTINGS);
            sender.send(mail);

            assertThat(post("living").round()).as("the claim still stands").isZero();
            clock.moveBy(OutboxRows.CLAIM.plusSeconds(1));
            assertThat(post("living").round()).isEqualTo(1);

            assertThat(server.getReceivedMessages()).hasSize(2);
            assertThat(server.getReceivedMessages()[0].getMessageID())
                    .isEqualTo(server.getReceivedMessages()[1].getMessageID());
            assertThat(mailOf(noor)).isEqualTo("sent by e-mail");
        }

        @Test
        void waitsThroughTheQuietHoursAndSendsNothingToWhoWantsNone() {
            PersonId noor = somebody();
            clock.moveTo(Instant.parse("2026-03-11T22:30:00Z"));
            tell(moved(noor));
            assertThat(post("one").round()).isZero();
            clock.moveTo(Instant.parse("2026-03-12T06:59:59Z"));
            assertThat(post("one").round()).isZero();
            clock.moveTo(Instant.parse("2026-03-12T07:00:00Z"));
            assertThat(post("one").round()).isEqualTo(1);

            PersonId quiet = somebody(new Wishes("q@college.example", false, LocalTime.NOON, LocalTime.NOON));
            tell(moved(quiet));
            assertThat(post("one").round()).isZero();
            assertThat(messages.of(quiet, 5)).hasSize(1);
            assertThat(messages.unreadOf(quiet)).isEqualTo(1);
        }

        @Test
        void switchingOffAlsoStopsWhatStillWaits() {
            PersonId noor = somebody();
            tell(moved(noor));
            messages.wish(noor, new Wishes("n@college.example", false, LocalTime.NOON, LocalTime.NOON));

            assertThat(post("one").round()).isZero();
            assertThat(mailOf(noor)).isEmpty();
        }

        @Test
        void dropsWhatWouldOnlyConfuse() {
            PersonId noor = somebody();
            tell(moved(noor).once("offer:" + noor, clock.instant().plus(Duration.ofMinutes(10))));
            clock.moveBy(Duration.ofMinutes(11));

            assertThat(post("one").round()).isZero();
            assertThat(mailOf(noor)).contains("too late");
        }

        @Test
        void tellsOnceForAKeyAndNothingWhenTheActFails() {
            PersonId noor = somebody();
            Message once = moved(noor).once("reminder:" + noor, clock.instant().plusSeconds(60));
            tell(once);
            tell(once);
            assertThat(messages.of(noor, 5)).hasSize(1);

            assertThatThrownBy(() -> new TransactionTemplate(transactions).executeWithoutResult(status -> {
                        messages.tell(moved(noor));
                        throw new IllegalStateException("the act failed");
                    }))
                    .isInstanceOf(IllegalStateException.class);
            assertThat(messages.of(noor, 5)).hasSize(1);
        }

        @Test
        void refusesAddressesThatAreNoneOrMore() {
            for (String wrong : List.of(
                    "", "noor", "a@b", "a@b.example,c@d.example", "a@b.example\nBcc: c@d.example", "\"x\"@b.example")) {
                assertThat(messages.wish(PersonId.next(), Wishes.plain(wrong)))
                        .as(wrong)
                        .isPresent();
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
