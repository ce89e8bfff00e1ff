package org.standclear.platform.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class SettableClockTests {

    private static final Instant MACHINE = Instant.parse("2026-03-11T09:00:00Z");
    private static final Instant MONDAY = Instant.parse("2026-03-09T08:00:00Z");

    private final SettableClock clock = new SettableClock(Clock.fixed(MACHINE, ZoneOffset.UTC));

    @Test
    void showsTheTimeOfTheMachine() {
        assertThat(clock.instant()).isEqualTo(MACHINE);
    }

    @Test
    void standsWhereItIsSetUntilItRunsOn() {
        Clock elsewhere = clock.withZone(ZoneId.of("Europe/Amsterdam"));

        clock.standAt(MONDAY);
        assertThat(clock.instant()).isEqualTo(elsewhere.instant()).isEqualTo(MONDAY);
        assertThat(elsewhere.getZone()).isEqualTo(ZoneId.of("Europe/Amsterdam"));

        clock.runOn();
        assertThat(clock.instant()).isEqualTo(elsewhere.instant()).isEqualTo(MACHINE);
    }
}
