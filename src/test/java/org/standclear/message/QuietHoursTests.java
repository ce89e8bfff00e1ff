package org.standclear.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rules of the tz database: Europe/Berlin puts its clocks forward on 29 March 2026, America/Chicago on 8 March 2026. */
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
