package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.CellId;

/** Which bookings on a cell need what it offers; answered by a feature above, which knows bookings. For lab staff only. */
public interface FeatureNeeds {

    /** Bookings ahead on the cell whose run needs the feature, by start. */
    List<Needing> needing(CellId cell, String words);

    /** Bookings ahead on the cell whose run needs a tool or a feature that the cell has not now, by start. */
    List<Needing> unmet(CellId cell);

    /**
     * One booking.
     *
     * @param operator whose run it is
     * @param start when it begins
     * @param needs everything that the run needs of its cell, in words
     */
    record Needing(String bookingHref, String operator, Instant start, String needs) {}
}
