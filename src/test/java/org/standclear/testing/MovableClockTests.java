package org.standclear.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.junit.jupiter.api.Test;

class MovableClockTests {

    private final MovableClock clock = new MovableClock();

    @Test
    void standsStillUntilItIsMoved() {
        assertThat(clock.instant()).isEqualTo(MovableClock.START).isEqualTo(clock.instant());
        assertThat(ZonedDateTime.now(clock).getDayOfWeek()).isEqualTo(DayOfWeek.WEDNESDAY);
    }

    @Test
    void movesAlsoTheClocksOfOtherZonesMadeFromIt() {
        Clock elsewhere = clock.withZone(ZoneId.of("Pacific/Auckland"));

        clock.moveBy(Duration.ofMinutes(10));

        assertThat(elsewhere.instant()).isEqualTo(MovableClock.START.plusSeconds(600));
        clock.moveToStart();
        assertThat(elsewhere.instant()).isEqualTo(MovableClock.START);
    }
}
