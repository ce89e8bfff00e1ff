package org.standclear.cell;

import java.util.List;
import org.standclear.platform.ids.CellId;

/** What a version of a cell did to the bookings on it; answered by a feature above, which knows bookings and checks. */
public interface VersionEffects {

    /** Upcoming bookings whose program had been checked on an earlier version, or by an earlier phrasebook or rules; by start. */
    List<Effect> of(CellId cell);

    /**
     * One booking.
     *
     * @param before the earlier answer in words, with the version it was for
     * @param after the answer now, in words; says that the re-check waits while there is none
     * @param mark the answer's state for the shape beside the words: within, outside, not-checkable, waiting
     * @param changed whether the answer is another one than before
     * @param answerHref the page of the answer now; empty while there is none
     */
    record Effect(
            String bookingHref,
            String span,
            String operator,
            String program,
            String before,
            String after,
            String mark,
            boolean changed,
            String answerHref) {}
}
