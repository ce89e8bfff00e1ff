package org.standclear.signoff;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RevisionId;

/**
 * Permission for one run of one exact thing: this file, cell version, tool, payload, these people, this window.
 *
 * @param sheet the bench list it rests on
 * @param code what is read out at the bench
 * @param firstRun whether this program version has not been run through on this cell version before, or nothing has since
 *     the cell's return to service, so that the releaser watches it
 * @param passLimit how many passes were declared; null when it loops until it is stopped, then the window is the limit
 * @param startBy not started by then, it lapses
 * @param lapsed null while it holds
 * @param suspended why it waits for another e-stop attendant's signature; null when it does not
 */
public record Release(
        ReleaseId id,
        BookingId booking,
        UUID sheet,
        CellId cell,
        int cellVersion,
        RevisionId revision,
        String programSha256,
        String declarationSha256,
        String tool,
        @Nullable Double payloadKg,
        PersonId operator,
        PersonId attendant,
        PersonId releaser,
        String code,
        boolean firstRun,
        @Nullable Integer passLimit,
        Instant issuedAt,
        Instant startBy,
        Instant windowEnd,
        @Nullable Instant usedAt,
        @Nullable Lapsed lapsed,
        @Nullable String suspended) {

    /** Whether it waits for its start, suspended or not. */
    public boolean waits() {
        return usedAt == null && lapsed == null;
    }

    /** Whether a start could use it: it waits, and its e-stop attendant has signed. */
    public boolean holds() {
        return waits() && suspended == null;
    }

    /** When, by which rule and why it stopped holding. */
    public record Lapsed(Instant at, LapseRule rule, String because) {}
}
