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

    @Test
    void writesSpansShort() {
        assertThat(in("Europe/Amsterdam")
                        .times(Instant.parse("2026-11-26T13:07:00Z"), Instant.parse("2026-11-26T13:37:00Z")))
                .isEqualTo("14:07-14:37");
    }

    /** The night of 27 to 28 March 2027: 01:59 is followed by 03:00 (EU directive 2000/84/EC, last Sunday of March). */
    @Test
    void saysBothOffsetsOfASpanOverTheHourThatIsLeftOut() {
        LabTime lab = in("Europe/Amsterdam");
        Instant from = Instant.parse("2027-03-28T00:30:00Z");
        Instant until = Instant.parse("2027-03-28T01:00:00Z");

        assertThat(lab.times(from, until)).isEqualTo("01:30 (+01:00)-03:00 (+02:00)");
        assertThat(lab.span(from, until)).isEqualTo("Sun 01:30 (+01:00)-03:00 (+02:00)");
        assertThat(lab.datedSpan(from, until)).isEqualTo("Sun 28 Mar 01:30 (+01:00)-03:00 (+02:00)");
        assertThat(lab.times(until, Instant.parse("2027-03-28T01:30:00Z"))).isEqualTo("03:00-03:30");
    }

    /** The night of 24 to 25 October 2026: 02:59 is followed by 02:00 (the same directive, last Sunday of October). */
    @Test
    void tellsTheTwoHoursOfTheNightOfAutumnApart() {
        LabTime lab = in("Europe/Amsterdam");

        assertThat(lab.times(Instant.parse("2026-10-25T00:00:00Z"), Instant.parse("2026-10-25T00:30:00Z")))
                .isEqualTo("02:00 (+02:00)-02:30 (+02:00)");
        assertThat(lab.times(Instant.parse("2026-10-25T00:30:00Z"), Instant.parse("2026-10-25T01:00:00Z")))
                .isEqualTo("02:30 (+02:00)-02:00 (+01:00)");
        assertThat(lab.times(Instant.parse("2026-10-24T23:30:00Z"), Instant.parse("2026-10-25T02:00:00Z")))
                .isEqualTo("01:30 (+02:00)-03:00 (+01:00)");
    }
}
