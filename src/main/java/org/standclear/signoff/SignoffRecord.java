package org.standclear.signoff;

import java.util.List;
import org.standclear.platform.ids.BookingId;

/** What was signed, what disagreed and what lapsed, for the page of a run. */
public interface SignoffRecord {

    /** All rounds of both lists with their signatures, first to last. */
    List<Sheet> sheets(BookingId booking);

    /** What lapsed, first to last. */
    List<Lapse> lapses(BookingId booking);

    /** What lapsed of the booking since the list of the release was opened, first to last, whatever the clock said. */
    List<Lapse> lapsesSince(Release release);

    /** Answers that disagreed, first to last. */
    List<Disagreement> disagreements(BookingId booking);
}
