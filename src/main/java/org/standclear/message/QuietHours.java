package org.standclear.message;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/** When an e-mail may go out at the earliest. */
record QuietHours(LocalTime from, LocalTime until, ZoneId zone) {

    /** The instant itself, or the end of the quiet hours in which it lies. */
    Instant earliest(Instant at) {
        ZonedDateTime local = at.atZone(zone);
        LocalTime time = local.toLocalTime();
        boolean overnight = until.isBefore(from);
        boolean quiet =
                overnight ? !time.isBefore(from) || time.isBefore(until) : !time.isBefore(from) && time.isBefore(until);
        if (!quiet) {
            return at;
        }
        // after midnight of a night's quiet hours the end is on the same day
        var day = overnight && !time.isBefore(from) ? local.toLocalDate().plusDays(1) : local.toLocalDate();
        return day.atTime(until).atZone(zone).toInstant();
    }
}
