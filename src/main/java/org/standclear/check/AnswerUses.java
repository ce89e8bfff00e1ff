package org.standclear.check;

import java.util.List;
import org.standclear.platform.ids.AnswerId;

/** Which upcoming bookings rest on an answer; answered by a feature above, which knows bookings. */
public interface AnswerUses {

    /** Bookings whose latest check gave this answer and that have not run yet, by start. */
    List<Use> of(AnswerId answer);

    /**
     * One booking.
     *
     * @param waiver the waiver that stands for it, in words; empty when none does
     */
    record Use(String bookingHref, String span, String operator, String waiver) {}
}
