package org.standclear.signoff;

import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Lapses whatever holds on one cell, when something happened there that makes all of it worthless. */
public interface CellLapses {

    /**
     * Lapses every check and every release on the cell at once, in the running transaction; bookings that have not
     * started go back to booked. A run that goes on is not stopped by it: people do that at the robot; its check and its
     * session list are void, so after a stop it begins again from both. Takes the locks of {@link #lock}.
     *
     * @param by who reported it; null when the application must not know
     */
    void lapseAll(CellId cell, LapseRule rule, String because, @Nullable PersonId by);

    /**
     * Locks the bookings that hold a check or a release on the cell, in the order of their ids, then the cell, until the
     * running transaction ends. For an act that stores a row which refers to the cell before it lapses: on PostgreSQL such
     * a row keeps a share of the cell, and whoever has a booking and asks for its cell would wait for the act, and the act
     * for the booking.
     */
    void lock(CellId cell);
}
