package org.standclear.message;

import jakarta.mail.Address;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.MimeMessage;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.mail.MailException;
import org.springframework.mail.MailSendException;
import org.springframework.mail.javamail.JavaMailSender;
import org.standclear.message.OutboxRows.Due;

/**
 * Carries the outbox to the mail server. Every letter leaves at least once: a process that dies after the server took a
 * letter and before that is written down leaves it to be sent again, under the same Message-ID, when its claim is over.
 */
class MailPost {

    private static final Logger LOG = LoggerFactory.getLogger(MailPost.class);
    private static final int ROUND = 100;
    private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(30);

    private final OutboxRows outbox;
    private final JavaMailSender sender;
    private final MailSettings settings;
    private final String instance;
    private final Clock clock;

    MailPost(OutboxRows outbox, JavaMailSender sender, MailSettings settings, String instance, Clock clock) {
        this.outbox = outbox;
        this.sender = sender;
        this.settings = settings;
        this.instance = instance;
        this.clock = clock;
    }

    /** What became of a letter. */
    private enum Fate {
        SENT,
        /** Not sent, for a reason of its own. */
        NOT_SENT,
        /** Not sent, and the others need not be tried now. */
        SERVER_AWAY
    }

    /** Sends what is due; stops at the first sign that the server is away. Says how many left. */
    int round() {
        outbox.dropTooLate(clock.instant());
        outbox.dropUnwanted(clock.instant());
        int sent = 0;
        for (int looked = 0; looked < ROUND; looked++) {
            Instant now = clock.instant();
            Optional<Due> due = outbox.claim(instance, now);
            Fate fate = due.map(letter -> letter.notBefore().isAfter(now) ? later(letter) : carry(letter))
                    .orElse(Fate.SERVER_AWAY);
            if (fate == Fate.SERVER_AWAY) {
                return sent;
            }
            sent += fate == Fate.SENT ? 1 : 0;
        }
        return sent;
    }

    /** Quiet hours are asked again when a letter leaves: the server may have been away until they began. */
    private Fate later(Due due) {
        outbox.waitForQuiet(due, instance);
        return Fate.NOT_SENT;
    }

    private Fate carry(Due due) {
        try {
            MimeMessage mail = sender.createMimeMessage();
            Letter.write(mail, due, settings);
            sender.send(mail);
            outbox.sent(due.id(), instance, clock.instant());
            return Fate.SENT;
        } catch (MailException | MessagingException failed) {
            if (isForGood(failed)) {
                outbox.refused(due.id(), instance, String.valueOf(failed.getMessage()));
                return Fate.NOT_SENT;
            }
            LOG.warn("e-mail {} did not leave at try {}: {}", due.id(), due.attempts(), failed.getMessage());
            outbox.failed(due.id(), instance, nextTry(due), String.valueOf(failed.getMessage()));
            return isOfThisLetter(failed) ? Fate.NOT_SENT : Fate.SERVER_AWAY;
        }
    }

    private Instant nextTry(Due due) {
        Duration pause = FIRST_PAUSE.multipliedBy(1L << Math.min(due.attempts() - 1, 5));
        return clock.instant().plus(pause.compareTo(LONGEST_PAUSE) > 0 ? LONGEST_PAUSE : pause);
    }

    /** The server spoke and refuses this address (RFC 5321 4.2.1, 5yz), or the address is none. */
    private static boolean isForGood(Exception failed) {
        if (failed instanceof AddressException) {
            return true;
        }
        return failed instanceof MailSendException many
                && many.getFailedMessages().values().stream().anyMatch(MailPost::isRefusedAddress);
    }

    /** The server takes letters, only not for this address and not now (RFC 5321 4.2.1, 4yz to RCPT). */
    private static boolean isOfThisLetter(Exception failed) {
        return failed instanceof MailSendException many
                && many.getFailedMessages().values().stream()
                        .anyMatch(one -> one instanceof SendFailedException answered
                                && answered.getNextException() instanceof SMTPAddressFailedException);
    }

    private static boolean isRefusedAddress(Exception one) {
        if (!(one instanceof SendFailedException refused)) {
            return false;
        }
        Address[] invalid = refused.getInvalidAddresses();
        return invalid != null && invalid.length > 0;
    }
}
