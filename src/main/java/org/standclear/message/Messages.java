package org.standclear.message;

import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/** Tells people things. A message is kept in the transaction of the act that it tells of: both stand, or neither. */
public interface Messages {

    /** Puts the message into the person's box and, if the person wants that, on its way by e-mail. */
    void tell(Message message);

    /** The latest messages of a person, latest first. */
    List<Kept> of(PersonId person, int atMost);

    /** Those before one of the person's messages, latest first; none when that is nobody's or somebody else's. */
    List<Kept> before(PersonId person, UUID message, int atMost);

    /** How many the person has not looked at. */
    int unreadOf(PersonId person);

    /** The person has looked at these. */
    void read(PersonId person, List<UUID> shown);

    /** How the person wants e-mail; empty while no address is known. */
    Optional<Wishes> wishesOf(PersonId person);

    /** Keeps how the person wants e-mail; says what is wrong with it, and with which field, or nothing. */
    Optional<Wrong> wish(PersonId person, Wishes wishes);

    /** How the e-mail of the last days stands, for the administrator. */
    List<Standing> standing();

    /** A message as its reader sees it, of which lab; {@code mail} says in words what became of the e-mail. */
    record Kept(
            UUID id,
            LabId lab,
            String subject,
            List<String> lines,
            String href,
            Instant at,
            @Nullable Instant readAt,
            String mail) {}

    /**
     * How a person wants e-mail.
     *
     * @param quietFrom no e-mail from then on, in the lab's zone
     * @param quietUntil until then; the same as from means no quiet hours
     */
    record Wishes(String address, boolean on, LocalTime quietFrom, LocalTime quietUntil) {

        /** What holds until somebody says otherwise. */
        public static Wishes plain(String address) {
            return new Wishes(address, true, LocalTime.of(21, 0), LocalTime.of(7, 0));
        }
    }

    /** What cannot be kept. */
    record Wrong(String field, String says) {}

    /** How many e-mails are in a state, since when the oldest, and the latest error. */
    record Standing(
            String state,
            int count,
            Instant oldest,
            @Nullable String error) {}
}
