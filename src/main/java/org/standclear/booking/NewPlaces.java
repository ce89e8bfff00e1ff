package org.standclear.booking;

import java.util.List;
import java.util.Map;
import org.standclear.platform.ids.BookingId;

/**
 * Finds new slots for bookings that lost theirs, for all of them together: as many as can be keep a turn, those whose
 * assignment is due first, each as near to its old time as can be. All other bookings stay where they are.
 */
public interface NewPlaces {

    /** A slot for each that has one; a booking that is not in the answer has none. */
    Map<BookingId, Slot> find(List<Disturbed> disturbed);

    /**
     * A booking with the slots that it could take by itself.
     *
     * @param due whether its assignment has a due date
     * @param could free now, on cells that fit, at times when the operator is free
     * @param withAttendant those of them at which its attendant is free too; all of them when it has none
     */
    record Disturbed(Booking booking, boolean due, List<Slot> could, List<Slot> withAttendant) {

        public Disturbed {
            could = List.copyOf(could);
            withAttendant = List.copyOf(withAttendant);
        }
    }
}
