package org.standclear.message;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * Something to tell one person.
 *
 * @param kind stable, for tests and statistics: {@code booking-moved}, {@code offer}, ...
 * @param subject one line, 200 characters at most
 * @param lines the text, a line or paragraph each; plain text
 * @param href the page it is about, as a path
 * @param onceKey told once only for this key, however often and by whomever; null when every telling counts
 * @param mailUntil after this an e-mail would only confuse; null for three days
 */
public record Message(
        PersonId to,
        String kind,
        String subject,
        List<String> lines,
        String href,
        @Nullable String onceKey,
        @Nullable Instant mailUntil) {

    private static final int LONGEST_SUBJECT = 200;

    public Message {
        lines = List.copyOf(lines);
        if (subject.isBlank() || subject.length() > LONGEST_SUBJECT) {
            throw new IllegalArgumentException("a subject has 1 to 200 characters: " + subject);
        }
        if (!href.startsWith("/")) {
            throw new IllegalArgumentException("a message is about a page of this application: " + href);
        }
    }

    /** A message that may be told again and may be read days later. */
    public static Message of(PersonId to, String kind, String subject, List<String> lines, String href) {
        return new Message(to, kind, subject, lines, href, null, null);
    }

    /** The same, told once only for the key, and by e-mail until that instant. */
    public Message once(String key, Instant mailUntil) {
        return new Message(to, kind, subject, lines, href, key, mailUntil);
    }
}
