package org.standclear.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
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

/**
 * What a person reads last is what was written last, and quiet hours are quiet, whatever the mail server did before.
 * It is Wed 11 March 2026, 09:00 UTC; the lab's zone is UTC.
 */
class MailOrderIT {

    private static final MailSettings SETTINGS = new MailSettings("bench@college.example", "https://lab.example");

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

        @SuppressWarnings("NullAway.Init")
        private SmtpThatAnswers server;

        @SuppressWarnings("NullAway.Init")
        private JdbcMessages messages;

        @BeforeEach
        void aServer() throws Exception {
            jdbc.sql("delete from messages where mail_state = 'WAITING'").update();
            messages = new JdbcMessages(rows, SETTINGS, labs, clock);
            server = new SmtpThatAnswers();
        }

        @AfterEach
        void noServer() throws Exception {
            server.close();
        }

        private MailPost post(int port) {
            JavaMailSenderImpl sender = new JavaMailSenderImpl();
            sender.setHost("127.0.0.1");
            sender.setPort(port);
            return new MailPost(outbox, sender, SETTINGS, "one", clock);
        }

        private int round() {
            return post(server.port()).round();
        }

        private void roundWithoutServer() {
            assertThat(post(1).round()).isZero();
        }

        private static String address(PersonId person) {
            return "p" + person + "@college.example";
        }

        private PersonId somebody() {
            PersonId person = PersonId.next();
            assertThat(messages.wish(person, Wishes.plain(address(person)))).isEmpty();
            return person;
        }

        private void tell(PersonId person, String subject) {
            Message message = Message.of(person, "test", subject, List.of("Text."), "/me");
            new TransactionTemplate(transactions).executeWithoutResult(status -> messages.tell(message));
        }

        private List<String> takenFor(PersonId person) {
            return server.taken().stream()
                    .filter(one -> one.startsWith(address(person)))
                    .map(one -> one.substring(address(person).length() + 1))
                    .toList();
        }

        @Test
        void lettersToOnePersonArriveInTheOrderInWhichTheyWereWritten() {
            PersonId noor = somebody();
            tell(noor, "Moved to Bittern");
            // tried for 50 minutes: the next pause is half an hour
            for (int minute = 0; minute < 50; minute++) {
                roundWithoutServer();
                clock.moveBy(Duration.ofMinutes(1));
            }
            tell(noor, "Moved back to Avocet");
            tell(noor, "Moved to Dunlin");

            assertThat(round()).isEqualTo(3);
            assertThat(takenFor(noor)).containsExactly("Moved to Bittern", "Moved back to Avocet", "Moved to Dunlin");
        }

        @Test
        void aLetterWaitsWhileAnEarlierOneToTheSamePersonIsUnderWay() {
            PersonId noor = somebody();
            tell(noor, "First");
            tell(noor, "Second");
            assertThat(outbox.claim("another", clock.instant()).orElseThrow().subject())
                    .isEqualTo("First");

            assertThat(round()).isZero();

            // the other instance died: after its claim both leave, in order
            clock.moveBy(OutboxRows.CLAIM.plusSeconds(1));
            assertThat(round()).isEqualTo(2);
            assertThat(takenFor(noor)).containsExactly("First", "Second");
        }

        @Test
        void quietHoursThatBeganWhileTheServerWasAwayAreQuiet() {
            PersonId noor = somebody();
            clock.moveTo(Instant.parse("2026-03-11T20:00:00Z"));
            tell(noor, "Moved to Bittern");
            // pauses of 1, 2, 4, 8, 16 and 30 minutes: the next try would be at 21:01
            for (int minute = 0; minute < 61; minute++) {
                roundWithoutServer();
                clock.moveBy(Duration.ofMinutes(1));
            }
            int tries = attempts(noor);

            for (int minute = 0; minute < 600; minute += 10) {
                assertThat(round()).as(clock.instant().toString()).isZero();
                clock.moveTo(
                        earlier(clock.instant().plus(Duration.ofMinutes(10)), Instant.parse("2026-03-12T06:59:59Z")));
            }
            assertThat(attempts(noor)).as("waiting is no try").isEqualTo(tries);

            clock.moveTo(Instant.parse("2026-03-12T07:00:00Z"));
            assertThat(round()).isEqualTo(1);
            assertThat(takenFor(noor)).containsExactly("Moved to Bittern");
        }

