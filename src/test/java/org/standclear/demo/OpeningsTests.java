package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.booking.OpenPeriod;

class OpeningsTests {

    private static OpenPeriod period(String opens, String closes) {
        return new OpenPeriod(LocalTime.parse(opens), LocalTime.parse(closes));
    }

    @Test
    void leaveHoursAloneThatCoverTheNewOnes() {
        List<OpenPeriod> day = List.of(period("08:00", "18:00"));

        assertThat(Openings.with(day, period("10:00", "14:00"))).isEqualTo(day);
        assertThat(Openings.with(day, period("08:00", "18:00"))).isEqualTo(day);
    }

    @Test
    void joinHoursThatTouchOrOverlap() {
        List<OpenPeriod> day = List.of(period("08:00", "12:00"), period("13:00", "18:00"));

        assertThat(Openings.with(day, period("17:00", "21:00")))
                .containsExactly(period("08:00", "12:00"), period("13:00", "21:00"));
        assertThat(Openings.with(day, period("12:00", "13:00"))).containsExactly(period("08:00", "18:00"));
        assertThat(Openings.with(List.of(), period("22:00", "23:59"))).containsExactly(period("22:00", "23:59"));
        assertThat(Openings.with(day, period("20:00", "22:00")))
                .containsExactly(period("08:00", "12:00"), period("13:00", "18:00"), period("20:00", "22:00"));
    }
}
