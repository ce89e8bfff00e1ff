package org.standclear.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rules of the tz database 2025b: Europe/Berlin leaves out 02:00 to 03:00 on 29 March 2026 and has it twice on 25 October;
 * America/Chicago leaves the same hour out on 8 March and has 01:00 to 02:00 twice on 1 November. The instants are by hand.
 */
class QuietHoursTests {

    @ParameterizedTest
    @CsvSource({
        // an ordinary night in Berlin, +01:00
        "Europe/Berlin, 21:00, 07:00, 2026-03-11T19:59:59Z, 2026-03-11T19:59:59Z",
        "Europe/Berlin, 21:00, 07:00, 2026-03-11T20:00:00Z, 2026-03-12T06:00:00Z",
        "Europe/Berlin, 21:00, 07:00, 2026-03-12T05:59:59Z, 2026-03-12T06:00:00Z",
        "Europe/Berlin, 21:00, 07:00, 2026-03-12T06:00:00Z, 2026-03-12T06:00:00Z",
        // the night that is an hour shorter there and three weeks earlier in Chicago
        "Europe/Berlin, 21:00, 07:00, 2026-03-28T20:30:00Z, 2026-03-29T05:00:00Z",
        "America/Chicago, 21:00, 07:00, 2026-03-08T04:00:00Z, 2026-03-08T12:00:00Z",
        // the night that is an hour longer, in October and in November
        "Europe/Berlin, 21:00, 07:00, 2026-10-24T19:00:00Z, 2026-10-25T06:00:00Z",
        "Europe/Berlin, 21:00, 07:00, 2026-10-25T05:59:59Z, 2026-10-25T06:00:00Z",
        "Europe/Berlin, 21:00, 07:00, 2026-10-25T06:00:00Z, 2026-10-25T06:00:00Z",
        "America/Chicago, 21:00, 07:00, 2026-11-01T02:00:00Z, 2026-11-01T13:00:00Z",
        "America/Chicago, 21:00, 07:00, 2026-11-01T12:30:00Z, 2026-11-01T13:00:00Z",
        // an end in the hour that is left out: at once when it would have come
        "Europe/Berlin, 21:00, 02:30, 2026-03-29T00:45:00Z, 2026-03-29T01:30:00Z",
        "Europe/Berlin, 21:00, 02:30, 2026-03-29T01:30:00Z, 2026-03-29T01:30:00Z",
        // an end in the hour that comes twice: the first time, and it is not quiet again the second time
        "Europe/Berlin, 21:00, 02:30, 2026-10-25T00:15:00Z, 2026-10-25T00:30:00Z",
        "Europe/Berlin, 21:00, 02:30, 2026-10-25T00:30:00Z, 2026-10-25T00:30:00Z",
        "Europe/Berlin, 21:00, 02:30, 2026-10-25T01:15:00Z, 2026-10-25T01:15:00Z",
        "America/Chicago, 21:00, 01:30, 2026-11-01T07:15:00Z, 2026-11-01T07:15:00Z",
        // a beginning in it: the first time, and then without a break
        "Europe/Berlin, 02:30, 07:00, 2026-10-25T00:29:59Z, 2026-10-25T00:29:59Z",
        "Europe/Berlin, 02:30, 07:00, 2026-10-25T01:15:00Z, 2026-10-25T06:00:00Z",
        // by day
        "UTC, 12:00, 13:00, 2026-03-11T12:30:00Z, 2026-03-11T13:00:00Z",
        "UTC, 12:00, 13:00, 2026-03-11T11:59:00Z, 2026-03-11T11:59:00Z",
        // none
        "UTC, 12:00, 12:00, 2026-03-11T12:00:00Z, 2026-03-11T12:00:00Z",
    })
    void waitsForTheEndOfTheQuietHours(String zone, LocalTime from, LocalTime until, Instant at, Instant earliest) {
        assertThat(new QuietHours(from, until, ZoneId.of(zone)).earliest(at)).isEqualTo(earliest);
    }
}
