package org.standclear.message;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.stream.Stream;

/** When an e-mail may go out at the earliest. */
record QuietHours(LocalTime from, LocalTime until, ZoneId zone) {

    /** The instant itself, or the end of the quiet hours in which it lies. */
    Instant earliest(Instant at) {
        LocalDate day = at.atZone(zone).toLocalDate();
        return Stream.of(day.minusDays(1), day)
                .filter(quiet -> !at.isBefore(begin(quiet)) && at.isBefore(end(quiet)))
                .map(this::end)
                .findFirst()
                .orElse(at);
    }

    // instants, not times of day: in an hour that comes twice the quiet begins and ends the first time, and is over
    // then

    private Instant begin(LocalDate day) {
        return day.atTime(from).atZone(zone).toInstant();
    }

    private Instant end(LocalDate day) {
        return (until.isBefore(from) ? day.plusDays(1) : day)
                .atTime(until)
                .atZone(zone)
                .toInstant();
    }
}
