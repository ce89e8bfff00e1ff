package org.standclear.people.tries;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.standclear.people.tries.Tries.Kind;

class PausesTests {

    @Test
    void growFromTheFirstOneToTheLongest() {
        assertThat(Kind.ACCOUNT.pauseAfter(4)).isZero();
        assertThat(Kind.ACCOUNT.pauseAfter(5)).isEqualTo(Duration.ofSeconds(30));
        assertThat(Kind.ACCOUNT.pauseAfter(6)).isEqualTo(Duration.ofSeconds(60));
        assertThat(Kind.ACCOUNT.pauseAfter(9)).isEqualTo(Duration.ofMinutes(8));
        assertThat(Kind.ACCOUNT.pauseAfter(10)).isEqualTo(Duration.ofMinutes(15));
        assertThat(Kind.ACCOUNT.pauseAfter(1_000_000)).isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void leaveFewTriesInADay() {
        int tries = 0;
        for (Duration day = Duration.ZERO; day.compareTo(Duration.ofDays(1)) < 0; tries++) {
            day = day.plus(Kind.PIN.pauseAfter(tries + 1));
        }
        // of a million PINs
        assertThat(tries).isLessThan(40);
    }

    @Test
    void leaveFewTriesInADayToWhoeverWaitsForThemToWearOff() {
        long worn = Duration.ofDays(1).dividedBy(Kind.PIN.wearsOffIn());
        assertThat(5 + worn).isLessThan(40);
        assertThat(Kind.ADDRESS.wearsOffIn()).isEqualTo(Duration.ofSeconds(90));
    }
}
