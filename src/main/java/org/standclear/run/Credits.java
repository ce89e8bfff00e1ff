package org.standclear.run;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/**
 * Minutes of a slot that precautionary stops took: pressing the e-stop costs nothing, so they are made up. As soon as a
 * person's minutes come to half a slot they become a make-up, one booking beyond the quotas; no source, the lab's own rule.
 */
public interface Credits {

    /** What the person has been credited since the instant, latest first. */
    List<Credit> of(PersonId person, Instant since);

    /** What was credited in the booking, first to last. */
    List<Credit> of(BookingId booking);

    /** Minutes of the person that have not gone into a make-up yet. */
    int open(PersonId person);

    /** The latest credits of everybody in the lab, latest first. */
    List<Credit> latest(int atMost);

    /**
     * One credit: minutes begun count as whole ones, and none of a slot counts twice.
     *
     * @param spentFor the booking for which the minutes became a make-up, alone or with others; null until they did
     */
    record Credit(
            BookingId booking,
            PersonId person,
            int minutes,
            Instant stoppedAt,
            Instant until,
            @Nullable BookingId spentFor) {}
}
