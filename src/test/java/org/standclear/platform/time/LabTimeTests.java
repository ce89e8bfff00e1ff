package org.standclear.platform.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;

/** Today is the lab's day, not that of UTC nor the last 24 hours. */
class LabTimeTests {

    /** 01:30 on Saturday in a lab two hours ahead, while UTC still has Friday. */
    private static final Instant NOW = Instant.parse("2026-11-27T23:30:00Z");

    private static LabTime in(String zone) {
        Labs labs = mock(Labs.class);
        when(labs.theLab()).thenReturn(new Lab(LabId.next(), "College", "1", "Lab", ZoneId.of(zone), "1", "A", "B"));
        return new LabTime(labs, Clock.fixed(NOW, ZoneOffset.UTC));
    }

    @Test
    void saysTheTimeAloneOfTheLabsOwnDay() {
        assertThat(in("Europe/Helsinki").lately(Instant.parse("2026-11-27T22:00:00Z")))
                .isEqualTo("00:00");
        assertThat(in("UTC").lately(Instant.parse("2026-11-27T00:00:00Z"))).isEqualTo("00:00");
    }

    @Test
    void saysTheDateOfAnInstantBeforeTheLabsMidnight() {
        assertThat(in("Europe/Helsinki").lately(Instant.parse("2026-11-27T21:59:59Z")))
                .isEqualTo("Fri 27 Nov 2026 23:59");
        assertThat(in("UTC").lately(Instant.parse("2026-11-26T23:59:59Z"))).isEqualTo("Thu 26 Nov 2026 23:59");
    }

    @Test
    void saysTheDateOfTomorrow() {
        assertThat(in("UTC").lately(Instant.parse("2026-11-28T00:00:00Z"))).isEqualTo("Sat 28 Nov 2026 00:00");
    }
}
