package org.standclear.signoff;

import java.time.Instant;
import org.standclear.platform.ids.BookingId;

/**
 * An answer that did not agree with what it was compared with; it stays in the record when the item is read again.
 *
 * @param expected what it was compared with
 * @param read what was read at the cell
 */
public record Disagreement(
        BookingId booking,
        SignoffList list,
        Part part,
        int item,
        String expected,
        String read,
        String says,
        Instant at) {}
