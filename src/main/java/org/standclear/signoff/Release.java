package org.standclear.signoff;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RevisionId;

/**
 * Permission for one run of one exact thing: this file, cell version, tool, payload, these people, this window.
 *
 * @param code what is read out at the bench
 * @param startBy not started by then, it lapses
 * @param lapsedBecause null while it holds
 */
public record Release(
        ReleaseId id,
        BookingId booking,
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
        Instant issuedAt,
        Instant startBy,
        Instant windowEnd,
        @Nullable Instant usedAt,
        @Nullable Instant lapsedAt,
        @Nullable String lapsedBecause) {}
