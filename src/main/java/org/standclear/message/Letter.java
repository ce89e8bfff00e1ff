package org.standclear.message;

import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.nio.charset.StandardCharsets;
import java.util.Date;
import java.util.stream.Collectors;
import org.springframework.web.util.HtmlUtils;
import org.standclear.message.OutboxRows.Due;

/**
 * Writes a message as an e-mail, as plain text and as HTML (RFC 2046 5.1.4). Its Message-ID comes from the row, so that a
 * letter that leaves twice is the same letter to whoever receives it.
 */
final class Letter {

    private static final String WHY =
            "Standclear sends this because you have a place in the lab. Switch it off on your page: ";

    private Letter() {}

    static void write(MimeMessage mail, Due due, MailSettings settings) throws MessagingException {
        mail.setFrom(new InternetAddress(settings.from()));
        mail.setRecipient(RecipientType.TO, new InternetAddress(due.address()));
        mail.setSubject(due.subject(), StandardCharsets.UTF_8.name());
        mail.setSentDate(Date.from(due.made()));
        mail.setHeader("Message-ID", messageId(due, settings));
        // RFC 3834: nobody's holiday answer comes back
        mail.setHeader("Auto-Submitted", "auto-generated");
        MimeBodyPart text = new MimeBodyPart();
        text.setText(text(due, settings), StandardCharsets.UTF_8.name());
        MimeBodyPart html = new MimeBodyPart();
        html.setText(html(due, settings), StandardCharsets.UTF_8.name(), "html");
        MimeMultipart both = new MimeMultipart("alternative");
        both.addBodyPart(text);
        both.addBodyPart(html);
        mail.setContent(both);
    }

    static String messageId(Due due, MailSettings settings) {
        return "<" + due.id() + "@" + settings.domain() + ">";
    }

    private static String text(Due due, MailSettings settings) {
        return String.join("\r\n", due.lines()) + "\r\n\r\n" + settings.site() + due.href() + "\r\n\r\n-- \r\n"
                + from(due) + "\r\n" + WHY + settings.site() + "/me/messages\r\n";
    }

    private static String html(Due due, MailSettings settings) {
        String lines = due.lines().stream()
                .map(line -> "<p>" + HtmlUtils.htmlEscape(line) + "</p>\n")
                .collect(Collectors.joining());
        return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>"
                + HtmlUtils.htmlEscape(due.subject()) + "</title></head>\n<body>\n" + lines
                + link(settings.site() + due.href(), "Open the page") + "<p><small>" + HtmlUtils.htmlEscape(from(due))
                + "<br>" + WHY + "</small></p>\n"
                + link(settings.site() + "/me/messages", "Your messages") + "</body></html>\n";
    }

    /** Whoever works in several labs has to know which it is, and by whose clock its times are. */
    private static String from(Due due) {
        return due.lab() + "; times are by the clock of " + due.zone() + ".";
    }

    private static String link(String address, String words) {
        return "<p><a href=\"" + HtmlUtils.htmlEscape(address) + "\">" + words + "</a></p>\n";
    }
}
