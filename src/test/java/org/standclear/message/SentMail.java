package org.standclear.message;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.standclear.platform.ids.PersonId;

/**
 * What the application told somebody, sent as it would be: through its outbox, over real SMTP, to a server inside the test.
 * The shared application of the tests has no mail server, so what it kept for the box only is put on its way here.
 */
public final class SentMail {

    private static final MailSettings SETTINGS =
            new MailSettings("Robot bench <bench@college.example>", "https://lab.college.example");

    private final ApplicationContext application;

    /** Mail of the running application. */
    public SentMail(ApplicationContext application) {
        this.application = application;
    }

    /** A letter as its reader gets it; the text is the plain part, the HTML part as it came. */
    public record Received(String to, String subject, List<String> text, String html) {}

    /** Every letter of the person that was not sent before, oldest first. */
    public List<Received> to(PersonId person) {
        GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        server.start();
        try {
            JdbcClient jdbc = application.getBean(JdbcClient.class);
            application.getBean(Messages.class).wish(person, Messages.Wishes.plain("p" + person + "@college.example"));
            jdbc.sql("update messages set mail_state = 'WAITING' where person_id = :person and mail_state = 'OFF'")
                    .param("person", person.value())
                    .update();
            JavaMailSenderImpl sender = new JavaMailSenderImpl();
            sender.setHost("127.0.0.1");
            sender.setPort(server.getSmtp().getPort());
            new MailPost(
                            application.getBean(OutboxRows.class),
                            sender,
                            SETTINGS,
                            "test",
                            application.getBean(Clock.class))
                    .round();
            List<Received> received = new ArrayList<>();
            for (MimeMessage mail : server.getReceivedMessages()) {
                Received one = read(mail);
                if (one.to().contains(person.toString())) {
                    received.add(one);
                }
            }
            return received;
        } catch (Exception e) {
            throw new AssertionError("no mail", e);
        } finally {
            server.stop();
        }
    }

    private static Received read(MimeMessage mail) throws Exception {
        MimeMultipart both = (MimeMultipart) mail.getContent();
        return new Received(
                mail.getAllRecipients()[0].toString(),
                mail.getSubject(),
                String.valueOf(both.getBodyPart(0).getContent()).lines().toList(),
                String.valueOf(both.getBodyPart(1).getContent()));
    }
}
