package org.standclear.booking;

import java.time.Instant;
import org.standclear.platform.ids.CellId;

/**
 * A stretch of time on a cell's grid, booked or not.
 *
 * @param end the instant after the slot's last
 */
public record Slot(CellId cell, Instant start, Instant end) {

    public Slot {
        if (!start.isBefore(end)) {
            throw new IllegalArgumentException("a slot ends after it starts: " + start + " to " + end);
        }
    }

    /** Whether it has an instant in common with the span; touching is not overlapping. */
    public boolean overlaps(Instant from, Instant until) {
        return start.isBefore(until) && from.isBefore(end);
    }
}