        private static Instant earlier(Instant one, Instant other) {
            return one.isBefore(other) ? one : other;
        }

        private int attempts(PersonId person) {
            return jdbc.sql("select max(attempts) from messages where person_id = ?")
                    .param(person.value())
                    .query(Integer.class)
                    .single();
        }

        @Test
        void whatIsDueInAnotherLabWhereItIsDayDoesNotWaitForTheNightHere() {
            UUID day = UUID.randomUUID();
            jdbc.sql("""
                    insert into labs (id, college, room, name, zone, emergency_number, first_aider, stop_map)
                    select ?, college, 'Far', ?, 'Pacific/Auckland', emergency_number, first_aider, stop_map
                    from labs where id = ?""")
                    .params(day, "Far lab " + day, labs.theLab().id().value())
                    .update();
            PersonId noor = somebody();
            clock.moveTo(Instant.parse("2026-03-11T20:50:00Z"));
            tell(noor, "Here");
            tell(noor, "There");
            jdbc.sql("update messages set lab_id = ? where person_id = ? and subject = 'There'")
                    .params(day, noor.value())
                    .update();
            clock.moveTo(Instant.parse("2026-03-11T21:10:00Z"));

            assertThat(round()).isEqualTo(1);
            assertThat(takenFor(noor)).containsExactly("There");
        }

        @Test
        void anAddressThatIsRefusedForNowKeepsNobodyElseWaiting() {
            List<PersonId> people = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                PersonId person = somebody();
                tell(person, "Cell down");
                people.add(person);
            }
            // a server that asks callers whom it does not know to come again
            server.says(address(people.get(0)), "450 4.2.0 come again later");
            server.says(address(people.get(1)), "450 4.2.0 come again later");
            server.says(address(people.get(2)), "550 5.1.1 nobody here");

            assertThat(round()).isEqualTo(2);
            assertThat(messages.of(people.get(0), 1).get(0).mail()).isEqualTo("e-mail is tried again");
            assertThat(messages.of(people.get(2), 1).get(0).mail()).isEqualTo("the mail server refused the address");

            server.takes(address(people.get(0)));
            assertThat(round()).as("not before its pause is over").isZero();
            clock.moveBy(Duration.ofMinutes(1));
            assertThat(round()).isEqualTo(1);
            assertThat(takenFor(people.get(0))).containsExactly("Cell down");
        }

        @Test
        void whatWaitsBehindARefusedLetterDoesNotAskForItAgainAtOnce() {
            PersonId away = somebody();
            tell(away, "First");
            tell(away, "Second");
            tell(away, "Third");
            server.says(address(away), "450 4.2.0 come again later");

            assertThat(round()).isZero();
            assertThat(tries(away))
                    .as("one try of the first, none of those behind it")
                    .containsExactly(1, 0, 0);

            server.takes(address(away));
            assertThat(round()).as("not before its pause is over").isZero();
            clock.moveBy(Duration.ofMinutes(1));
            assertThat(round()).isEqualTo(3);
            assertThat(takenFor(away)).containsExactly("First", "Second", "Third");
        }

        private List<Integer> tries(PersonId person) {
            return jdbc.sql("select attempts from messages where person_id = ? order by created_at, id")
                    .param(person.value())
                    .query(Integer.class)
                    .list();
        }

        @Test
        void aLetterWithoutAnAddressHoldsUpNobody() {
            PersonId gone = somebody();
            PersonId noor = somebody();
            tell(gone, "Goodbye");
            tell(noor, "Hello");
            jdbc.sql("delete from message_settings where person_id = ?")
                    .param(gone.value())
                    .update();

            assertThat(round()).isEqualTo(1);
            assertThat(takenFor(noor)).containsExactly("Hello");
            assertThat(messages.of(gone, 1).get(0).mail()).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
