package org.standclear.run;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** Minutes of a slot that precautionary stops took: pressing the e-stop costs nothing, so they are made up. */
public interface Credits {

    /** What the person has been credited since the instant, latest first. */
    List<Credit> of(PersonId person, Instant since);

    /** What was credited in the booking, first to last. */
    List<Credit> of(BookingId booking);

    /** One credit: minutes begun count as whole ones. */
    record Credit(BookingId booking, PersonId person, int minutes, Instant stoppedAt, Instant until) {}
}
