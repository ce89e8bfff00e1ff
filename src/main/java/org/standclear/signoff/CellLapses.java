package org.standclear.signoff;

import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Lapses whatever holds on one cell, when something happened there that makes all of it worthless. */
public interface CellLapses {

    /**
     * Lapses every check and every release on the cell at once, in the running transaction; bookings that have not
     * started go back to booked. A run that goes on is not stopped by it: people do that at the robot; its check and its
     * session list are void, so after a stop it begins again from both. Locks the bookings in the order of their ids, then the cell.
     *
     * @param by who reported it; null when the application must not know
     */
    void lapseAll(CellId cell, LapseRule rule, String because, @Nullable PersonId by);
}
