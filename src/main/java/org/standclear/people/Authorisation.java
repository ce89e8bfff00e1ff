package org.standclear.people;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * That a person may do a duty, from the induction to its expiry.
 *
 * @param cell the one cell it is for; null means every cell
 */
public record Authorisation(
        PersonId person, Duty duty, @Nullable CellId cell, Instant validFrom, Instant validUntil, PersonId grantedBy) {

    /** Whether it covers the cell at the instant; the end is not included. */
    public boolean covers(CellId asked, Instant at) {
        return (cell == null || cell.equals(asked)) && !at.isBefore(validFrom) && at.isBefore(validUntil);
    }
}
