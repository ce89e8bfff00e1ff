package org.standclear.signoff;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/**
 * An instructor's word that one run may be released although its program's check did not pass: for this booking, this
 * answer, and not for long.
 *
 * @param checks the names of the checks that it sets aside
 * @param usedAt when its one run was started; null while it was not
 * @param takenBack null while nobody took it back
 */
public record Waiver(
        UUID id,
        BookingId booking,
        AnswerId answer,
        List<String> checks,
        String reason,
        PersonId givenBy,
        Instant givenAt,
        Instant expiresAt,
        @Nullable Instant usedAt,
        @Nullable TakenBack takenBack) {

    public Waiver {
        checks = List.copyOf(checks);
    }

    /** Whether it can still let a run be released. */
    public boolean standsAt(Instant now) {
        return usedAt == null && takenBack == null && now.isBefore(expiresAt);
    }

    /** Who took it back before its run, when and why. */
    public record TakenBack(PersonId by, Instant at, String reason) {}
}
