package org.standclear.booking.feed;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Secret addresses of calendars. A person's own says what the person's page says; a cell's or the lab's says that it is
 * booked and names nobody, and lab staff make those.
 */
public interface CalendarFeeds {

    /** Makes an address for the person's own bookings; the secret is in the answer and nowhere else. */
    Made makeForPerson(PersonId owner);

    /** Makes one for a cell; the caller has checked that lab staff ask. */
    Made makeForCell(CellId cell, PersonId owner);

    /** Makes one for the whole lab; the caller has checked that lab staff ask. */
    Made makeForLab(PersonId owner);

    /** The addresses somebody has made that were not revoked, latest first. */
    List<Feed> of(PersonId owner);

    /** Ends an address of the owner at once; false when there is none. */
    boolean revoke(UUID feed, PersonId owner);

    /** The calendar behind a secret; empty when nobody has it any more. */
    Optional<String> calendar(String secret);

    /** What a feed is about. */
    enum Kind {
        PERSON,
        CELL,
        LAB
    }

    /**
     * A calendar's address, without its secret.
     *
     * @param subject the person or the cell; null for the lab
     */
    record Feed(UUID id, Kind kind, @Nullable UUID subject, PersonId owner, Instant madeAt) {}

    /** An address that was just made, to be shown once. */
    record Made(Feed feed, String secret) {}
}
