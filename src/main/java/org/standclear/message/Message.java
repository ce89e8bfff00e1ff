package org.standclear.message;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * Something to tell one person.
 *
 * @param kind stable, for tests and statistics: {@code booking-moved}, {@code offer}, ...
 * @param subject one line, 200 characters at most
 * @param lines the text, a line or paragraph each; plain text. As many as a message holds; the last says how many more there
 *     would be
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
    /** What the table holds, less the line that says how many more there are. */
    private static final int LONGEST_TEXT = 4000 - 60;

    public Message {
        lines = fitting(lines);
        if (subject.isBlank() || subject.length() > LONGEST_SUBJECT) {
            throw new IllegalArgumentException("a subject has 1 to 200 characters: " + subject);
        }
        if (!href.startsWith("/")) {
            throw new IllegalArgumentException("a message is about a page of this application: " + href);
        }
    }

    /** Somebody may have a hundred turns in a plan: that is no reason why it could not be told, or the plan not be accepted. */
    private static List<String> fitting(List<String> lines) {
        int length = 0;
        for (int kept = 0; kept < lines.size(); kept++) {
            length += lines.get(kept).length() + 1;
            if (length > LONGEST_TEXT) {
                return Stream.concat(
                                lines.stream().limit(kept),
                                Stream.of("and " + (lines.size() - kept) + " more, on the page."))
                        .toList();
            }
        }
        return List.copyOf(lines);
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
